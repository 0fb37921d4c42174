// A step as its word makes it, before it has a path and before its amounts are worked out.
import type { WrittenAmount } from '../quantity/index.ts'
import type { Behaviour, KnotShape, Material, OutsideRule, Question, RecordItem, Until } from './model.ts'

/** Seconds: least, likely, most. */
export type Seconds = readonly [number, number, number]

export type WaitDraft = {
  forMs: number | null
  leastMs: number
  graceMs: number | null
  from: string | null
  until: Until[]
  /** How long the writer expects it to take, where no clock tells. */
  expectMs: number | null
  /** Cooled with cold water at this rate; left out: by itself. */
  coolCPerMin?: number
}

/** A range of temperatures; `boil`: as high as an open pot gets. */
export type RangeDraft = { lowC: number | null; highC: number | null; boil: boolean; shown: string }

export type RampDraft = { range: RangeDraft; cPerMin: number }

export type DoseDraft = {
  amount: WrittenAmount
  material: Material
  /** Where it goes, if not into the pot. */
  into: string | null
  /** A fill: the liquor of the bath is known from here on. */
  fills: boolean
  /** The liquor's temperature, where the writer says it. */
  atC: number | null
}

export type Draft = {
  /** "-lift" and the like for the acts that belong to a step; '' for the step itself. */
  suffix: string
  behaviour: Behaviour
  shape: KnotShape
  call: string
  doing: string
  done: string
  knot: string
  detail: string | null
  hands: Seconds
  wait: WaitDraft | null
  ramp: RampDraft | null
  dose: DoseDraft | null
  question: Question | null
  /** `aimC`: what is aimed at within the range, where the writer gives one temperature. */
  setPoint: { range: RangeDraft; outside: OutsideRule; aimC: number | null } | null
  heat: 'on' | 'off' | null
  yarn: 'in' | 'out' | 'lifted' | null
  outOfBathMostMs: number | null
  depth: { fraction: number; label: string } | null
  records: RecordItem[]
  soft: boolean
  bench: boolean
  away: boolean
  lookEveryMs: number | null
}

type Words = Pick<Draft, 'call' | 'doing' | 'done' | 'knot'>

/** A draft of which nothing is said yet. One shape for all, filled in place: spreading three objects into a fourth took a
 * third of the time of reading a protocol. */
function plainDraft(behaviour: Behaviour, shape: KnotShape): Draft {
  return {
    suffix: '',
    behaviour,
    shape,
    call: '',
    doing: '',
    done: '',
    knot: '',
    detail: null,
    hands: [0, 0, 0],
    wait: null,
    ramp: null,
    dose: null,
    question: null,
    setPoint: null,
    heat: null,
    yarn: null,
    outOfBathMostMs: null,
    depth: null,
    records: [],
    soft: false,
    bench: false,
    away: false,
    lookEveryMs: null
  }
}

/** An act of a person: done when they say so. */
export function act(words: Omit<Words, 'doing'>, hands: Seconds, more: Partial<Draft> = {}): Draft {
  return Object.assign(plainDraft('act', 'dot'), { doing: words.call, hands }, words, more)
}

/** A wait: done by the clock, or by what it waits for. */
export function waiting(words: Words, wait: WaitDraft, more: Partial<Draft> = {}): Draft {
  return Object.assign(plainDraft('wait', 'bar'), words, { hands: handsOf(wait), wait }, more)
}

/** A question: done by its answer. */
export function asking(
  words: Omit<Words, 'doing'>,
  question: Question,
  hands: Seconds,
  more: Partial<Draft> = {}
): Draft {
  return Object.assign(plainDraft('ask', 'ring'), { doing: words.call, question, hands }, words, more)
}

/** Only conditions want a look or a reading. */
function handsOf(wait: WaitDraft): Seconds {
  return wait.until.some((until) => until.kind !== 'moment') ? [10, 20, 60] : [0, 0, 0]
}
