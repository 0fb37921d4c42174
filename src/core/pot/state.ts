// What a pot is now: the fold of its journal. Each variant holds only what is true in it.
import type { Amount, Grade, Programme, RecordItem } from '../protocol/model.ts'
import type {
  BathFate,
  By,
  Check,
  EntryRef,
  PhReading,
  PotEvent,
  PotIdentity,
  ProtocolText,
  TroubleKind
} from './events.ts'

/** A step that is going on. `no` and `moves` name its due moment whatever the clock is set to later. */
export type ActiveStep = {
  path: string
  /** The how-manieth start in this pot. */
  no: number
  /** How often its due moment was moved, a set clock aside. */
  moves: number
  startedAtMs: number
  dueAtMs: number | null
  /** When a wait's own time is over; its other conditions may still be open then. */
  timeDueAtMs: number | null
  lateAfterMs: number | null
  carryMs: number
  absorbedMs: number
  side: boolean
  /** What is left of the count while it stands still (outside its range, held). */
  remainingMs: number | null
  /** Times the due moment was put off by the dyer. */
  notYetCount: number
  /** Conditions of a wait already met: reading, person, judgement, by index in `wait.until`. */
  met: number[]
  lookedAtMs: number
  looks: number
}

export type Dose = {
  path: string | null
  of: string
  planned: Amount | null
  added: Amount
  atMs: number
  fromPotId: string | null
}

export type TempReading = { atMs: number; tempC: number }

/** All that a live pot knows. */
export type Run = {
  pot: PotIdentity
  protocol: ProtocolText
  programme: Programme
  checks: Check[]
  startedAtMs: number
  /** When a person last told anything of it; null: not since the start. */
  deedAtMs: number | null
  /** The time of the last entry by sequence. */
  lastAtMs: number
  active: ActiveStep[]
  /** Closed steps and ended constructs, by path: when. */
  ended: Record<string, number>
  /** The round a loop is in, by the loop's path, counted from 1. */
  round: Record<string, number>
  /** The branch taken, by the choice's path. */
  taken: Record<string, string>
  moments: Record<string, number>
  /** How often: starts, each moment's markings, liftings out of the bath. Due keys are made of them. */
  counts: Record<string, number>
  /** When each kind of record was last made. */
  recorded: Partial<Record<RecordItem, number>>
  /** Alerts already journalled, by key. */
  raised: Record<string, number>
  bathTempC: number | null
  bathTempAtMs: number | null
  /** Of the thermometer since the heat, the liquor or what lies in it last changed: they may follow one curve. */
  tempReadings: TempReading[]
  ph: { reading: PhReading; atMs: number } | null
  judged: { of: string; grade: Grade; hue: string | null; atMs: number } | null
  heatOn: boolean
  heatSinceMs: number | null
  heatLevel: string | null
  yarn: 'in' | 'out'
  /** Out of the bath since, and until when at most. */
  outSinceMs: number | null
  outLimitAtMs: number | null
  outTotalMs: number
  /** Depth under the liquor, 0 to 1. */
  depth: number | null
  doses: Dose[]
  toppedUpML: number
  offProtocol: string[]
  trouble: { kind: TroubleKind; sinceMs: number } | null
  handedTo: string | null
  stepsDone: boolean
  cautionsShown: string[]
  /** Person's command ids already heard: a repeated one does nothing. */
  heard: string[]
  /** The latest command of a person and all that came of it since. */
  undo: { commandId: string; type: string; path: string | null; entries: EntryRef[] } | null
}

export type PotState =
  | { status: 'idle' }
  | ({ status: 'running' } & Run)
  | ({ status: 'held'; heldSinceMs: number } & Run)
  | ({ status: 'complete'; bath: BathFate; endedAtMs: number } & Run)
  | ({ status: 'aborted'; reason: string; endedAtMs: number } & Run)

export type LiveState = Extract<PotState, { status: 'running' | 'held' }>

/** What `evolve` needs to know about an entry beside its event. */
export type Stamp = { atMs: number; commandId: string; by: By; ref: EntryRef }

export type Stamped = { event: PotEvent; stamp: Stamp }
