// What the parts of one session share.
import type { CommandHeader, PotCommand, Refusal } from '../core/pot/commands.ts'
import type { Alert } from '../core/pot/due.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import type { Draw } from '../core/shelf/draws.ts'
import { type ClockWatch, clockWatch } from './clock-watch.ts'
import type { LivePot } from './live-pot.ts'
import type { AppendFailure, ClockPort, IdPort, JournalPort, PotEntry } from './ports.ts'
import type { Missed, PotAlert } from './types.ts'

export type DrawsOf = (entries: readonly PotEntry[]) => Draw[]

export type SessionOptions = {
  clock: ClockPort
  journal: JournalPort
  ids: IdPort
  /** All standing alerts, at every look at the clock: a level, so that whoever sounds them can't miss one. `coming`: those
   * that will come within ten minutes if nobody does anything, each with its hour. */
  onAlerts?: (alerts: PotAlert[], coming: PotAlert[]) => void
  /** By what an alert could be noticed now: what is written down with it. */
  told?: () => readonly string[]
  /** Pots whose journal has grown: other tabs want to read them again. */
  onStored?: (potIds: string[]) => void
  /** What works out the draws of a pot; null: it is not fetched yet. No call waits for it, so it may come later. */
  drawsOf?: () => DrawsOf | null
  /** Does this tab write and alert? Default: it does. */
  owns?: () => boolean
  /** A moment counts as missed when nobody could have been told within so long; a rehearsal on a fast clock has more. */
  missedLeastMs?: number
}

export type Part = { potId: string; command: PotCommand }

/** A command that is decided and not yet stored. */
export type Pending = {
  parts: Part[]
  header: CommandHeader
  recordedAtMs: number
  entries: PotEntry[]
  /** How many entries of its first pot were stored when it was decided first. */
  known: number
  /** The bytes that the entries name. */
  media: MediaBytes[]
  /** Another writer was first, and now it is refused. */
  refusal: Refusal | null
}

export type Jump = {
  byMs: number
  atMs: number
  /** Of a jump back that was found at a start of the app: how many shifts as far back the journals held by then. */
  shiftsBack?: number
}

export type Room = {
  options: SessionOptions
  watch: ClockWatch
  pots: Map<string, LivePot>
  alerts: Map<string, Alert[]>
  pending: Pending[]
  failure: AppendFailure | null
  /** The live pots could not be read: some may call and nobody knows. A write that goes well does not change that. */
  unread: AppendFailure | null
  triedAtMs: number
  missed: Missed[]
  /** Jumps that a person may declare to be a set clock, in order: each moves only the pots that were started before. */
  jumps: Jump[]
  /** The clock was set back so far and the shift is not carried out yet: alarms go by the old time meanwhile. */
  unshiftedMs: number
  changed: () => void
}

export function newRoom(options: SessionOptions, changed: () => void): Room {
  return {
    options,
    watch: clockWatch(options.clock),
    pots: new Map(),
    alerts: new Map(),
    pending: [],
    failure: null,
    unread: null,
    triedAtMs: 0,
    missed: [],
    jumps: [],
    unshiftedMs: 0,
    changed
  }
}

export function owns(room: Room): boolean {
  return room.options.owns?.() ?? true
}
