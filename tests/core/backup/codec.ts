import { createHash } from 'node:crypto'
import type { Aside, BackedUpMedia, Codec, KeptThing, RawEntry } from '../../../src/core/backup/format.ts'
import { type BackupPart, readBackup } from '../../../src/core/backup/read.ts'
import { type BackupSource, writeBackup } from '../../../src/core/backup/write.ts'

/** Node's own hash: the app's comes from the browser, and both must say the same. */
export const nodeCodec: Codec = {
  encode: (text) => new TextEncoder().encode(text),
  decode: (bytes) => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes),
  sha256: async (bytes) => createHash('sha256').update(bytes).digest('hex')
}

export type Store = {
  entries: RawEntry[]
  aside?: Aside[]
  kept?: KeptThing[]
  media?: BackedUpMedia[]
  summaryOf?: (streamId: string) => unknown
}

export async function* each<T>(values: Iterable<T>): AsyncGenerator<T> {
  yield* values
}

export function sourceOf({ entries, aside = [], kept = [], media = [], summaryOf }: Store): BackupSource {
  const streamIds = [...new Set(entries.map(({ streamId }) => streamId))]
  const streams = streamIds.map((streamId) => ({
    streamId,
    entries: entries.filter((entry) => entry.streamId === streamId),
    summary: summaryOf?.(streamId)
  }))
  const head = {
    madeAtMs: 1_900_000_000_000,
    writerId: 'w1',
    streams: streams.length,
    media: media.length,
    mediaBytes: 0
  }
  return { head, streams: each(streams), aside: each(aside), kept: each(kept), media: each(media) }
}

export async function written(store: Store): Promise<Uint8Array> {
  const pieces: Uint8Array[] = []
  for await (const piece of writeBackup(sourceOf(store), nodeCodec)) pieces.push(piece)
  return new Uint8Array(Buffer.concat(pieces))
}

/** Reads the bytes in pieces of that length. */
export async function readBytes(bytes: Uint8Array, piece = bytes.length || 1): Promise<BackupPart[]> {
  const pieces: Uint8Array[] = []
  for (let at = 0; at < bytes.length; at += piece) pieces.push(bytes.slice(at, at + piece))
  const parts: BackupPart[] = []
  for await (const part of readBackup(each(pieces), nodeCodec)) parts.push(part)
  return parts
}

export function mediaOf(text: string, streamIds: string[] = ['pot/1']): BackedUpMedia {
  const bytes = new TextEncoder().encode(text)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  return { sha256, mime: 'image/jpeg', size: bytes.length, storedAtMs: 1000, streamIds, bytes }
}
