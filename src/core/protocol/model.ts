// The shapes of a protocol (the written method) and of a programme (the method made concrete for one pot).
// All of it is JSON-native: a programme is stored whole in the first entry of a pot's journal and must read for ever.
import type { WrittenNode as Written } from './written.ts'

/** A length of time in three guesses, milliseconds. `leastMs <= likelyMs <= mostMs`. */
export type Span = { leastMs: number; likelyMs: number; mostMs: number }

/** What a unit of the amount is: mL, g, or a plain count. `asEntered` keeps the words of the writer. */
export type Amount = { value: number; unit: 'mL' | 'g' | 'count'; of: string; asEntered: string }

/** shift: what follows moves by the lateness. absorb: the next wait shrinks. off-protocol: shift, and mark the batch. */
export type LateRule = 'shift' | 'absorb' | 'off-protocol'

/** What happens to a reading outside its range. stop-count: time outside does not count towards the hold. */
export type OutsideRule = 'note' | 'again' | 'stop-count' | 'off-protocol'

export const stepWords = [
  'soak',
  'fill',
  'add',
  'enter',
  'lift',
  'lower',
  'turn',
  'heat',
  'hold',
  'cool',
  'check',
  'measure',
  'sample',
  'wait',
  'transfer',
  'rinse',
  'squeeze',
  'air',
  'spin',
  'dry',
  'note',
  'photo',
  'do'
] as const
export type StepWord = (typeof stepWords)[number]

/** The five ways a step behaves; a step word is a trade word over one of them. */
export type Behaviour = 'act' | 'dose' | 'wait' | 'ramp' | 'ask'

/** Residue grades of a bath or a rinse, palest first. Common practice, no source. */
export const grades = ['clear', 'trace', 'tint', 'half', 'strong'] as const
export type Grade = (typeof grades)[number]

export type Question =
  | { kind: 'grade'; of: string; enough: Grade | null }
  | { kind: 'temperature'; lowC: number | null; highC: number | null }
  | { kind: 'ph'; low: number | null; high: number | null }
  | { kind: 'number'; ask: string; unit: string; low: number | null; high: number | null }
  | { kind: 'choice'; ask: string; answers: { id: string; label: string }[] }
  | { kind: 'text'; ask: string }

/** A condition of a wait beside its time; all of them are needed. */
export type Until =
  | { kind: 'temperature'; lowC: number | null; highC: number | null; going: 'up' | 'down' }
  | { kind: 'person'; ask: string }
  | { kind: 'moment'; name: string }
  | { kind: 'judgement'; question: Question }

/** The waiting part of a step.
 * `forMs`: time from `from` (a named moment) or, where that is null, from the step's own start.
 * `graceMs`: how long after it an answer is not yet late; null: never late ("at least 30 min").
 * `leastMs`: how far a late arrival may shrink it (absorb). */
export type Wait = {
  forMs: number | null
  leastMs: number
  graceMs: number | null
  from: string | null
  until: Until[]
  /** Cooled with cold water at this rate; left out: by itself, by Newton's law. */
  coolCPerMin?: number
}

export type Ramp = { lowC: number; highC: number | null; cPerMin: number; expectedFromC: number }

export type SetPoint = { lowC: number | null; highC: number | null; outside: OutsideRule }

/** What shows on the strand. Meaning never rests on the shape alone: each knot has its words. */
export type KnotShape = 'drop' | 'band' | 'ring' | 'bar' | 'wave' | 'dot'

/** What must be recorded to close a step. */
export type RecordItem = 'temperature' | 'ph' | 'level' | 'residue' | 'photo' | 'note' | 'wet mass' | 'dry mass'

/** What bottles a dose comes out of: so much of each material for each mL (or g) of the dose. Written where a material
 * stands on the shelf. */
export type DoseFrom = { material: string; each: number }

