// The journal as it lies on the disk, read past the app.
import type { Page } from 'playwright-core'
import type { PotEntry, PotSummary } from '../../../src/session/ports.ts'

export const REHEARSAL = 'strandline-rehearsal-journal'
export const REAL = 'strandline-journal'

export type Stored = { entries: PotEntry[]; summaries: PotSummary[] }

export function storedIn(page: Page, journal: string): Promise<Stored> {
  return read(page, journal, ['entries', 'summaries'])
}

/** What is asked again and again while a pot runs: its journal grows, and reading all of it each time takes a core. */
export async function summariesIn(page: Page, journal: string): Promise<PotSummary[]> {
  return (await read(page, journal, ['summaries'])).summaries
}

function read<K extends keyof Stored>(page: Page, journal: string, stores: K[]): Promise<Pick<Stored, K>> {
  return page.evaluate(
    async ([name, wanted]) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name)
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
      const all = (store: string): Promise<never[]> =>
        new Promise((resolve, reject) => {
          const request = database.transaction(store).objectStore(store).getAll()
          request.onsuccess = () => resolve(request.result as never[])
          request.onerror = () => reject(request.error)
        })
      const stored = await Promise.all(wanted.map(async (store) => [store, await all(store)]))
      database.close()
      return Object.fromEntries(stored)
    },
    [journal, stores] as const
  )
}

/** What is wrong with the count of entries: every writer's own, in every stream, goes 1, 2, 3 without a gap. */
export function gapsIn(entries: readonly PotEntry[]): string[] {
  const counts = new Map<string, number[]>()
  for (const { streamId, writerId, seq } of entries) {
    const key = `${streamId} by ${writerId}`
    counts.set(key, [...(counts.get(key) ?? []), seq])
  }
  return [...counts].flatMap(([key, seqs]) => {
    const sorted = [...seqs].sort((a, b) => a - b)
    const wrong = sorted.find((seq, at) => seq !== at + 1)
    return wrong === undefined ? [] : [`${key}: ${sorted.join(' ')}`]
  })
}
