// What a proved frame holds. Its bytes are as they were written; what wrote them may still have been no Strandline.
import type { Aside, BackedUpMedia, BackupHead, BackupTotals, Codec, FrameKind, KeptThing, RawEntry } from './format.ts'

/** A stream may come in several parts, one behind the other. */
export type Contents =
  | { kind: 'head'; head: BackupHead }
  | { kind: 'entries'; streamId: string; entries: RawEntry[]; summary?: unknown }
  | { kind: 'aside'; aside: Aside }
  | { kind: 'kept'; kept: KeptThing }
  | { kind: 'media'; media: BackedUpMedia }

type Ending = { kind: 'end'; totals: BackupTotals }

/** What stands in a frame, or what is wrong with it, in words. */
export function contentsOf(kind: FrameKind, payload: Uint8Array, codec: Codec): Contents | Ending | string {
  try {
    return read(kind, payload, codec) ?? `a record of kind ${kind} has not the fields it should`
  } catch {
    return `a record of kind ${kind} is no JSON in UTF-8`
  }
}

function read(kind: FrameKind, payload: Uint8Array, codec: Codec): Contents | Ending | null {
  switch (kind) {
    case 'head': {
      const head = JSON.parse(codec.decode(payload))
      return numbers(head, ['madeAtMs', 'streams', 'media', 'mediaBytes']) && typeof head.writerId === 'string'
        ? { kind, head }
        : null
    }
    case 'entries': {
      const [first, ...lines] = codec.decode(payload).split('\n')
      const { streamId, summary } = JSON.parse(first ?? '')
      const entries: unknown[] = lines.map((line) => JSON.parse(line))
      const right =
        typeof streamId === 'string' && entries.every((entry) => isRaw(entry) && entry.streamId === streamId)
      return right ? { kind, streamId, entries: entries as RawEntry[], summary } : null
    }
    case 'aside': {
      const aside = JSON.parse(codec.decode(payload))
      return isRecord(aside) && (aside.why === 'conflict' || aside.why === 'damaged') && isRaw(aside.entry)
        ? { kind, aside: aside as Aside }
        : null
    }
    case 'kept': {
      const kept = JSON.parse(codec.decode(payload))
      return isRecord(kept) && typeof kept.key === 'string' && 'value' in kept
        ? { kind, kept: kept as KeptThing }
        : null
    }
    case 'media':
      return mediaIn(payload, codec)
    case 'end': {
      const totals = JSON.parse(codec.decode(payload))
      const names = ['streams', 'entries', 'aside', 'kept', 'media', 'mediaBytes']
      return numbers(totals, names) ? { kind, totals } : null
    }
  }
}

function mediaIn(payload: Uint8Array, codec: Codec): Contents | null {
  const end = payload.indexOf(0x0a)
  if (end < 0) return null
  const named = JSON.parse(codec.decode(payload.subarray(0, end)))
  const bytes = payload.slice(end + 1)
  const right =
    isRecord(named) &&
    typeof named.sha256 === 'string' &&
    typeof named.mime === 'string' &&
    typeof named.storedAtMs === 'number' &&
    Array.isArray(named.streamIds) &&
    named.streamIds.every((streamId) => typeof streamId === 'string') &&
    named.size === bytes.length
  return right ? { kind: 'media', media: { ...(named as Omit<BackedUpMedia, 'bytes'>), bytes } } : null
}

function isRaw(entry: unknown): entry is RawEntry {
  if (!isRecord(entry)) return false
  const { streamId, writerId, seq } = entry
  return typeof streamId === 'string' && typeof writerId === 'string' && typeof seq === 'number'
}

function numbers(value: unknown, names: readonly string[]): boolean {
  return isRecord(value) && names.every((name) => typeof value[name] === 'number')
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
