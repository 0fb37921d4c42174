// Batches that lie in the journal already, as a dyer's days left them: run through the real engine, written past the app.
import type { Page } from 'playwright-core'
import type { PotEvent, PotIdentity } from '../../../src/core/pot/events.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import { givenBy } from '../../../src/desk/rehearse/given.ts'
import type { PotEntry, PotSummary } from '../../../src/session/ports.ts'
import { rehearse } from '../../../src/session/rehearsal.ts'
import { summaryOf } from '../../../src/session/summary.ts'
import { REAL } from './journal.ts'

export type KeptBatch = { potId: string; entries: PotEntry[]; summary: PotSummary }

export type Wanted = {
  potId: string
  protocol?: string
  /** Of dry goods, g. */
  goods?: string
  pot?: Partial<PotIdentity>
  startMs: number
  /** Told just before the end, a minute apart. */
  more?: readonly PotEvent[]
}

/** A batch dyed by the protocol from start to end. */
export function dyed({ potId, protocol = 'dip-gradient', goods = '100', pot, startMs, more = [] }: Wanted): KeptBatch {
  const given = givenBy(`protocols/${protocol}.yaml`, potId, [], goods)
  const { told, stuck } = rehearse(given.programme, { ...given.pot, ...pot, potId }, given.protocol, startMs)
  if (stuck !== null) throw new Error(stuck)
  const ends = told.findIndex(({ event }) => event.type === 'Finished')
  const endMs = told[ends]?.atMs ?? startMs
  const between = more.map((event, i) => ({
    event,
    atMs: endMs - (more.length - i) * 1_000,
    by: { kind: 'person', name: null, via: 'tap' } as const
  }))
  const streamId = `pot/${potId}`
  const entries = [...told.slice(0, ends), ...between, ...told.slice(ends)].map(({ event, atMs, by }, i) =>
    sealEntry({
      v: 2,
      streamId,
      writerId: 'stage',
      seq: i + 1,
      after: i === 0 ? null : { writerId: 'stage', seq: i },
      commandId: `c${i}`,
      atMs,
      recordedAtMs: atMs,
      bootId: 'stage',
      monoMs: atMs - startMs,
      tzOffsetMin: 0,
      by,
      event
    })
  )
  const summary = summaryOf(streamId, fold(entries), entries, null)
  if (!summary) throw new Error('a batch that was not started')
  return { potId, entries, summary }
}

/** Into the journal of the app on this page; the page is then loaded again, and finds them. */
export async function keep(page: Page, batches: readonly KeptBatch[]): Promise<void> {
  await page.evaluate(
    async ({ name, all }) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name)
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
      const write = database.transaction(['entries', 'summaries'], 'readwrite')
      for (const { entries, summary } of all) {
        for (const entry of entries) write.objectStore('entries').add(entry)
        write.objectStore('summaries').put(summary)
      }
      await new Promise<void>((resolve, reject) => {
        write.oncomplete = () => resolve()
        write.onerror = () => reject(write.error)
      })
      database.close()
    },
    { name: REAL, all: batches }
  )
  await page.reload()
}
