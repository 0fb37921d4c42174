// A step read in a scope: the acts it is made of, and what its writer says of it in words of their own. A protocol is
// read with each letter that is typed into it, so what was read is kept for as long as step and scope stay the same.
import type { Duration } from '../quantity/index.ts'
import type { Draft } from './draft.ts'
import type { StepWord } from './model.ts'
import { type FieldProblem, Reading } from './reading.ts'
import type { SharedFields } from './schema/shared.ts'
import { stepKinds } from './schema/step-kinds.ts'
import type { Scope } from './scope.ts'
import type { WrittenStep } from './written.ts'

/** Null: the writer leaves it to what the step says by itself. */
export type OwnWords = {
  call: string | null
  done: string | null
  knot: string | null
  detail: string | null
  hands: Duration | null
}

export type Said = { word: StepWord; fields: SharedFields; own: OwnWords }

/** Not to be changed: who reads the same step gets the same again. */
export type StepRead = { drafts: readonly Draft[]; said: Said; problems: readonly FieldProblem[] }

/** Of an act that belongs to a step: what is said of the step is not said of it. */
export function nothingSaid(word: StepWord): Said {
  return { word, fields: {}, own: { call: null, done: null, knot: null, detail: null, hands: null } }
}

/** `bathC`: null where the step is the same in any bath. */
type Kept = { bathC: number | null; read: StepRead }

const kept = new WeakMap<Scope, WeakMap<WrittenStep, Kept>>()

/** `bathC`: the bath as far as it is known by then. */
export function readStepIn(step: WrittenStep, scope: Scope, bathC: number): StepRead {
  const inScope = kept.get(scope) ?? new WeakMap<WrittenStep, Kept>()
  kept.set(scope, inScope)
  const known = inScope.get(step)
  if (known && (known.bathC === null || known.bathC === bathC)) return known.read
  const r = new Reading(scope, bathC)
  const read = readWith(r, step)
  inScope.set(step, { bathC: r.heedsBath ? bathC : null, read })
  return read
}

function readWith(r: Reading, { word, fields }: WrittenStep): StepRead {
  const drafts = stepKinds[word].draft(fields, r)
  const shared = fields as SharedFields
  const text = (key: 'call' | 'done' | 'knot' | 'detail'): string | null => {
    const written = shared[key]
    return written === undefined ? null : r.text(written, [key])
  }
  const hands = shared.hands === undefined ? null : r.duration(shared.hands, ['hands'])
  const own = { call: text('call'), done: text('done'), knot: text('knot'), detail: text('detail'), hands }
  return { drafts, said: { word, fields: shared, own }, problems: r.problems }
}
