// One line of a journal. The format is the same for every stream and can't be changed later without a numbered,
// tested step in read-entry.ts.
import type { By } from './events.ts'

export const ENTRY_VERSION = 2

export type Entry<E> = {
  v: number
  /** "pot/<id>", "stock/<id>", "swatch/<id>", later also "protocol/". */
  streamId: string
  /** The store that wrote it; a restored or copied store takes a new one. */
  writerId: string
  /** Counts per writer and stream from 1, without a gap. */
  seq: number
  /** The entry this one follows; two children of one entry are a branch. Null for the first. */
  after: { writerId: string; seq: number } | null
  commandId: string
  /** When it happened, wall clock UTC. */
  atMs: number
  /** When it was written, wall clock UTC. */
  recordedAtMs: number
  /** Monotonic time is compared only within one bootId. */
  bootId: string
  monoMs: number
  /** Minutes east of UTC where and when it was written. */
  tzOffsetMin: number
  by: By
  /** CRC-32 of the entry's JSON without this field, 8 hex digits. */
  crc: string
  event: E
}
