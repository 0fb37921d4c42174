// The one transaction that makes what waits part of the journal.
import type { Aside, RawEntry } from '../../core/backup/format.ts'
import { mergedStream, mergeStream, newAside, wordsOf } from '../../core/backup/merge.ts'
import { crc32 } from '../../core/pot/crc.ts'
import type { PotSummary } from '../../session/ports.ts'
import type { Connection } from '../journal/connection.ts'
import { stored } from '../journal/indexeddb-journal.ts'
import type { StoredMedia } from '../journal/media-store.ts'
import { ASIDE, ENTRIES, INCOMING, MEDIA, SUMMARIES } from '../journal/stores.ts'
import { inOrderOfWriting } from '../journal/writing-order.ts'
import { type Incoming, putMark, waiting } from './incoming.ts'
import { asStored, potIdOf, type StoredAside, streamRange } from './journal-source.ts'
import { requested } from './requested.ts'

export type MergedStream = {
  streamId: string
  /** It was not here at all. */
  fresh: boolean
  added: number
  mended: number
  conflicts: number
  /** Some of what came was written by this very store, which had lost it. */
  ours: boolean
  /** On the stove of this device: left as it is, nothing of it was merged. */
  heldBack: boolean
  /** Its line in the Dye book. Null: it is none of a pot. */
  summary: PotSummary | null
}

export type MergeIn = {
  /** The line of a stream from its entries in the order of writing; `told`: what the backup says of it. */
  writerId: string
  summarise(streamId: string, entries: readonly unknown[], told: unknown): PotSummary | null
  atMs: number
}

/** Streams that had nothing new are left out of what comes back. */
export async function mergeIn(connection: Connection, options: MergeIn): Promise<MergedStream[]> {
  const merged: MergedStream[] = []
  let failed: unknown = null
  try {
    return await connection.run('readwrite', [ENTRIES, SUMMARIES, MEDIA, ASIDE, INCOMING], (transaction) => {
      mergeAll(transaction, options, merged).catch((error) => {
        failed = error
        transaction.abort()
      })
      return () => merged
    })
  } catch (error) {
    throw failed ?? error
  }
}

async function mergeAll(transaction: IDBTransaction, options: MergeIn, merged: MergedStream[]): Promise<void> {
  const incoming = transaction.objectStore(INCOMING)
  let gathered: { streamId: string; entries: RawEntry[]; summary?: unknown } | null = null
  const close = async (): Promise<void> => {
    if (gathered !== null) await mergeOne(transaction, options, gathered, merged)
    gathered = null
  }
  for (let key = await nextKey(incoming, -1); key !== null; key = await nextKey(incoming, key)) {
    const part = (await requested(incoming.get(key))) as Incoming
    if (part.kind === 'entries' && gathered?.streamId === part.streamId) gathered.entries.push(...part.entries)
    else {
      await close()
      if (part.kind === 'entries') gathered = { ...part, entries: [...part.entries] }
    }
    if (part.kind === 'aside') await setAside(transaction, part.aside.entry.streamId, [part.aside])
    if (part.kind === 'media' && !part.added) await nameMedia(transaction.objectStore(MEDIA), part, merged)
    // Small kept things lie in another database: they are put there after this, and wait on.
    if (part.kind !== 'kept') incoming.delete(key)
  }
  await close()
  putMark(transaction, { state: 'merged', atMs: options.atMs, result: merged })
}

async function nextKey(store: IDBObjectStore, after: number): Promise<number | null> {
  const range = IDBKeyRange.bound(after, waiting().upper, true)
  return ((await requested(store.getKey(range))) as number | undefined) ?? null
}

async function mergeOne(
  transaction: IDBTransaction,
  { summarise, writerId }: MergeIn,
  { streamId, entries: theirs, summary: told }: { streamId: string; entries: RawEntry[]; summary?: unknown },
  merged: MergedStream[]
): Promise<void> {
  const entries = transaction.objectStore(ENTRIES)
  const summaries = transaction.objectStore(SUMMARIES)
  const ours = (await requested(entries.getAll(streamRange(streamId)))) as RawEntry[]
  const potId = potIdOf(streamId)
  const line = potId === null ? undefined : await requested(summaries.get(potId))
  const step = mergeStream(ours, theirs)
  const came = step.add.length + step.mend.length
  if (line?.live === 1) {
    if (came > 0) merged.push({ ...nothing(streamId), heldBack: true, summary: line })
    return
  }
  for (const entry of step.add) entries.add(entry)
  for (const entry of step.mend) entries.put(entry)
  const conflicts = await setAside(transaction, streamId, step.aside)
  if (came === 0 && conflicts === 0) return
  const summary = summarise(streamId, inOrderOfWriting(mergedStream(ours, step)), line ?? told)
  if (summary !== null) summaries.put(stored(summary))
  const fresh = ours.length === 0
  const [added, mended] = [step.add.length, step.mend.length]
  const byUs = step.add.some((entry) => entry.writerId === writerId)
  merged.push({ streamId, fresh, added, mended, conflicts, ours: byUs, heldBack: false, summary })
}

function nothing(streamId: string): MergedStream {
  return { streamId, fresh: false, added: 0, mended: 0, conflicts: 0, ours: false, heldBack: false, summary: null }
}

/** Gives how many of them are conflicts that nobody knew of. */
async function setAside(transaction: IDBTransaction, streamId: string, coming: readonly Aside[]): Promise<number> {
  if (coming.length === 0) return 0
  const store = transaction.objectStore(ASIDE)
  const known = (await requested(store.getAll(streamRange(streamId)))) as StoredAside[]
  const standing = await Promise.all(
    coming.map(({ entry }) =>
      requested(transaction.objectStore(ENTRIES).get([entry.streamId, entry.writerId, entry.seq]))
    )
  )
  const fresh = newAside(
    known,
    coming,
    standing.filter((entry) => entry !== undefined)
  )
  for (const one of fresh) store.put(asStored(one, crc32(wordsOf(one.entry))))
  return fresh.filter(({ why }) => why === 'conflict').length
}

/** Bytes that were here before belong to the streams that came, too. They are read only where one did come. */
async function nameMedia(
  media: IDBObjectStore,
  { sha256, streamIds }: { sha256: string; streamIds: string[] },
  merged: readonly MergedStream[]
): Promise<void> {
  const came = streamIds.filter((id) => merged.some(({ streamId, added }) => streamId === id && added > 0))
  if (came.length === 0) return
  const there = (await requested(media.get(sha256))) as StoredMedia | undefined
  const more = came.filter((streamId) => !there?.streamIds.includes(streamId))
  if (there !== undefined && more.length > 0) media.put({ ...there, streamIds: [...there.streamIds, ...more] })
}
