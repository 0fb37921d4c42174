// Writes a backup piece by piece: at no time more of it is in memory than one frame.
import {
  type Aside,
  BACKUP_VERSION,
  type BackedUpMedia,
  type BackupHead,
  type BackupTotals,
  type Codec,
  chained,
  FRAME_ABOUT,
  FRAME_MOST,
  type FrameKind,
  firstLine,
  type KeptThing,
  noTotals,
  type RawEntry
} from './format.ts'

/** Where a backup comes from. Each is read once, in this order: entries before media, so that what an entry names is
 * there when the media are read. */
export type BackupSource = {
  head: BackupHead
  /** `summary`: the line of the Dye book, used only where it can't be had from the entries any more. */
  streams: AsyncIterable<{ streamId: string; entries: readonly RawEntry[]; summary?: unknown }>
  aside: AsyncIterable<Aside>
  kept: AsyncIterable<KeptThing>
  media: AsyncIterable<BackedUpMedia>
}

/** The pieces of a backup file in order. `written` is told the totals after each frame. */
export async function* writeBackup(
  source: BackupSource,
  codec: Codec,
  written: (totals: BackupTotals) => void = () => {}
): AsyncGenerator<Uint8Array> {
  const first = codec.encode(firstLine(BACKUP_VERSION))
  let chain = await codec.sha256(first)
  yield first
  const totals = noTotals()
  for await (const { kind, payload } of framesOf(source, codec, totals)) {
    // A frame that no reader takes would be found only when the backup is needed.
    if (payload.length > FRAME_MOST) throw new Error(`a record of ${payload.length} bytes is too long for a backup`)
    const sum = await codec.sha256(payload)
    chain = await codec.sha256(codec.encode(chained(chain, kind, payload.length, sum)))
    yield codec.encode(`${kind} ${payload.length} ${sum} ${chain}\n`)
    yield payload
    yield newline
    written(totals)
  }
}

const newline = new Uint8Array([0x0a])

type Unsealed = { kind: FrameKind; payload: Uint8Array }

async function* framesOf(source: BackupSource, codec: Codec, totals: BackupTotals): AsyncGenerator<Unsealed> {
  const frame = (kind: FrameKind, lines: string): Unsealed => ({ kind, payload: codec.encode(lines) })
  yield frame('head', JSON.stringify(source.head))
  for await (const { streamId, entries, summary } of source.streams) {
    totals.streams += 1
    totals.entries += entries.length
    for (const lines of inPieces(entries.map((entry) => JSON.stringify(entry)))) {
      yield frame('entries', [JSON.stringify({ streamId, summary }), ...lines].join('\n'))
    }
  }
  for await (const aside of source.aside) {
    totals.aside += 1
    yield frame('aside', JSON.stringify(aside))
  }
  for await (const { key, value } of source.kept) {
    totals.kept += 1
    yield frame('kept', JSON.stringify({ key, value }))
  }
  for await (const { bytes, ...named } of source.media) {
    totals.media += 1
    totals.mediaBytes += bytes.length
    yield { kind: 'media', payload: joined(codec.encode(`${JSON.stringify(named)}\n`), bytes) }
  }
  yield frame('end', JSON.stringify(totals))
}

function* inPieces(lines: readonly string[]): Generator<string[]> {
  let piece: string[] = []
  let length = 0
  for (const line of lines) {
    piece.push(line)
    length += line.length
    if (length < FRAME_ABOUT) continue
    yield piece
    piece = []
    length = 0
  }
  if (piece.length > 0) yield piece
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const both = new Uint8Array(first.length + second.length)
  both.set(first)
  both.set(second, first.length)
  return both
}