export type Step = {
  node: 'step'
  id: string
  path: string
  word: StepWord
  behaviour: Behaviour
  /** The act in a call, imperative and short: "Lower band 5". */
  call: string
  /** What is said while it runs: "Holding". */
  doing: string
  /** The pad's words after the pot's name: "lowered", "acid is in". */
  done: string
  /** One more line at most: "to the fifth tie mark". */
  detail: string | null
  /** The knot's label: "Acid 2". */
  knot: string
  shape: KnotShape
  hands: Span
  clock: Span
  late: LateRule | null
  /** Names besides the id that are marked when the step closes. */
  marks: string[]
  wait: Wait | null
  ramp: Ramp | null
  dose: { amount: Amount; cup: string | null; setOutId: string; from?: DoseFrom[] } | null
  question: Question | null
  /** What to hold while the step runs. */
  setPoint: SetPoint | null
  /** What the step does to the burner when it begins (on) or is done (off). */
  heat: 'on' | 'off' | null
  /** Where the yarn is once the step is done; `lifted` also: an addition made with the yarn out. */
  yarn: 'in' | 'out' | 'lifted' | null
  /** The longest the yarn may stay out of the bath from this lift, milliseconds. */
  outOfBathMostMs: number | null
  /** Depth under the liquor after this step, 0 to 1 of the skein, with the words for it. */
  depth: { fraction: number; label: string } | null
  /** What is forbidden meanwhile: "stir". */
  forbids: string[]
  records: RecordItem[]
  /** The protocol's own cautions, beyond the automatic ones. */
  cautions: string[]
  /** A soft tick (a turn, a stir) that is never called late. */
  soft: boolean
  /** Lying on the bench: needs neither heat nor hands until it ends. */
  bench: boolean
  /** A dry-out hazard is looked at this often while the step runs, milliseconds. */
  lookEveryMs: number | null
  /** The protocol asks for more heat than an open pot here gets: the boil stands for it. `longer`: what a hold needs more
   * for that, milliseconds; `counted`: it is part of the hold already. */
  overBoil?: { askedC: number; boilC: number; longer: Span | null; counted: boolean }
  /** The one step of a free pot: only a person ends it, and what is done meanwhile is told as it is done. */
  open?: true
}

/** One pass of a loop. `ask` comes first in an until; the last pass of an until has only its ask. */
export type Round = { path: string; label: string; ask: Step | null; steps: Node[] }

/** repeat, for each, until: already unrolled, so that every path exists and limits are met before the start.
 * `likelyRounds` is what estimates count on. */
export type Rounds = {
  node: 'rounds'
  id: string
  path: string
  kind: 'repeat' | 'each' | 'until'
  label: string
  rounds: Round[]
  likelyRounds: number
  otherwise: { path: string; steps: Node[] } | null
  marks: string[]
}

export type Choice = {
  node: 'choice'
  id: string
  path: string
  label: string
  ask: Step
  answers: { id: string; label: string; path: string; steps: Node[] }[]
  marks: string[]
}

export type Alongside = {
  node: 'alongside'
  id: string
  path: string
  label: string
  branches: { id: string; label: string; path: string; steps: Node[] }[]
  marks: string[]
}

export type Node = Step | Rounds | Choice | Alongside

/** Between two moments: not before `atLeastMs`, not after `atMostMs`. */
export type Gap = { from: string; to: string; atLeastMs: number | null; atMostMs: number | null; late: LateRule }

/** One thing to have on the bench, with the sum that gave it. */
export type SetOut = {
  id: string
  /** "acid 2 of 3"; the pot's colourway is put before it where it is shown. */
  label: string
  amount: Amount
  /** The arithmetic in words and figures, as one line. */
  sum: string
  kind: 'stock' | 'acid' | 'water' | 'powder' | 'other'
  /** % w/v of the liquid, where known: cautions depend on it. */
  percent: number | null
  paths: string[]
  /** Which material, and what more there is to the portion; programmes from before lack these. */
  material?: string
  /** The vessel it goes into, where that is not the pot. */
  vessel?: string
  ifWanted?: true
  fills?: true
}

export type Estimate = { clock: Span; hands: Span }

export type Programme = {
  title: string
  steps: Node[]
  gaps: Gap[]
  setOut: SetOut[]
  estimate: Estimate
  late: LateRule
  goodsMassG: number
  liquorML: number | null
  liquorRatio: number | null
  roomC: number
  /** Newton's cooling constant used for expected times, per minute, and where it comes from. */
  coolingPerMin: number
  inputs: { id: string; label: string; shown: string }[]
  cautions: string[]
  /** What the dyer gave at the start, so that the same pot can be filled in again. */
  given?: ProgrammeInputs
}

