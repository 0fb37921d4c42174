// What the running of pots needs from the outside world. Each port has a real module in shell and an in-memory twin.
import type { Entry } from '../core/pot/entry.ts'
import type { PotEvent } from '../core/pot/events.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import type { SwatchEvent } from '../core/record/swatch.ts'
import type { Draw } from '../core/shelf/draws.ts'
import type { ShelfEvent } from '../core/shelf/events.ts'

export type PotEntry = Entry<PotEvent>
export type ShelfEntry = Entry<ShelfEvent>
export type SwatchEntry = Entry<SwatchEvent>
export type StoredEntry = PotEntry | ShelfEntry | SwatchEntry

export type ClockPort = {
  /** Wall clock, UTC ms. */
  nowMs(): number
  /** Monotonic ms, comparable only within one bootId. */
  monoMs(): number
  bootId: string
  /** Minutes east of UTC at that time. */
  tzOffsetMin(atMs: number): number
  /** Calls back on every tick and every wake; returns the way to stop. */
  onTick(tick: () => void): () => void
  /** Asks for one more tick at that time; only what was asked last counts. Without it a deadline waits for the beat. */
  tickAt?(atMs: number): void
}

/** A short line a pot leaves beside its journal, so that the Dye book opens without reading journals. Derived only. */
export type PotSummary = {
  streamId: string
  potId: string
  batchName: string
  colourway: string
  colour: string
  protocolTitle: string
  startedAtMs: number
  endedAtMs: number | null
  status: 'running' | 'held' | 'complete' | 'aborted'
  goodsMassG: number
  offProtocol: boolean
  entries: number
  /** What it took off the shelf; null: not worked out, the journal tells. Lines from before there was one lack it. */
  draws?: Draw[] | null
  /** It was running on another device when it was backed up: nothing of it is watched or called here. */
  elsewhere?: true
  /** It was continued on several devices: this line tells of the trunk. */
  branched?: true
}

export type AppendFailure =
  /** Another writer was first: reread, decide again. */
  | { ok: false; why: 'conflict' }
  /** The store is full. */
  | { ok: false; why: 'full'; say: string }
  /** The connection is gone and reopening once did not help, or any other failed write. */
  | { ok: false; why: 'lost'; say: string }

export type JournalPort = {
  /** Adds entries of one or several streams, their summaries, and the bytes of pictures and sound they name, in one strict
   * transaction; resolves when it is complete. Never overwrites an entry. Bytes that an entry lets go (MediaTrimmed) go
   * in the same transaction, unless another stream has named them too. */
  append(
    entries: readonly StoredEntry[],
    summaries: PotSummary[],
    media?: MediaBytes[]
  ): Promise<{ ok: true } | AppendFailure>
  /** All entries of a stream in the order of writing. Raw: what is stored, not yet checked. */
  read(streamId: string): Promise<unknown[]>
  /** All entries of the streams whose id begins so ("stock/"), those of one stream as `read` gives them. */
  readAll(prefix: string): Promise<unknown[]>
  /** Summaries of the pots that drew from a thing on the shelf; of null: those whose draws are not worked out. */
  drawnFrom(itemId: string | null): Promise<PotSummary[]>
  /** Summaries of pots that started in [fromMs, toMs), latest first. */
  summaries(fromMs: number, toMs: number, limit?: number): Promise<PotSummary[]>
  /** Summaries of the pots still running or held. */
  live(): Promise<PotSummary[]>
  /** The bytes of a picture or of sound; null: they are not here. */
  media(sha256: string): Promise<MediaBytes | null>
  /** What pictures and sound take, in bytes, without reading them. */
  mediaSizes(): Promise<MediaSizes>
}

export type MediaSizes = { photos: number; photoBytes: number; sounds: number; soundBytes: number }

export type IdPort = {
  /** A new unique id (UUID v4 or the like). */
  newId(): string
  /** This store's writer id. */
  writerId: string
}
