// What can happen to a pot. Past tense, JSON-native fields only. `decide` works out every deadline and branch and
// writes it into the event; `evolve` only assigns. So later scheduling code reads an old journal the same.
import type { Amount, Grade, Programme } from '../protocol/model.ts'
import type { KeptNumbers } from '../protocol/numbers/kept.ts'
import type { PhotoMedia, VoiceMedia } from './media.ts'

export type Skein = { tag: string; massG: number }

/** The liquor itself, with an identity of its own: a batch can end and its bath go on. */
export type Bath = { bathId: string; number: number; parentBatchId: string | null; unknownDyeLeft: boolean }

export type PotIdentity = {
  potId: string
  /** "2031-06-14 Moss" is only a name; the id is what labels carry. */
  batchName: string
  /** The dyer's name for the intended colour; the pot is called by it. */
  colourway: string
  letter: string
  burner: string
  /** The bath's colour on the screen, "#rrggbb", chosen by the dyer. */
  colour: string
  skeins: Skein[]
  fibre: string
  parentBatchId: string | null
  bath: Bath
  by: string | null
  /** What else on the shelf the pot uses; entries from before there was one lack it. */
  uses?: Use[]
}

/** Yarn, water, a vessel or a burner of the shelf, as its label read when the pot was started. One of a kind at most. */
export type Use = {
  kind: 'yarn' | 'water' | 'pot' | 'burner'
  itemId: string
  name: string
  lot: string
  about: string
}

/** The exact text a pot runs, so that its record can be read for ever. */
export type ProtocolText = { title: string; text: string; version: string; from: 'built-in' | 'file' }

/** One lamp of "before the heat", in words. */
export type Check = { what: 'sound' | 'screen' | 'notices' | 'storage' | 'battery' | 'bench'; ok: boolean; say: string }

export type PhReading =
  | { kind: 'value'; ph: number }
  | { kind: 'between'; low: number; high: number }
  | { kind: 'unreadable' }

/** A bath seen beside cups of its start liquor: the cup it is like, or the two it lies between, the deeper first, and the
 * cups that stood there, in % of the start liquor. */
export type CupsRead = { like: number[]; ladder: number[] }

/** The answer to a question: a reading, a judgement, a choice, or words. */
export type Answer =
  | { kind: 'temperature'; tempC: number }
  | { kind: 'ph'; reading: PhReading; lot?: string }
  /** `cups`: left out where the eye alone judged, as in entries from before there were any. */
  | { kind: 'grade'; grade: Grade; hue: string | null; cups?: CupsRead }
  | { kind: 'choice'; answer: string }
  | { kind: 'number'; value: number; unit: string }
  | { kind: 'text'; text: string }

export type ResultValue = Extract<Answer, { kind: 'number' | 'text' }>

export type CloseHow = 'done' | 'clock' | 'reading' | 'answered' | 'early' | 'skipped'

export type TroubleKind = 'boil-over' | 'power-cut' | 'gas-out' | 'dropped-skein' | 'burn' | 'must-leave' | 'other'
export type TroubleEnd = 'absorb' | 'restart-step' | 'off-protocol'

/** Deeds that are told without a step of the route. Where the yarn goes by them is told beside them. */
export const deedWords = ['lift', 'lower', 'turn', 'rinse', 'squeeze', 'spin', 'air', 'do'] as const
export type DeedWord = (typeof deedWords)[number]

/** What becomes of the liquor when a batch ends. */
export type BathFate = 'dropped' | 'kept-hot' | 'stored'

export type DueMovedWhy =
  | 'not-yet'
  | 'reading'
  | 'outside-range'
  | 'inside-range'
  | 'gap'
  | 'held'
  | 'clock-set'
  | 'moved'
  | 'trouble'
  | 'moment'