// ---- the protocol as written -------------------------------------------------------------------------------------

export type InputKind = 'number' | 'count' | 'mass' | 'volume' | 'temperature' | 'time' | 'percent' | 'choice' | 'text'

/** A question asked when a pot is started. `default`, `least`, `most` are in canonical units (g, mL, °C, ms, %). */
export type Input = {
  id: string
  ask: string
  kind: InputKind
  default: number | string | null
  least: number | null
  most: number | null
  choices: string[]
}

/** A stock, an acid, water or a powder that doses are of. `amount` is the whole that shares are taken of, as written. */
export type Material = {
  id: string
  label: string
  kind: 'stock' | 'acid' | 'water' | 'powder' | 'other'
  /** Strength the writer had in mind, % w/v; the dyer's own bottle replaces it at the start. */
  percent: number | null
  /** The whole amount as written ("2 % owf"), or null where each add says its own. */
  amount: string | null
  /** What `percent` is of; left out: % w/v. % w/w needs the density. */
  basis?: 'w/v' | 'w/w'
  densityGPerML?: number | null
  /** A mixed stock: the materials it is mixed from, in parts of dye. */
  parts?: { id: string; parts: number }[]
}

/** One problem in a text, at its place. Lines and columns count from 1. */
export type Problem = {
  code: string
  line: number
  column: number
  /** Where in words: "steps[3].hold.for". */
  where: string
  what: string
  instead: string
}

/** A step or a construct as written, after the reader: checked, not yet worked out for a pot. */
export type WrittenNode = Written

export type Protocol = {
  strandline: 1
  title: string
  about: string | null
  /** When to use it; what usually goes wrong. */
  use: string | null
  trouble: string | null
  demo: boolean
  kitchen: 'us' | 'metric' | 'imperial' | null
  late: LateRule
  inputs: Input[]
  materials: Material[]
  liquorRatio: number | null
  startC: number
  roomC: number
  parent: 'none' | 'batch' | 'bath'
  cautions: string[]
  steps: WrittenNode[]
  gaps: Gap[]
}

/** A thing on the shelf that serves a material, as its label read when the pot was started: the record must read for ever,
 * whatever becomes of the bottle. */
export type Bottle = {
  itemId: string
  /** It gives so much, mL or g, and the next in the list goes on; null: it gives all the rest. */
  upTo: number | null
  name: string
  lot: string
  percent: number | null
  basis: 'w/v' | 'w/w'
  densityGPerML: number | null
  /** The day it was made, "2031-06-14"; null: not known, or bought as it is. */
  madeOn: string | null
}

/** What the dyer gives when a pot is started. */
export type ProgrammeInputs = {
  skeins: { tag: string; massG: number }[]
  /** By input id; as typed or canonical. */
  values: Record<string, string | number>
  /** By material id: what is really in the bottle. */
  materials: Record<
    string,
    {
      name: string
      percent: number | null
      basis: 'w/v' | 'w/w'
      densityGPerML: number | null
      /** Which acid it is; left out: its name may tell. */
      acid?: AcidKind
      /** What on the shelf serves it, in the order it is used up. */
      shelf?: Bottle[]
    }
  >
  roomC: number | null
  /** Local boiling point, °C, where known. */
  boilC: number | null
  /** What the pot holds to the brim, and the alkalinity of its water in mg/L as CaCO3; left out: not known. */
  potML?: number | null
  alkalinityMgPerL?: number | null
  /** How the goods go in; left out: dry. */
  carries?: Carries
  /** Stock, acid and what the goods carry count as liquor: so much less water is poured. */
  countAll?: boolean
  /** The liquor is kept to so much, whatever the ratio asks for. */
  liquorMostML?: number | null
  /** A hold that the boil cuts short of its temperature is made longer. */
  lengthen?: boolean
}

/** The acids that a bath's pH can be worked out for, and all others. */
export type AcidKind = 'acetic' | 'citric' | 'other'

/** How much water the goods bring along. */
export type Carries = 'dry' | 'spun' | 'dripping'

/** A problem with what the dyer gave: which field, what is wrong, what would be right. */
export type InputProblem = { code: string; field: string; what: string; instead: string }
