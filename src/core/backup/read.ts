// Reads a backup piece by piece and lets nothing through that its checksums don't vouch for.
import { type ByteReader, byteReader } from './byte-reader.ts'
import { type Contents, contentsOf } from './contents.ts'
import {
  BACKUP_FORMAT,
  BACKUP_VERSION,
  type BackupHead,
  type BackupTotals,
  type Codec,
  chained,
  FRAME_MOST,
  type FrameKind,
  firstLine,
  frameKinds,
  noTotals
} from './format.ts'
import { type BackupRefusal, changed, cutShort, newer, notABackup, unreadable } from './refusal.ts'

/** `digest`: the checksum of the last frame, which vouches for the whole file. What comes before `end` is as it was
 * written so far; only `end` says that nothing is missing. After `refused` nothing comes. */
export type BackupPart =
  | Contents
  | { kind: 'end'; totals: BackupTotals; digest: string }
  | { kind: 'refused'; refusal: BackupRefusal }

const FIRST_LINE_MOST = 64
/** Kind, length, two checksums. */
const HEADER_MOST = 8 + 1 + 10 + 1 + 64 + 1 + 64 + 1

/** Reads the pieces of a file; it ends with `end` or with `refused`, whatever the bytes are. `passed` is told how far. */
export async function* readBackup(
  pieces: AsyncIterable<Uint8Array>,
  codec: Codec,
  passed: (bytes: number) => void = () => {}
): AsyncGenerator<BackupPart> {
  let at = 0
  const bytes = byteReader(pieces)
  try {
    const first = await readFirst(bytes, codec)
    if (first !== null) {
      yield { kind: 'refused', refusal: first }
      return
    }
    at = firstLine(BACKUP_VERSION).length
    let chain = await codec.sha256(codec.encode(firstLine(BACKUP_VERSION)))
    const found = noTotals()
    let head: BackupHead | null = null
    let streamId: string | null = null
    for (;;) {
      const frame = await readFrame(bytes, codec, chain, at)
      if ('why' in frame) {
        yield { kind: 'refused', refusal: frame }
        return
      }
      const part = contentsOf(frame.kind, frame.payload, codec)
      const wrong = typeof part === 'string' ? part : outOfPlace(part.kind, head)
      if (wrong !== null || typeof part === 'string') {
        yield { kind: 'refused', refusal: changed(at, wrong ?? '') }
        return
      }
      chain = frame.chain
      at = frame.end
      passed(at)
      if (part.kind === 'end') {
        yield await ending(bytes, part.totals, found, chain, at)
        return
      }
      if (part.kind === 'head') head = part.head
      if (part.kind === 'entries') {
        found.streams += part.streamId === streamId ? 0 : 1
        streamId = part.streamId
      }
      count(found, part)
      yield part
    }
  } catch (error) {
    yield { kind: 'refused', refusal: unreadable(at, error instanceof Error ? error.message : String(error)) }
  }
}

async function readFirst(bytes: ByteReader, codec: Codec): Promise<BackupRefusal | null> {
  const line = await bytes.line(FIRST_LINE_MOST)
  if (line === null) return notABackup()
  const text = asText(line, codec)
  if (text !== null && `${text}\n` === firstLine(BACKUP_VERSION)) return null
  const version = new RegExp(`^${BACKUP_FORMAT} ([1-9][0-9]{0,5})$`).exec(text ?? '')?.[1]
  return version === undefined ? notABackup() : newer(version)
}

type Frame = { kind: FrameKind; payload: Uint8Array; chain: string; end: number }

async function readFrame(bytes: ByteReader, codec: Codec, before: string, at: number): Promise<Frame | BackupRefusal> {
  if (await bytes.atEnd()) return cutShort(at)
  const line = await bytes.line(HEADER_MOST)
  if (line === null) return (await bytes.atEnd()) ? cutShort(at) : broken(bytes, at)
  const found = /^([a-z]+) (0|[1-9][0-9]{0,9}) ([0-9a-f]{64}) ([0-9a-f]{64})$/.exec(asText(line, codec) ?? '')
  const kind = frameKinds.find((known) => known === found?.[1])
  const [length, sum, chain] = [Number(found?.[2]), found?.[3] ?? '', found?.[4] ?? '']
  if (kind === undefined) return changed(at, 'the head of a record can’t be read')
  // The head is proved before its length is believed.
  if ((await codec.sha256(codec.encode(chained(before, kind, length, sum)))) !== chain) {
    return changed(at, 'the head of a record does not follow on the records before it')
  }
  if (length > FRAME_MOST) return changed(at, 'a record is longer than any may be')
  const payload = await bytes.take(length)
  if (payload === null) return cutShort(at)
  if ((await codec.sha256(payload)) !== sum) return changed(at, 'the checksum of a record does not fit')
  const closing = await bytes.take(1)
  if (closing === null) return cutShort(at)
  if (closing[0] !== 0x0a) return changed(at, 'a record does not end where it should')
  return { kind, payload, chain, end: at + line.length + 1 + length + 1 }
}

/** No line end: the file may stop within the head, or the head may be garbage. */
async function broken(bytes: ByteReader, at: number): Promise<BackupRefusal> {
  const whole = await bytes.take(HEADER_MOST)
  return whole === null ? cutShort(at) : changed(at, 'the head of a record can’t be read')
}

function outOfPlace(kind: FrameKind, head: BackupHead | null): string | null {
  if (kind === 'head') return head === null ? null : 'it begins a second time'
  return head === null ? 'it does not begin with its head' : null
}

async function ending(
  bytes: ByteReader,
  told: BackupTotals,
  found: BackupTotals,
  digest: string,
  at: number
): Promise<BackupPart> {
  for (const [name, many] of Object.entries(found)) {
    const said = told[name as keyof BackupTotals]
    if (said !== many) return { kind: 'refused', refusal: changed(at, `it holds ${many} ${name}, not ${said}`) }
  }
  if (!(await bytes.atEnd())) return { kind: 'refused', refusal: changed(at, 'there is more behind its closing line') }
  return { kind: 'end', totals: told, digest }
}

function count(found: BackupTotals, part: Contents): void {
  if (part.kind === 'entries') found.entries += part.entries.length
  if (part.kind === 'aside') found.aside += 1
  if (part.kind === 'kept') found.kept += 1
  if (part.kind === 'media') {
    found.media += 1
    found.mediaBytes += part.media.bytes.length
  }
}

function asText(line: Uint8Array, codec: Codec): string | null {
  try {
    return codec.decode(line)
  } catch {
    return null
  }
}
