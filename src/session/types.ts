// What the running of pots offers to the app and to the desk.
import type { PotCommand, Refusal } from '../core/pot/commands.ts'
import type { Alert } from '../core/pot/due.ts'
import type { By } from '../core/pot/events.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import type { PotState } from '../core/pot/state.ts'
import type { AppendFailure, PotEntry } from './ports.ts'

export type PotView = {
  potId: string
  streamId: string
  /** What is stored. */
  state: PotState
  /** Alerts of the stored state carried on to now in memory: an alarm never waits for a write. */
  alerts: Alert[]
  /** Damaged, unknown or newer entries: the record opens read-only. */
  readOnly: string | null
}

export type Outcome =
  | { ok: true; entries: PotEntry[] }
  | { ok: false; why: 'refused'; refusal: Refusal }
  | { ok: false; why: 'not-saved'; failure: AppendFailure }
  | { ok: false; why: 'not-owner' }
  | { ok: false; why: 'read-only'; say: string }

export type SendOptions = {
  by: By
  /** Answered so long ago (0, 1, 2, 5 min); default 0. */
  agoMs?: number
  /** A repeated id does nothing; default a new one. */
  commandId?: string
  /** The bytes that the command names; stored with its entries or not at all. */
  media?: MediaBytes[]
}

/** A standing alert and whose it is. */
export type PotAlert = { potId: string; colourway: string; alert: Alert }

/** What passed while nobody looked, per pot, oldest first. */
export type Missed = {
  potId: string
  colourway: string
  path: string | null
  what: string
  dueAtMs: number
  byMs: number
  late: string
}

export type Session = {
  pots(): PotView[]
  /** Entries of a live pot in memory, for its record and for undo. */
  entriesOf(potId: string): PotEntry[]
  subscribe(changed: () => void): () => void
  /** Reads the live pots and catches up; what was missed meanwhile. */
  open(): Promise<Missed[]>
  send(potId: string, command: PotCommand, options: SendOptions): Promise<Outcome>
  /** Two pots in one transaction: the acid for one went into the other. */
  sendBoth(
    first: { potId: string; command: PotCommand },
    second: { potId: string; command: PotCommand },
    options: SendOptions
  ): Promise<Outcome>
  /** Looks at the clock: passes due moments in order, finds jumps. Called on each tick and wake. */
  wake(): Promise<void>
  /** Reads pots again that another tab wrote to. */
  refresh(potIds: string[]): Promise<void>
  /** What passed while nobody looked, since the last `dismissMissed`. */
  missed(): Missed[]
  dismissMissed(): void
  /** A failed write that still stands: the red strip and its rescue download. */
  notSaved(): { failure: AppendFailure; entries: PotEntry[]; media: MediaBytes[] } | null
  retry(): Promise<void>
  /** Forward or backward jump that a person may declare to be a set clock. */
  jump(): { byMs: number; atMs: number } | null
  declareClockSet(): Promise<void>
  dismissJump(): void
  close(): void
}
