// Reads stored entries back: the checksum first, then the numbered steps up to the version of today, then the shape.
// Nothing is ever repaired silently: what can't be read is told, and the record opens read-only.
import { crc32 } from './crc.ts'
import { ENTRY_VERSION, type Entry } from './entry.ts'
import type { PotEvent } from './events.ts'
import { isKnownEvent } from './known-events.ts'
import { sorted } from './sorted.ts'
import { upgradeEntry } from './upgrade-entry.ts'
import { sealEntry } from './write-entry.ts'

export type Damaged = { index: number; why: string }

/** `entries`: what could be read, in the order given. `damaged`: which of the given could not, counted from 0, and why.
 * `unknown`: a newer version or an event this version has no word for; those entries are left out too. */
export type ReadEntries<E = PotEvent> = { entries: Entry<E>[]; damaged: Damaged[]; unknown: boolean }

/** Reads the raw entries of one stream in the order of writing. `sums` false: the checksums are taken for right, which
 * saves three quarters of the time; whoever leaves them out looks at them later. `known`: has this version a word for an
 * event of such a stream? */
export function readEntries<E = PotEvent>(raw: readonly unknown[], sums = true, known = isKnownEvent): ReadEntries<E> {
  const read: ReadEntries<E> = { entries: [], damaged: [], unknown: false }
  const lastSeq = new Map<string, number>()
  raw.forEach((stored, index) => {
    const order = outOfOrder(stored, lastSeq)
    if (order !== null) read.damaged.push({ index, why: order.why })
    const one = readOne<E>(stored, sums, known)
    if (one.kind === 'unknown') read.unknown = true
    if (one.kind === 'damaged') read.damaged.push({ index, why: one.why })
    if (one.kind === 'read' && !order?.again) read.entries.push(one.entry)
  })
  return read
}

type One<E> = { kind: 'read'; entry: Entry<E> } | { kind: 'damaged'; why: string } | { kind: 'unknown' }

function readOne<E>(stored: unknown, sums: boolean, known: (type: string) => boolean): One<E> {
  if (!isRecord(stored)) return { kind: 'damaged', why: 'not an entry' }
  const { v } = stored
  if (typeof v !== 'number' || !Number.isInteger(v) || v < 1) return { kind: 'damaged', why: 'no version' }
  if (sums && !checksumHolds(stored))
    return { kind: 'damaged', why: 'the checksum does not fit: the entry was changed or cut' }
  if (v > ENTRY_VERSION) return { kind: 'unknown' }
  const today = v === ENTRY_VERSION ? stored : upgradeEntry(stored)
  const wrong = today === null ? 'could not be brought up to date' : wrongField(today)
  if (today === null || wrong !== null) return { kind: 'damaged', why: wrong ?? '' }
  if (!known((today.event as { type: string }).type)) return { kind: 'unknown' }
  const entry = today as unknown as Entry<E>
  return { kind: 'read', entry: today === stored ? entry : sealEntry(open(entry)) }
}

/** An entry of ours keeps its keys in order, the checksum last, so its plain JSON is tried first: taking fields out and
 * sorting them costs several times more. */
export function checksumHolds(stored: { crc?: unknown }): boolean {
  const { crc } = stored
  if (typeof crc !== 'string') return false
  const text = JSON.stringify(stored)
  const last = `,"crc":${JSON.stringify(crc)}}`
  if (text.endsWith(last) && crc32(text, text.length - last.length, '}') === crc) return true
  const { crc: _, ...rest } = stored
  return crc32(JSON.stringify(sorted(rest))) === crc
}

function open<E>(entry: Entry<E>): Omit<Entry<E>, 'crc'> {
  const { crc: _, ...rest } = entry
  return rest
}

function wrongField(entry: Record<string, unknown>): string | null {
  // Written out: a loop over names is slow until it is hot, and a start of the app never gets that far.
  if (typeof entry.streamId !== 'string') return 'streamId is not a text'
  if (typeof entry.writerId !== 'string') return 'writerId is not a text'
  if (typeof entry.seq !== 'number') return 'seq is not a number'
  if (typeof entry.commandId !== 'string') return 'commandId is not a text'
  if (typeof entry.atMs !== 'number') return 'atMs is not a number'
  if (typeof entry.recordedAtMs !== 'number') return 'recordedAtMs is not a number'
  if (typeof entry.bootId !== 'string') return 'bootId is not a text'
  if (typeof entry.monoMs !== 'number') return 'monoMs is not a number'
  if (typeof entry.tzOffsetMin !== 'number') return 'tzOffsetMin is not a number'
  if (entry.after !== null && !(isRecord(entry.after) && typeof entry.after.seq === 'number'))
    return 'after is not an entry'
  if (!isRecord(entry.by) || typeof entry.by.kind !== 'string') return 'nobody is named in by'
  if (!isRecord(entry.event) || typeof entry.event.type !== 'string') return 'there is no event'
  return null
}

/** A writer counts from 1 without a gap: says what is missing before this entry, or that it was there before. */
function outOfOrder(stored: unknown, lastSeq: Map<string, number>): { why: string; again: boolean } | null {
  if (!isRecord(stored) || typeof stored.writerId !== 'string' || typeof stored.seq !== 'number') return null
  const last = lastSeq.get(stored.writerId) ?? 0
  lastSeq.set(stored.writerId, Math.max(last, stored.seq))
  if (stored.seq === last + 1) return null
  if (stored.seq <= last) return { why: `entry ${stored.seq} is there twice`, again: true }
  const missing = stored.seq - 1 === last + 1 ? `entry ${last + 1} is` : `entries ${last + 1} to ${stored.seq - 1} are`
  return { why: `${missing} missing before this one`, again: false }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
