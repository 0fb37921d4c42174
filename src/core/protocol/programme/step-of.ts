// From a draft to a step of the programme: the fields every step may have, its times, its temperatures.
import type { Draft } from '../draft.ts'
import type { LateRule, RecordItem, Span, Step } from '../model.ts'
import type { Reading } from '../reading.ts'
import { listOf } from '../schema/fields.ts'
import type { SharedFields } from '../schema/shared.ts'
import type { WrittenStep } from '../written.ts'
import { clockOf, type Expected, pass, type RampReady } from './expect.ts'
import { lengthened, type OverBoil, overBoilOf, overBoilWords } from './over-boil.ts'

type Place = { id: string; path: string }

/** Makes the step and lets its likely time pass. `main`: the step itself, not an act that belongs to it. */
export function stepOf(
  asDrafted: Draft,
  written: WrittenStep,
  main: boolean,
  place: Place,
  r: Reading,
  now: Expected
): Step {
  const fields = (main ? written.fields : {}) as SharedFields
  const over = overBoilOf(asDrafted, r.scope.boilC, r.scope.lengthen === true, now)
  const draft = lengthened(asDrafted, over)
  const hands = handsOf(draft, fields, r)
  const late: LateRule | null = fields.late ?? null
  const ramp = rampOf(draft, r, now)
  const clock = clockOf(draft, ramp, hands, late, now)
  const setPoint = setPointOf(draft, r)
  const question = draft.question
  const step: Step = {
    node: 'step',
    ...place,
    word: written.word,
    behaviour: draft.behaviour,
    call: r.textOr(fields.call, ['call'], draft.call),
    doing: draft.doing,
    done: r.textOr(fields.done, ['done'], draft.done),
    detail: detailOf(draft, fields, over, r),
    knot: r.textOr(fields.knot, ['knot'], draft.knot).slice(0, 24),
    shape: draft.shape,
    hands,
    clock,
    late,
    marks: listOf(fields.marks),
    wait: draft.wait && {
      forMs: draft.wait.forMs,
      leastMs: draft.wait.leastMs,
      graceMs: draft.wait.graceMs,
      from: draft.wait.from,
      until: draft.wait.until,
      ...(draft.wait.coolCPerMin !== undefined && { coolCPerMin: draft.wait.coolCPerMin })
    },
    ramp,
    dose: null,
    question,
    setPoint,
    heat: draft.heat,
    yarn: draft.yarn,
    outOfBathMostMs: draft.outOfBathMostMs,
    depth: draft.depth,
    forbids: listOf(fields.forbid),
    records: recordsOf(fields, question),
    cautions: listOf(fields.caution),
    soft: fields.soft ?? draft.soft,
    bench: draft.bench || draft.away,
    lookEveryMs: draft.lookEveryMs,
    ...(over && { overBoil: over })
  }
  pass(now, draft, ramp, clock)
  if (main) for (const name of [place.id, ...step.marks]) now.moments.set(name, now.nowMs)
  return step
}

function handsOf(draft: Draft, fields: SharedFields, r: Reading): Span {
  const own = fields.hands === undefined ? null : r.duration(fields.hands, ['hands'])
  if (own) {
    const most = own.highMs ?? own.lowMs * 2
    return { leastMs: own.lowMs, likelyMs: Math.round((own.lowMs + most) / 2), mostMs: most }
  }
  const [least, likely, most] = draft.hands
  return { leastMs: least * 1000, likelyMs: likely * 1000, mostMs: most * 1000 }
}

/** No open pot gets hotter than the boil, and the boil is lower up a mountain. */
function rampOf({ ramp }: Draft, r: Reading, now: Expected): RampReady | null {
  if (!ramp) return null
  const { boilC } = r.scope
  const { lowC, highC, boil } = ramp.range
  const low = boil ? boilC : Math.min(lowC ?? highC ?? boilC, boilC)
  const high = highC === null || highC === lowC || boil || highC >= boilC ? null : highC
  return { lowC: low, highC: high, cPerMin: ramp.cPerMin, expectedFromC: Math.round(now.bathC * 10) / 10 }
}

function setPointOf({ setPoint }: Draft, r: Reading): Step['setPoint'] {
  if (!setPoint) return null
  const { boilC } = r.scope
  const { lowC, highC, boil } = setPoint.range
  // A rolling boil reads a little under the boiling point near the wall.
  if (boil || (lowC !== null && lowC >= boilC)) return { lowC: boilC - 3, highC: null, outside: setPoint.outside }
  return { lowC, highC: highC !== null && highC >= boilC ? null : highC, outside: setPoint.outside }
}

function detailOf(draft: Draft, fields: SharedFields, over: OverBoil | null, r: Reading): string | null {
  const own = fields.detail === undefined ? draft.detail : r.text(fields.detail, ['detail'])
  const asked = draft.ramp?.range.lowC ?? draft.setPoint?.range.lowC ?? null
  const capped = overBoilWords(over, asked, r.scope.boilC)
  if (own === null || capped === null) return own ?? capped
  return `${own}; ${capped}`
}

/** What the answer itself records is not asked for a second time. */
function recordsOf(fields: SharedFields, question: Step['question']): RecordItem[] {
  const asked: Partial<Record<RecordItem, NonNullable<Step['question']>['kind']>> = {
    residue: 'grade',
    temperature: 'temperature',
    ph: 'ph'
  }
  return listOf(fields.record).filter((item) => question === null || asked[item] !== question.kind)
}
