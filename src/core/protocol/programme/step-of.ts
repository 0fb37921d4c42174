// From a draft to a step of the programme: the fields every step may have, its times, its temperatures.
import type { Draft } from '../draft.ts'
import type { LateRule, RecordItem, Span, Step } from '../model.ts'
import { listOf } from '../schema/fields.ts'
import type { SharedFields } from '../schema/shared.ts'
import type { Scope } from '../scope.ts'
import type { OwnWords, Said } from '../step-read.ts'
import { clockOf, type Expected, pass, type RampReady } from './expect.ts'
import { lengthened, type OverBoil, overBoilOf, overBoilWords } from './over-boil.ts'

type Place = { id: string; path: string }

/** Makes the step and lets its likely time pass. */
export function stepOf(
  asDrafted: Draft,
  { word, fields, own }: Said,
  place: Place,
  { boilC, lengthen }: Scope,
  now: Expected
): Step {
  const over = overBoilOf(asDrafted, boilC, lengthen === true, now)
  const draft = lengthened(asDrafted, over)
  const hands = handsOf(draft, own)
  const late: LateRule | null = fields.late ?? null
  const ramp = rampOf(draft, boilC, now)
  const clock = clockOf(draft, ramp, hands, late, now)
  const setPoint = setPointOf(draft, boilC)
  const question = draft.question
  // Hundreds of these are made with each letter of a protocol that is typed: no part of it is spread into it.
  const step: Step = {
    node: 'step',
    id: place.id,
    path: place.path,
    word,
    behaviour: draft.behaviour,
    call: own.call ?? draft.call,
    doing: draft.doing,
    done: own.done ?? draft.done,
    detail: detailOf(draft, own, over, boilC),
    knot: (own.knot ?? draft.knot).slice(0, 24),
    shape: draft.shape,
    hands,
    clock,
    late,
    marks: listOf(fields.marks),
    wait: waitOf(draft),
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
    lookEveryMs: draft.lookEveryMs
  }
  if (over) step.overBoil = over
  pass(now, draft, ramp, clock)
  if (draft.suffix === '') for (const name of [place.id, ...step.marks]) now.moments.set(name, now.nowMs)
  return step
}

function waitOf({ wait: drafted }: Draft): Step['wait'] {
  if (drafted === null) return null
  const { forMs, leastMs, graceMs, from, until, coolCPerMin } = drafted
  const wait: NonNullable<Step['wait']> = { forMs, leastMs, graceMs, from, until }
  if (coolCPerMin !== undefined) wait.coolCPerMin = coolCPerMin
  return wait
}

function handsOf(draft: Draft, { hands }: OwnWords): Span {
  if (hands) {
    const most = hands.highMs ?? hands.lowMs * 2
    return { leastMs: hands.lowMs, likelyMs: Math.round((hands.lowMs + most) / 2), mostMs: most }
  }
  const [least, likely, most] = draft.hands
  return { leastMs: least * 1000, likelyMs: likely * 1000, mostMs: most * 1000 }
}

/** No open pot gets hotter than the boil, and the boil is lower up a mountain. */
function rampOf({ ramp }: Draft, boilC: number, now: Expected): RampReady | null {
  if (!ramp) return null
  const { lowC, highC, boil } = ramp.range
  const low = boil ? boilC : Math.min(lowC ?? highC ?? boilC, boilC)
  const high = highC === null || highC === lowC || boil || highC >= boilC ? null : highC
  return { lowC: low, highC: high, cPerMin: ramp.cPerMin, expectedFromC: Math.round(now.bathC * 10) / 10 }
}

function setPointOf({ setPoint }: Draft, boilC: number): Step['setPoint'] {
  if (!setPoint) return null
  const { lowC, highC, boil } = setPoint.range
  // A rolling boil reads a little under the boiling point near the wall.
  if (boil || (lowC !== null && lowC >= boilC)) return { lowC: boilC - 3, highC: null, outside: setPoint.outside }
  return { lowC, highC: highC !== null && highC >= boilC ? null : highC, outside: setPoint.outside }
}

function detailOf(draft: Draft, words: OwnWords, over: OverBoil | null, boilC: number): string | null {
  const own = words.detail ?? draft.detail
  const asked = draft.ramp?.range.lowC ?? draft.setPoint?.range.lowC ?? null
  const capped = overBoilWords(over, asked, boilC)
  if (own === null || capped === null) return own ?? capped
  return `${own}; ${capped}`
}

const answered: Partial<Record<RecordItem, NonNullable<Step['question']>['kind']>> = {
  residue: 'grade',
  temperature: 'temperature',
  ph: 'ph'
}

/** What the answer itself records is not asked for a second time. */
function recordsOf(fields: SharedFields, question: Step['question']): RecordItem[] {
  const wanted = listOf(fields.record)
  return question === null ? wanted : wanted.filter((item) => answered[item] !== question.kind)
}
