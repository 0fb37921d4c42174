// Pictures and sound, keyed by the SHA-256 of their bytes, in the same transactions as the entries that name them.
import type { MediaBytes } from '../../core/pot/media.ts'
import type { MediaSizes, StoredEntry } from '../../session/ports.ts'
import { MEDIA, SIZES } from './stores.ts'

/** `streamIds`: the records that name these bytes. Two pots may keep the same picture; letting it go in one must not take
 * it from the other. */
export type StoredMedia = MediaBytes & { size: number; storedAtMs: number; streamIds: string[] }

type Named = { streamId: string; sha256: string; recordedAtMs: number }

/** What of each entry names or lets go bytes. */
export function namedIn(entries: readonly StoredEntry[]): { kept: Named[]; gone: Named[] } {
  const kept: Named[] = []
  const gone: Named[] = []
  for (const { streamId, recordedAtMs, event } of entries) {
    if (event.type === 'MediaTrimmed') gone.push({ streamId, recordedAtMs, sha256: event.sha256 })
    const named = 'media' in event ? event.media : null
    if (named) kept.push({ streamId, recordedAtMs, sha256: named.sha256 })
  }
  return { kept, gone }
}

/** The record of some bytes once these entries are written; null: nothing names them any more. */
export function mediaAfter(
  before: StoredMedia | null,
  sha256: string,
  entries: readonly StoredEntry[],
  media: readonly MediaBytes[]
): StoredMedia | null {
  const { kept, gone } = namedIn(entries)
  const mine = kept.filter((named) => named.sha256 === sha256)
  const left = gone.filter((named) => named.sha256 === sha256).map(({ streamId }) => streamId)
  const streamIds = [...new Set([...(before?.streamIds ?? []), ...mine.map(({ streamId }) => streamId)])]
  const names = streamIds.filter((streamId) => !left.includes(streamId))
  const carried = media.find((one) => one.sha256 === sha256)
  if (names.length === 0) return null
  if (before !== null) return { ...before, streamIds: names }
  if (carried === undefined) return null
  const { mime, bytes } = carried
  return { sha256, mime, bytes, size: bytes.byteLength, storedAtMs: mine[0]?.recordedAtMs ?? 0, streamIds: names }
}

/** Every hash that these entries name or let go. */
export function hashesIn(entries: readonly StoredEntry[]): string[] {
  const { kept, gone } = namedIn(entries)
  return [...new Set([...kept, ...gone].map(({ sha256 }) => sha256))]
}

export function writeMedia(transaction: IDBTransaction, entries: readonly StoredEntry[], media: MediaBytes[]): void {
  const store = transaction.objectStore(MEDIA)
  for (const sha256 of hashesIn(entries)) {
    const request = store.get(sha256)
    request.onsuccess = () => {
      const before = (request.result as StoredMedia | undefined) ?? null
      const after = mediaAfter(before, sha256, entries, media)
      if (after !== null) store.put(after)
      else if (before !== null) store.delete(sha256)
    }
  }
}

export function readMedia(transaction: IDBTransaction, sha256: string): () => MediaBytes | null {
  const request = transaction.objectStore(MEDIA).get(sha256)
  return () => shownMedia(request.result)
}

export function shownMedia(stored: StoredMedia | undefined): MediaBytes | null {
  return stored === undefined ? null : { sha256: stored.sha256, mime: stored.mime, bytes: stored.bytes }
}

export function readSizes(transaction: IDBTransaction): () => MediaSizes {
  const sizes = noMedia()
  const request = transaction.objectStore(MEDIA).index(SIZES).openKeyCursor()
  request.onsuccess = () => {
    const cursor = request.result
    if (cursor === null) return
    const [mime, size] = cursor.key as [string, number]
    addSize(sizes, mime, size)
    cursor.continue()
  }
  return () => sizes
}

export function noMedia(): MediaSizes {
  return { photos: 0, photoBytes: 0, sounds: 0, soundBytes: 0 }
}

export function addSize(sizes: MediaSizes, mime: string, size: number): void {
  const photo = mime.startsWith('image/')
  sizes.photos += photo ? 1 : 0
  sizes.photoBytes += photo ? size : 0
  sizes.sounds += photo ? 0 : 1
  sizes.soundBytes += photo ? 0 : size
}
