// A batch record: the journal of a pot read as a document, in the manner of a batch record. JSON-native throughout;
// public/batch-record.schema.json describes it for those who read an export without the program.
import type { BathFate, Check, CupsRead, EntryRef, PotIdentity, ProtocolText, ResultValue, Use } from '../pot/events.ts'
import type { Amount, Bottle, KnotShape, Programme, StepWord } from '../protocol/model.ts'
import type { KeptNumbers } from '../protocol/numbers/kept.ts'

/** When something happened, who said so, and when it was written down. */
export type Said = {
  entry: EntryRef
  atMs: number
  /** The time as the dyer's own clock showed it, with its offset. */
  at: string
  recordedAtMs: number
  tzOffsetMin: number
  /** "dyer A, by tap", "the clock", "reading: probe" */
  who: string
  by: 'person' | 'clock' | 'reading'
  /** A person wrote it so long after it happened; null: at once (60 s or less). */
  writtenLateMs: number | null
  /** The time is that of the cue the act was counted down to, not of the answer. */
  atCue?: true
}

export type Planned = { startMs: number; endMs: number }

export type StepRecord = {
  path: string
  label: string
  call: string
  word: StepWord
  shape: KnotShape
  /** A repeat beside the route. */
  side: boolean
  /** From the likely times of the programme, counted from the real start; null: nobody planned it. */
  planned: Planned | null
  startMs: number
  endMs: number | null
  how: 'open' | 'done' | 'clock' | 'reading' | 'answered' | 'early' | 'skipped'
  reason: string | null
  /** Against the due time that was true then. */
  lateMs: number
  /** Against the plan: end minus planned end. */
  driftMs: number | null
  /** The step itself took so much longer than planned; negative: shorter. */
  overrunMs: number | null
  said: Said
  sentence: string
}

export type AmountRecord = {
  path: string | null
  label: string
  of: string
  planned: Amount | null
  added: Amount | null
  /** not-added: its step was passed over or the batch ended before it. */
  fate: 'added' | 'unplanned' | 'elsewhere' | 'not-added' | 'to-come'
  /** Added against planned, in percent of planned. */
  offPercent: number | null
  otherPotId: string | null
  said: Said | null
}

/** A bottle of the shelf as its label read at the start, and what the batch drew of it. */
export type BottleRecord = Omit<Bottle, 'upTo'> & {
  drawn: number
  /** Of what was drawn; null: nothing was. */
  unit: Amount['unit'] | null
  /** When it was first drawn from; null: not at all. */
  usedAtMs: number | null
  /** Days from the day it was made to its first use (not used: to the start); null: nobody knows when it was made. */
  ageDays: number | null
}

export type ReadingRecord = {
  path: string | null
  label: string
  what: 'temperature' | 'ph' | 'number' | 'choice' | 'text' | 'level' | 'photo'
  tempC: number | null
  ph: { low: number; high: number } | null
  /** What the doses so far would make of tap water, without goods; left out where that can't be said. */
  estimatedPh?: { low: number; high: number }
  words: string
  inRange: boolean | null
  said: Said
}

export type MediaRecord = {
  kind: 'photo' | 'voice'
  path: string | null
  label: string
  /** What the photo shows. */
  what: string
  sha256: string
  mime: string
  bytes: number
  widthPx: number | null
  heightPx: number | null
  lengthMs: number | null
  /** The bytes were let go since; null: they are kept. */
  trimmed: { why: string; said: Said } | null
  /** Its entry was undone; the bytes stay until they are let go. */
  withdrawn: boolean
  said: Said
}

/** `cups`: what it was like beside cups of its start liquor; left out where the eye alone judged. */
export type JudgementRecord = {
  path: string | null
  of: string
  grade: string
  hue: string | null
  cups?: CupsRead
  said: Said
}

export type NoteRecord = { path: string | null; text: string; said: Said }

/** What came of the batch, told once it could be seen. */
export type ResultRecord = {
  /** An id of results.ts, or the dyer's own name for it. */
  what: string
  own: boolean
  label: string
  value: ResultValue
  words: string
  /** How long after the batch ended it was found; null: before, or it goes on. */
  afterEndMs: number | null
  said: Said
}

export type CautionRecord = { id: string; path: string | null; said: Said }

export type DeviationKind =
  | 'late'
  | 'skipped'
  | 'early'
  | 'not-yet'
  | 'moved'
  | 'once-more'
  | 'off-protocol'
  | 'gap'
  | 'stopped'
  | 'trouble'
  | 'elsewhere'
  | 'unplanned'
  | 'burner'
  | 'swapped'
  | 'clock-set'
  | 'failed-check'
  | 'ended-early'

export type DeviationRecord = { kind: DeviationKind; path: string | null; sentence: string; said: Said }

export type CorrectionRecord = {
  entry: EntryRef
  what: string
  field: string
  was: string
  now: string
  why: string
  /** Does the record say the new value? False where the field is none that can be said anew. */
  applied: boolean
  said: Said
}

export type WithdrawnRecord = { what: string; said: Said; withdrawn: Said }

/** One line of the journal in words. */
export type JournalLine = {
  type: string
  words: string
  path: string | null
  withdrawn: boolean
  corrected: boolean
  said: Said
}

export type BatchRecord = {
  identity: {
    potId: string
    batchName: string
    colourway: string
    letter: string
    /** Where it began; changes stand among the deviations. */
    burner: string
    colour: string
    dyer: string | null
    status: 'running' | 'held' | 'complete' | 'aborted'
    startedAtMs: number
    startedAt: string
    endedAtMs: number | null
    endedAt: string | null
    /** Why it ended before its last step. */
    endedBecause: string | null
    bathFate: BathFate | null
  }
  substrate: Pick<PotIdentity, 'fibre' | 'skeins' | 'parentBatchId' | 'bath'> & { goodsMassG: number }
  protocol: ProtocolText
  programme: Programme
  checks: Check[]
  /** What was worked out before the start, where it was kept. */
  numbers?: KeptNumbers
  steps: StepRecord[]
  amounts: AmountRecord[]
  /** What came off the shelf; empty where nothing did. */
  shelf: { bottles: BottleRecord[]; uses: Use[] }
  readings: ReadingRecord[]
  judgements: JudgementRecord[]
  notes: NoteRecord[]
  results: ResultRecord[]
  media: MediaRecord[]
  cautions: CautionRecord[]
  deviations: DeviationRecord[]
  corrections: CorrectionRecord[]
  withdrawn: WithdrawnRecord[]
  /** Time out of the bath and time the procedure stood still, in all. */
  outOfBathMs: number
  stoppedMs: number
  offProtocol: boolean
  journal: JournalLine[]
  /** Stored entries that could not be read, and why. */
  damaged: { index: number; why: string }[]
}
