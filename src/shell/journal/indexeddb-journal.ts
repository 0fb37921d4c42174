// The journal in IndexedDB: one record an entry, added and never overwritten, awaited to the end of a strict
// transaction. Chrome is relaxed by default since version 121, so strict is asked for.
import type { MediaBytes } from '../../core/pot/media.ts'
import type { AppendFailure, JournalPort, PotSummary, StoredEntry } from '../../session/ports.ts'
import { appendFailure } from './append-failure.ts'
import { type Connection, ConnectionLost, type ConnectionOptions, openConnection } from './connection.ts'
import { hashesIn, readMedia, readSizes, writeMedia } from './media-store.ts'
import { DRAWN, ENTRIES, LIVE, MEDIA, STARTED, SUMMARIES } from './stores.ts'
import { inOrderOfWriting } from './writing-order.ts'

export type IndexedDbJournal = JournalPort & { close(): void }

export function indexedDbJournal(name: string, options: ConnectionOptions = {}): IndexedDbJournal {
  const connection = openConnection(name, options)
  return {
    append: (entries, summaries, media = []) => append(connection, entries, summaries, media),
    // [streamId, []] is above every writer: a list sorts after a text.
    read: (streamId) => onceMore(() => readRange(connection, [streamId], [streamId, []])),
    readAll: (prefix) => onceMore(() => readRange(connection, [prefix], [`${prefix}\uffff`])),
    drawnFrom: (itemId) => onceMore(() => readBy(connection, DRAWN, itemId ?? UNKNOWN)),
    summaries: (fromMs, toMs, limit) => onceMore(() => readSummaries(connection, fromMs, toMs, limit ?? Infinity)),
    live: () => onceMore(() => readBy(connection, LIVE)),
    media: (sha256) => onceMore(() => connection.run('readonly', [MEDIA], (read) => readMedia(read, sha256))),
    mediaSizes: () => onceMore(() => connection.run('readonly', [MEDIA], readSizes)),
    close: connection.close
  }
}

async function append(
  connection: Connection,
  entries: readonly StoredEntry[],
  summaries: PotSummary[],
  media: MediaBytes[]
): Promise<{ ok: true } | AppendFailure> {
  // An act without pictures locks no more than it writes.
  const stores = hashesIn(entries).length > 0 ? [ENTRIES, SUMMARIES, MEDIA] : [ENTRIES, SUMMARIES]
  try {
    await onceMore(() =>
      connection.run('readwrite', stores, (transaction) => {
        const entryStore = transaction.objectStore(ENTRIES)
        for (const entry of entries) entryStore.add(entry)
        const summaryStore = transaction.objectStore(SUMMARIES)
        for (const summary of summaries) summaryStore.put(stored(summary))
        if (stores.includes(MEDIA)) writeMedia(transaction, entries, media)
        return () => undefined
      })
    )
    return { ok: true }
  } catch (error) {
    return appendFailure(error)
  }
}

function readRange(connection: Connection, first: string[], last: unknown[]): Promise<unknown[]> {
  return connection.run('readonly', [ENTRIES], (transaction) => {
    const request = transaction.objectStore(ENTRIES).getAll(IDBKeyRange.bound(first, last))
    return () => inOrderOfWriting(request.result)
  })
}

function readSummaries(connection: Connection, fromMs: number, toMs: number, limit: number): Promise<PotSummary[]> {
  return connection.run('readonly', [SUMMARIES], (transaction) => {
    const range = IDBKeyRange.bound(fromMs, toMs, false, true)
    const started = transaction.objectStore(SUMMARIES).index(STARTED)
    // A whole book is read at once: a cursor over thousands takes many times as long.
    if (limit === Infinity) {
      const all = started.getAll(range)
      return () => all.result.map(shown).reverse()
    }
    const found: PotSummary[] = []
    const request = started.openCursor(range, 'prev')
    request.onsuccess = () => {
      const cursor = request.result
      if (cursor === null || found.length >= limit) return
      found.push(shown(cursor.value))
      cursor.continue()
    }
    return () => found
  })
}

/** Those that an index holds, in the order of their start. */
function readBy(connection: Connection, index: string, key?: string): Promise<PotSummary[]> {
  return connection.run('readonly', [SUMMARIES], (transaction) => {
    const request = transaction.objectStore(SUMMARIES).index(index).getAll(key)
    return () => request.result.map(shown).sort((a, b) => a.startedAtMs - b.startedAtMs)
  })
}

/** Retrying on the old handle fails almost always; `run` has dropped it, so the second try opens a new one. */
async function onceMore<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof ConnectionLost) return work()
    throw error
  }
}

/** Where the index has a pot whose draws are not worked out: no id is so short. */
const UNKNOWN = '?'

type Stored = PotSummary & { live?: 1; drawn?: string[] }

/** What runs elsewhere is not live here, and nothing of it is ever called for. */
export function stored(summary: PotSummary): Stored {
  const live = summary.status === 'running' || summary.status === 'held'
  // An index that takes a list leaves out what stands there twice.
  const drawn = summary.draws ? summary.draws.map(({ itemId }) => itemId) : [UNKNOWN]
  return { ...summary, drawn, ...(live && !summary.elsewhere ? { live: 1 } : {}) }
}

function shown({ live: _, drawn: __, ...summary }: Stored): PotSummary {
  return summary
}
