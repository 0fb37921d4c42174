// The shapes of a backup file. README.md beside this file describes the bytes.

export const BACKUP_FORMAT = 'strandline-backup'
export const BACKUP_VERSION = 1

/** The kinds of frame. A new kind is a new version: what a reader does not know it must not pass over. */
export const frameKinds = ['head', 'entries', 'aside', 'kept', 'media', 'end'] as const
export type FrameKind = (typeof frameKinds)[number]

/** Entries go into frames of about this size, so that a checksum stands for a little and memory holds a little. */
export const FRAME_ABOUT = 256 * 1024
/** No frame is longer: a picture has at most 10 MB, a protocol 256 kB, a first entry some 100 kB. */
export const FRAME_MOST = 64 * 1024 * 1024

/** What the room can't do by itself. `decode` throws where the bytes are not UTF-8; `sha256` gives 64 hex digits. */
export type Codec = {
  encode(text: string): Uint8Array
  decode(bytes: Uint8Array): string
  sha256(bytes: Uint8Array): Promise<string>
}

/** Counts that are known before the writing: for a progress, no promise. The totals stand at the end. */
export type BackupHead = {
  madeAtMs: number
  /** The store that was backed up. */
  writerId: string
  streams: number
  media: number
  mediaBytes: number
}

export type BackupTotals = {
  streams: number
  entries: number
  aside: number
  kept: number
  media: number
  mediaBytes: number
}

/** An entry that can't stand under its key because another one does, and why it was set aside. */
export type Aside = {
  /** `conflict`: both are whole and differ. `damaged`: its checksum does not fit, the other's does. */
  why: 'conflict' | 'damaged'
  entry: RawEntry
}

/** An entry as stored, with a key; nothing else of it is checked here. */
export type RawEntry = { streamId: string; writerId: string; seq: number; crc?: unknown }

export type KeptThing = { key: string; value: unknown }

/** Bytes of a picture or of sound with what the store holds beside them. */
export type BackedUpMedia = {
  sha256: string
  mime: string
  size: number
  storedAtMs: number
  streamIds: string[]
  bytes: Uint8Array
}

export function noTotals(): BackupTotals {
  return { streams: 0, entries: 0, aside: 0, kept: 0, media: 0, mediaBytes: 0 }
}

/** The first line of every backup, of any version. */
export function firstLine(version: number): string {
  return `${BACKUP_FORMAT} ${version}\n`
}

/** What the checksum of the chain is taken over: each frame vouches for all before it. */
export function chained(before: string, kind: FrameKind, length: number, payloadSha256: string): string {
  return `${before} ${kind} ${length} ${payloadSha256}\n`
}
