// The journal in memory, with faults to order: for tests, the simulation and the desk. Same contract as IndexedDB.
import type { MediaBytes } from '../../core/pot/media.ts'
import type { AppendFailure, JournalPort, PotSummary, StoredEntry } from '../../session/ports.ts'
import { addSize, hashesIn, mediaAfter, noMedia, type StoredMedia, shownMedia } from './media-store.ts'

/** What is to happen to the next writes. 'crash-before' and 'crash-after' never answer: the page died between the tap
 * and the store, or between the store and the screen. */
export type Fault =
  | 'conflict'
  | 'full'
  | 'lost'
  | 'crash-before'
  | 'crash-after'
  | { slowMs: number; then?: Exclude<Fault, object> }

export type MemoryStore = {
  entries: Map<string, unknown>
  summaries: Map<string, PotSummary>
  media: Map<string, StoredMedia>
}

export type MemoryJournalOptions = {
  /** Outlives a journal: what a next start of the app finds. */
  store?: MemoryStore
  /** Asked before each write; null: it goes well. */
  fault?: (write: number) => Fault | null
  /** Asked before each reading; true: it throws. */
  failRead?: (read: number) => boolean
  /** How a slow write waits; the simulation gives its own time. */
  wait?: (ms: number) => Promise<void>
}

export type MemoryJournal = JournalPort & { store: MemoryStore }

export function memoryStore(): MemoryStore {
  return { entries: new Map(), summaries: new Map(), media: new Map() }
}

export function memoryJournal(options: MemoryJournalOptions = {}): MemoryJournal {
  const store = options.store ?? memoryStore()
  const wait = options.wait ?? ((ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms)))
  let writes = 0
  let reads = 0

  const read = async <T>(work: () => T): Promise<T> => {
    await null
    if (options.failRead?.(++reads)) throw new Error('the store does not answer')
    return work()
  }

  return {
    store,
    async append(entries, summaries, media = []) {
      await null
      let fault = options.fault?.(++writes) ?? null
      if (typeof fault === 'object' && fault !== null) {
        await wait(fault.slowMs)
        fault = fault.then ?? null
      }
      if (fault === 'crash-before') return never()
      const answer =
        fault === null || fault === 'crash-after' ? write(store, entries, summaries, media) : failure(fault)
      return fault === 'crash-after' ? never() : answer
    },
    read: (streamId) => read(() => streamOf(store, streamId)),
    readAll: (prefix) =>
      read(() => {
        const all = [...store.entries.values()] as StoredEntry[]
        return all.filter(({ streamId }) => streamId.startsWith(prefix)).map((entry) => structuredClone(entry))
      }),
    drawnFrom: (itemId) =>
      read(() =>
        [...store.summaries.values()]
          .filter(({ draws }) => (itemId === null ? !draws : draws?.some((draw) => draw.itemId === itemId)))
          .sort((a, b) => a.startedAtMs - b.startedAtMs)
          .map((summary) => structuredClone(summary))
      ),
    summaries: (fromMs, toMs, limit = Infinity) =>
      read(() =>
        [...store.summaries.values()]
          .filter(({ startedAtMs }) => startedAtMs >= fromMs && startedAtMs < toMs)
          .sort((a, b) => b.startedAtMs - a.startedAtMs)
          .slice(0, limit)
          .map((summary) => structuredClone(summary))
      ),
    live: () =>
      read(() =>
        [...store.summaries.values()]
          .filter(({ status, elsewhere }) => !elsewhere && (status === 'running' || status === 'held'))
          .sort((a, b) => a.startedAtMs - b.startedAtMs)
          .map((summary) => structuredClone(summary))
      ),
    media: (sha256) => read(() => structuredClone(shownMedia(store.media.get(sha256)))),
    mediaSizes: () =>
      read(() => {
        const sizes = noMedia()
        for (const { mime, size } of store.media.values()) addSize(sizes, mime, size)
        return sizes
      })
  }
}

function write(
  store: MemoryStore,
  entries: readonly StoredEntry[],
  summaries: PotSummary[],
  media: MediaBytes[]
): { ok: true } | AppendFailure {
  const keys = entries.map(({ streamId, writerId, seq }) => JSON.stringify([streamId, writerId, seq]))
  if (keys.some((key, at) => store.entries.has(key) || keys.indexOf(key) < at)) return { ok: false, why: 'conflict' }
  entries.forEach((entry, at) => {
    store.entries.set(keys[at] as string, structuredClone(entry))
  })
  for (const summary of summaries) store.summaries.set(summary.potId, structuredClone(summary))
  for (const sha256 of hashesIn(entries)) {
    const after = mediaAfter(store.media.get(sha256) ?? null, sha256, entries, media)
    if (after === null) store.media.delete(sha256)
    else store.media.set(sha256, structuredClone(after))
  }
  return { ok: true }
}

/** A Map keeps the order of writing. */
function streamOf(store: MemoryStore, streamId: string): unknown[] {
  const found: unknown[] = []
  for (const entry of store.entries.values()) {
    if ((entry as StoredEntry).streamId === streamId) found.push(structuredClone(entry))
  }
  return found
}

function failure(why: 'conflict' | 'full' | 'lost'): AppendFailure {
  return why === 'conflict' ? { ok: false, why } : { ok: false, why, say: 'a fault to order' }
}

function never(): Promise<never> {
  return new Promise(() => {})
}
