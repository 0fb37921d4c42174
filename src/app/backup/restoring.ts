// The second reading of a backup: what it holds is laid out of sight, and then all of it is merged at once.
import type { BackedUpMedia } from '../../core/backup/format.ts'
import { readBackup } from '../../core/backup/read.ts'
import { browserCodec } from '../../shell/backup/codec.ts'
import {
  beginStaging,
  clearStaged,
  dropStaged,
  type Incoming,
  keptWaiting,
  readMark,
  stage
} from '../../shell/backup/incoming.ts'
import { type MergedStream, mergeIn } from '../../shell/backup/merge-in.ts'
import { piecesOf } from '../../shell/backup/pieces.ts'
import type { Progress, Restored } from '../../ui/backup.ts'
import { putKept } from './kept-in.ts'
import { lineOf } from './line-of.ts'
import { type Opened, SAID } from './parts.ts'

type Refused = Extract<Restored, { ok: false }>

/** So much is laid out in one go: a transaction has its price, and memory holds one go. */
const GO_BYTES = 4 * 1024 * 1024
const UNTOUCHED = 'The records here are as they were.'

export type Wish = { file: Blob; digest: string; unwanted: ReadonlySet<string>; progress: Progress }

export async function restore(parts: Opened, wish: Wish): Promise<Restored> {
  const { connection } = parts
  try {
    await beginStaging(connection, parts.nowMs())
    const refused = (await layOut(parts, wish)) ?? busy(parts)
    if (refused !== null) {
      await dropStaged(connection)
      return refused
    }
    const { writerId } = parts.ids
    await mergeIn(connection, { summarise: lineOf, writerId, atMs: parts.nowMs() })
  } catch (error) {
    await dropStaged(connection).catch(() => {})
    return broken(error)
  }
  return finish(parts)
}

/** Why nothing heavy is begun now; null: it may. */
export function busy({ watched, owns }: Opened): Refused | null {
  if (!owns()) {
    return refusal('Another tab works the pots.', `Restore there, or press “Work here” first. ${UNTOUCHED}`)
  }
  if (!watched()) return null
  return refusal('A pot has the heat on or wants hands soon.', `Restore when it rests. ${UNTOUCHED}`)
}

async function layOut({ connection }: Opened, wish: Wish): Promise<Refused | null> {
  const { file, digest, unwanted, progress } = wish
  let go: (Incoming | BackedUpMedia)[] = []
  let bytes = 0
  let before = 0
  let at = 0
  const passed = (now: number): void => {
    at = now
    progress(now / file.size)
  }
  for await (const part of readBackup(piecesOf(file), browserCodec, passed)) {
    if (part.kind === 'refused') return refusal(part.refusal.say, part.refusal.instead)
    if (part.kind === 'end') {
      await stage(connection, go)
      return part.digest === digest
        ? null
        : refusal('The file was changed since it was looked at.', `Choose it again. ${UNTOUCHED}`)
    }
    if (part.kind === 'media' && !unwanted.has(part.media.sha256)) go.push(part.media)
    if (part.kind === 'entries' || part.kind === 'aside' || part.kind === 'kept') go.push(part)
    bytes += at - before
    before = at
    if (bytes < GO_BYTES) continue
    await stage(connection, go)
    go = []
    bytes = 0
  }
  return refusal('The file ended without an answer.', `Choose it again. ${UNTOUCHED}`)
}

/** What comes after the merging, also where the page died right behind it. */
export async function finish(parts: Opened): Promise<Restored> {
  const { connection, kept, ids } = parts
  const mark = await readMark<MergedStream[]>(connection)
  const merged = mark?.result ?? []
  // What this store wrote and had lost goes up to some count: going on from there would give a count out twice.
  if (merged.some(({ ours }) => ours)) {
    const fresh = ids.newId()
    await kept.set('writer', fresh)
    ids.writerId = fresh
  }
  let texts = 0
  let notKept: string | null = null
  try {
    texts = await putKept(kept, await keptWaiting(connection))
    await clearStaged(connection)
  } catch {
    notKept =
      'Drafts, protocols and settings could not be stored yet. They are put in place when Strandline opens next.'
  }
  await parts.merged()
  const came = merged.filter(({ heldBack }) => !heldBack)
  return {
    ok: true,
    batches: came.filter(({ streamId }) => streamId.startsWith('pot/')).length,
    entries: came.reduce((sum, { added }) => sum + added, 0),
    texts,
    heldBack: merged.length - came.length,
    notKept
  }
}

/** What a restore left that was cut short: before the merging it is dropped, after it finished. Both are said. */
export async function tidyUp(parts: Opened): Promise<void> {
  const mark = await readMark(parts.connection)
  if (mark === undefined) return
  if (mark.state === 'staging') {
    await dropStaged(parts.connection)
    await parts.kept.set(
      SAID,
      'A restore was cut short. Nothing of it was taken over: the records are as they were before. Restore again from the file.'
    )
    return
  }
  const done = await finish(parts)
  if (done.ok && done.notKept === null) {
    await parts.kept.set(
      SAID,
      `A restore was cut short after its records were in: the rest was done now. ${done.batches} ${done.batches === 1 ? 'batch' : 'batches'} came in.`
    )
  }
}

function refusal(say: string, instead: string): Refused {
  return { ok: false, say, instead }
}

function broken(error: unknown): Refused {
  const { name, message } = error as Error
  if (name === 'QuotaExceededError') {
    return refusal(
      'There is not enough room on this device for this backup.',
      `${UNTOUCHED} Make room, for example by letting old photos go, then restore again.`
    )
  }
  return refusal(`The restore broke off${message ? ` (${message})` : ''}.`, `${UNTOUCHED} Restore again.`)
}
