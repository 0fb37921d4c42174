// The journal's database as a backup reads it: stream by stream, picture by picture, never much at a time.
import type { Aside, BackedUpMedia, RawEntry } from '../../core/backup/format.ts'
import type { PotSummary } from '../../session/ports.ts'
import type { Connection } from '../journal/connection.ts'
import type { StoredMedia } from '../journal/media-store.ts'
import { ASIDE, ENTRIES, MEDIA, SIZES, STARTED, SUMMARIES } from '../journal/stores.ts'

/** An entry that was set aside, as it is stored: its key, a mark that tells several of one key apart, and the rest. */
export type StoredAside = Aside & { streamId: string; writerId: string; seq: number; mark: string }

export function streamRange(streamId: string): IDBKeyRange {
  // [streamId, []] is above every writer: a list sorts after a text.
  return IDBKeyRange.bound([streamId], [streamId, []])
}

/** The id of every stream: from each the cursor jumps over its entries to the next. */
export function streamIds(connection: Connection): Promise<string[]> {
  return connection.run('readonly', [ENTRIES], (transaction) => {
    const found: string[] = []
    const request = transaction.objectStore(ENTRIES).openKeyCursor()
    request.onsuccess = () => {
      const cursor = request.result
      if (cursor === null) return
      const [streamId] = cursor.key as [string]
      found.push(streamId)
      cursor.continue([streamId, []])
    }
    return () => found
  })
}

/** A whole stream in one transaction: what is written meanwhile is all in it or not at all. */
export function readStream(connection: Connection, streamId: string): Promise<RawEntry[]> {
  return connection.run('readonly', [ENTRIES], (transaction) => {
    const request = transaction.objectStore(ENTRIES).getAll(streamRange(streamId))
    return () => request.result
  })
}

export function readSummary(connection: Connection, streamId: string): Promise<PotSummary | undefined> {
  return connection.run('readonly', [SUMMARIES], (transaction) => {
    const request = transaction.objectStore(SUMMARIES).get(potIdOf(streamId) ?? '')
    return () => request.result
  })
}

/** Null: the stream is none of a pot. */
export function potIdOf(streamId: string): string | null {
  return streamId.startsWith('pot/') ? streamId.slice('pot/'.length) : null
}

/** When the first batch began at or after that time; null: none did. */
export function firstStartedSince(connection: Connection, fromMs: number): Promise<number | null> {
  return connection.run('readonly', [SUMMARIES], (transaction) => {
    const request = transaction.objectStore(SUMMARIES).index(STARTED).openKeyCursor(IDBKeyRange.lowerBound(fromMs))
    return () => (request.result?.key as number | undefined) ?? null
  })
}

/** The lines of the Dye book, the oldest first. */
export function summariesFrom(connection: Connection, fromMs: number, most: number): Promise<PotSummary[]> {
  return connection.run('readonly', [SUMMARIES], (transaction) => {
    const range = IDBKeyRange.lowerBound(fromMs, true)
    const request = transaction.objectStore(SUMMARIES).index(STARTED).getAll(range, most)
    return () => request.result
  })
}

export function mediaBySize(connection: Connection): Promise<Map<string, { mime: string; size: number }>> {
  return connection.run('readonly', [MEDIA], (transaction) => {
    const found = new Map<string, { mime: string; size: number }>()
    // From the index alone: reading the pictures to count them would take as long as they are large.
    const request = transaction.objectStore(MEDIA).index(SIZES).openKeyCursor()
    request.onsuccess = () => {
      const cursor = request.result
      if (cursor === null) return
      const [mime, size] = cursor.key as [string, number]
      found.set(cursor.primaryKey as string, { mime, size })
      cursor.continue()
    }
    return () => found
  })
}

export function readAside(connection: Connection, streamId?: string): Promise<StoredAside[]> {
  return connection.run('readonly', [ASIDE], (transaction) => {
    const request = transaction.objectStore(ASIDE).getAll(streamId === undefined ? null : streamRange(streamId))
    return () => request.result
  })
}

export function mediaKeys(connection: Connection): Promise<string[]> {
  return connection.run('readonly', [MEDIA], (transaction) => {
    const request = transaction.objectStore(MEDIA).getAllKeys()
    return () => request.result as string[]
  })
}

/** Null: it was let go since its key was read. */
export async function readMedia(connection: Connection, sha256: string): Promise<BackedUpMedia | null> {
  const stored = await connection.run('readonly', [MEDIA], (transaction) => {
    const request = transaction.objectStore(MEDIA).get(sha256)
    return () => request.result as StoredMedia | undefined
  })
  if (stored === undefined) return null
  const { mime, bytes, storedAtMs, streamIds } = stored
  // As long as the bytes are, whatever the record says: a reader holds the two against each other.
  return { sha256, mime, size: bytes.byteLength, storedAtMs, streamIds, bytes: new Uint8Array(bytes) }
}

export async function* streamsOf(
  connection: Connection,
  ids: readonly string[]
): AsyncGenerator<{ streamId: string; entries: RawEntry[]; summary?: unknown }> {
  for (const streamId of ids) {
    const [entries, summary] = await Promise.all([readStream(connection, streamId), readSummary(connection, streamId)])
    yield { streamId, entries, summary }
  }
}

export async function* asideOf(connection: Connection): AsyncGenerator<Aside> {
  for (const { why, entry } of await readAside(connection)) yield { why, entry }
}

export async function* mediaOf(connection: Connection, keys: readonly string[]): AsyncGenerator<BackedUpMedia> {
  for (const sha256 of keys) {
    const media = await readMedia(connection, sha256)
    if (media !== null) yield media
  }
}

export function asStored({ why, entry }: Aside, mark: string): StoredAside {
  const { streamId, writerId, seq } = entry
  return { streamId, writerId, seq, mark, why, entry }
}