export type PotEvent =
  | {
      type: 'PotStarted'
      pot: PotIdentity
      protocol: ProtocolText
      programme: Programme
      checks: Check[]
      cautionsShown: string[]
      /** What was worked out before the start; entries from before it was kept lack it. */
      numbers?: KeptNumbers
    }
  | {
      type: 'StepStarted'
      path: string
      /** When a person is called or the clock closes it; null: not yet known (waits for a moment or another condition). */
      dueAtMs: number | null
      /** When a wait's own time is over, whatever else it waits for; null: it has none, or its moment has not come. */
      timeDueAtMs: number | null
      /** After this an answer is late; null: never late. */
      lateAfterMs: number | null
      /** Lateness still to be absorbed by the next wait. */
      carryMs: number
      absorbedMs: number
      /** A repeat of a step outside the route ("once more"): nothing follows from it. */
      side: boolean
    }
  | {
      type: 'StepClosed'
      path: string
      how: CloseHow
      lateMs: number
      carryMs: number
      reason: string | null
    }
  | { type: 'Ended'; path: string }
  | { type: 'RoundStarted'; path: string; round: number }
  | { type: 'RoundsEnded'; path: string; how: 'enough' | 'all' | 'limit' | 'skipped'; rounds: number }
  | { type: 'ChoiceTaken'; path: string; answer: string }
  | { type: 'MomentMarked'; name: string }
  | {
      type: 'DueMoved'
      path: string
      dueAtMs: number | null
      timeDueAtMs: number | null
      lateAfterMs: number | null
      /** What is left of the count while it stands still. */
      remainingMs: number | null
      why: DueMovedWhy
      reason: string | null
    }
  /** `itemId`: the bottle on the shelf that an unplanned dose came out of, where it was told. */
  | {
      type: 'Dosed'
      path: string | null
      of: string
      planned: Amount | null
      added: Amount
      fromPotId: string | null
      itemId?: string
    }
  | { type: 'DoseWentElsewhere'; path: string | null; of: string; amount: Amount; toPotId: string }
  | { type: 'Answered'; path: string; answer: Answer; inRange: boolean | null }
  | { type: 'TemperatureRead'; path: string | null; tempC: number; inRange: boolean | null }
  /** `lot`: of the strips; left out where nobody noted it, as in entries from before it could be. */
  | { type: 'PhRead'; path: string | null; reading: PhReading; lot?: string }
  | { type: 'Judged'; path: string | null; of: string; grade: Grade; hue: string | null; cups?: CupsRead }
  | { type: 'HeatSet'; on: boolean; level: string | null; path: string | null }
  | { type: 'ConditionMet'; path: string; index: number }
  /** A dry-out hazard was looked at. */
  | { type: 'Looked'; path: string }
  | {
      type: 'YarnMoved'
      place: 'in' | 'out'
      tags: string[]
      /** Back in the bath by then at the latest. */
      limitAtMs: number | null
      depth: number | null
      path: string | null
    }
  | { type: 'SkeinsSwapped'; withPotId: string; gave: string[]; got: Skein[] }
  | { type: 'ToppedUp'; volumeML: number; tempC: number | null; levelBefore: string | null; levelAfter: string | null }
  /** A deed told in its own trade word, where no other event says it: "turn", "rinse". `say`: what more there is to it. */
  | { type: 'DeedDone'; word: DeedWord; say: string; path: string | null }
  | { type: 'BurnerChanged'; burner: string }
  /** `told`: the ways of being noticed that worked by then; [] for none, left out where nobody looked. */
  | { type: 'AlertRaised'; key: string; kind: AlertKind; path: string | null; told?: readonly string[] }
  | { type: 'WentOffProtocol'; path: string | null; why: string }
  | { type: 'GapBroken'; from: string; to: string; overMs: number }
  | { type: 'Held'; reason: string | null }
  | { type: 'Resumed'; heldTimeCounts: boolean; heldMs: number }
  | { type: 'TroubleBegan'; kind: TroubleKind }
  | { type: 'TroubleEnded'; beganAtMs: number; tempC: number | null; outcome: TroubleEnd }
  | { type: 'HandedOver'; to: string }
  | { type: 'NoteWritten'; text: string; path: string | null }
  /** What came of the batch. `own`: `what` is the dyer's own name for it, else an id of core/record/results.ts. */
  | { type: 'ResultTold'; what: string; own: boolean; value: ResultValue }
  /** `media` is null where the picture was taken with something else; entries from before pictures were kept lack it. */
  | { type: 'PhotoNoted'; what: string; path: string | null; media?: PhotoMedia | null }
  | { type: 'VoiceNoted'; path: string | null; media: VoiceMedia }
  /** The bytes are gone for good; that there were some is still told. */
  | { type: 'MediaTrimmed'; sha256: string; why: string }
  | { type: 'CautionShown'; caution: string; path: string | null }
  | { type: 'ClockShifted'; byMs: number }
  | { type: 'Withdrawn'; commandId: string; entries: EntryRef[] }
  | { type: 'Corrected'; entry: EntryRef; field: string; was: string; now: string; why: string }
  | { type: 'StepsDone' }
  | { type: 'Finished'; bath: BathFate }
  | { type: 'Aborted'; reason: string }

/** call: a step wants a person. headsUp: one is coming after a quiet time. outOfBath, gap, look: limits that run out.
 * heat: a hold at heat reached its end while the pot was stopped. finish: all steps are done. */
export type AlertKind = 'call' | 'headsUp' | 'outOfBath' | 'gap' | 'look' | 'heat' | 'finish'

export type EntryRef = { writerId: string; seq: number }

export type By =
  /** `timed`: the time is that of the cue the act was counted down to, not of the answer. */
  | {
      kind: 'person'
      name: string | null
      via: 'tap' | 'key' | 'pedal' | 'whistle' | 'notice' | 'headset'
      timed?: 'cue'
    }
  | { kind: 'clock' }
  | { kind: 'reading'; from: string }
