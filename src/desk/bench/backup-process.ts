// What `bench -- backup` measures: run on its own, so that the memory is that of a backup and of nothing else.
import { createHash } from 'node:crypto'
import { createReadStream, createWriteStream, statSync } from 'node:fs'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { BackedUpMedia, Codec } from '../../core/backup/format.ts'
import { readBackup } from '../../core/backup/read.ts'
import { type BackupSource, writeBackup } from '../../core/backup/write.ts'

const codec: Codec = {
  encode: (text) => new TextEncoder().encode(text),
  decode: (bytes) => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes),
  sha256: async (bytes) => createHash('sha256').update(bytes).digest('hex')
}

const PICTURE_BYTES = 400_000
/** A tenth of the file are entries, as in a book with many pictures. */
const ENTRIES_SHARE = 0.1
const ENTRIES_OF_A_BATCH = 300

const [path = '', sizeMB = '200'] = process.argv.slice(2)
const bytesWanted = Number(sizeMB) * 1e6
const pictures = Math.round((bytesWanted * (1 - ENTRIES_SHARE)) / PICTURE_BYTES)
const batches = Math.max(1, Math.round((bytesWanted * ENTRIES_SHARE) / (ENTRIES_OF_A_BATCH * 420)))

async function* streams(): BackupSource['streams'] extends AsyncIterable<infer T> ? AsyncGenerator<T> : never {
  for (let batch = 0; batch < batches; batch++) {
    const streamId = `pot/${batch}`
    const entries = Array.from({ length: ENTRIES_OF_A_BATCH }, (_, no) => ({
      v: 2,
      streamId,
      writerId: 'w1',
      seq: no + 1,
      crc: '00000000',
      event: { type: 'NoteWritten', text: `entry ${no} of batch ${batch}: `.padEnd(300, 'skein '), path: null }
    }))
    yield { streamId, entries }
  }
}

async function* media(): AsyncGenerator<BackedUpMedia> {
  for (let no = 0; no < pictures; no++) {
    const bytes = new Uint8Array(PICTURE_BYTES)
    for (let at = 0; at < bytes.length; at += 64) bytes[at] = (no * 31 + at) & 0xff
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    yield { sha256, mime: 'image/jpeg', size: bytes.length, storedAtMs: no, streamIds: [`pot/${no % batches}`], bytes }
  }
}

async function* nothing(): AsyncGenerator<never> {}

/** The most memory over what it was at the start, looked at often while work goes on. */
async function peakOf(work: () => Promise<void>): Promise<{ peakBytes: number; tookMs: number }> {
  const startBytes = process.memoryUsage().rss
  let peakBytes = 0
  const look = (): void => {
    peakBytes = Math.max(peakBytes, process.memoryUsage().rss - startBytes)
  }
  const timer = setInterval(look, 20)
  const beganMs = performance.now()
  await work()
  look()
  clearInterval(timer)
  return { peakBytes, tookMs: performance.now() - beganMs }
}

const head = { madeAtMs: 0, writerId: 'w1', streams: batches, media: pictures, mediaBytes: pictures * PICTURE_BYTES }
const source: BackupSource = { head, streams: streams(), aside: nothing(), kept: nothing(), media: media() }
const wrote = await peakOf(() =>
  pipeline(Readable.from(writeBackup(source, codec), { objectMode: true, highWaterMark: 4 }), createWriteStream(path))
)
let end = ''
const read = await peakOf(async () => {
  for await (const part of readBackup(createReadStream(path), codec)) end = part.kind
})
const bare = await peakOf(async () => {
  const hash = createHash('sha256')
  for await (const piece of createReadStream(path)) hash.update(piece)
})
const told = {
  bytes: statSync(path).size,
  peakBytes: Math.max(wrote.peakBytes, read.peakBytes),
  bareBytes: bare.peakBytes,
  wroteMs: wrote.tookMs,
  readMs: read.tookMs,
  bareMs: bare.tookMs,
  end
}
process.stdout.write(JSON.stringify(told))
