// Makes a backup: written as a stream, read once more from where it was written, and only then called one.
import { type BackupTotals, noTotals } from '../../core/backup/format.ts'
import { isBackedUp } from '../../core/backup/merge-kept.ts'
import { readBackup } from '../../core/backup/read.ts'
import { type BackupSource, writeBackup } from '../../core/backup/write.ts'
import { browserCodec } from '../../shell/backup/codec.ts'
import { asideOf, mediaBySize, mediaOf, streamIds, streamsOf } from '../../shell/backup/journal-source.ts'
import { piecesOf } from '../../shell/backup/pieces.ts'
import { openSink, type Sink } from '../../shell/backup/sink.ts'
import type { LastBackup, MadeBackup, Progress } from '../../ui/backup.ts'
import { LAST, type Opened, PUT_OFF } from './parts.ts'

/** The reading back counts for as much as the writing. */
const WRITING = 0.5

export async function backUp(parts: Opened, progress: Progress): Promise<MadeBackup> {
  const name = fileName(parts.nowMs())
  let sink: Sink | null = null
  try {
    sink = await openSink(name)
    if (sink === null) return { ok: false, cancelled: true, say: 'No place was chosen: no backup was made.' }
    const { source, head } = await sourceOf(parts)
    let totals: BackupTotals = noTotals()
    const whole = Math.max(1, head.streams + head.media)
    const told = (now: BackupTotals): void => {
      totals = { ...now }
      progress((WRITING * (now.streams + now.media)) / whole)
    }
    for await (const piece of writeBackup(source, browserCodec, told)) await sink.write(piece)
    const file = await sink.close()
    const wrong = await readBack(file, (share) => progress(WRITING + (1 - WRITING) * share))
    if (wrong !== null) {
      await sink.drop()
      return failed(`What was written does not read back (${wrong}) Try again, in another place.`)
    }
    sink.handOver()
    const last: LastBackup = {
      atMs: head.madeAtMs,
      name,
      bytes: file.size,
      batches: totals.streams,
      where: sink.where
    }
    await parts.kept.set(LAST, last)
    await parts.kept.remove(PUT_OFF)
    return { ok: true, last }
  } catch (error) {
    await sink?.drop()
    return failed(sayOf(error))
  }
}

async function sourceOf(parts: Opened): Promise<{ source: BackupSource; head: BackupSource['head'] }> {
  const { connection, kept, ids, nowMs } = parts
  const madeAtMs = nowMs()
  const streams = await streamIds(connection)
  const sizes = await mediaBySize(connection)
  const mediaBytes = [...sizes.values()].reduce((sum, { size }) => sum + size, 0)
  const head = { madeAtMs, writerId: ids.writerId, streams: streams.length, media: sizes.size, mediaBytes }
  const source = {
    head,
    streams: streamsOf(connection, streams),
    aside: asideOf(connection),
    kept: keptThings(kept),
    media: mediaOf(connection, [...sizes.keys()])
  }
  return { source, head }
}

async function* keptThings(kept: Opened['kept']): AsyncGenerator<{ key: string; value: unknown }> {
  for (const [key, value] of await kept.all()) {
    const thing = { key, value }
    if (isBackedUp(thing)) yield thing
  }
}

/** What is wrong with it; null: it reads back whole. */
async function readBack(file: Blob, progress: Progress): Promise<string | null> {
  for await (const part of readBackup(piecesOf(file), browserCodec, (at) => progress(at / file.size))) {
    if (part.kind === 'refused') return part.refusal.say
  }
  return null
}

function failed(say: string): MadeBackup {
  return { ok: false, cancelled: false, say }
}

function sayOf(error: unknown): string {
  const { name, message } = error as Error
  if (name === 'QuotaExceededError')
    return 'There is no room for the backup there. Make room, or choose another place. No backup was made.'
  return `No backup was made: it could not be written${message ? ` (${message})` : ''}. Try again.`
}

function fileName(nowMs: number): string {
  const at = new Date(nowMs - new Date(nowMs).getTimezoneOffset() * 60_000).toISOString()
  return `strandline ${at.slice(0, 10)} ${at.slice(11, 16).replace(':', '')}.strandline-backup`
}
