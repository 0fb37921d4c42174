// Things put on the shelf past the screens, into the journal as it lies on the disk.
import type { Page } from 'playwright-core'
import { sealEntry } from '../../../src/core/pot/write-entry.ts'
import type { ShelfEvent } from '../../../src/core/shelf/events.ts'
import type { Thing } from '../../../src/core/shelf/thing.ts'

export type Stood = { itemId: string; thing: Thing; level: number | null }

/** The app must have made its journal; it reads the shelf whenever it is looked at. */
export async function putOnShelf(page: Page, journal: string, things: readonly Stood[]): Promise<void> {
  const entries = things.map(({ itemId, thing, level }, i) => {
    const event: ShelfEvent = { type: 'ShelfItemAdded', itemId, thing, level }
    const when = { atMs: 1_000 + i, recordedAtMs: 1_000 + i, bootId: 'b', monoMs: 0, tzOffsetMin: 0 }
    const place = { v: 2, streamId: `stock/${itemId}`, writerId: 'seed', seq: 1, after: null }
    return sealEntry({ ...place, ...when, commandId: `seed-${itemId}`, by: { kind: 'clock' }, event })
  })
  await page.evaluate(
    async ({ name, all }) => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const request = indexedDB.open(name)
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
      await new Promise<void>((resolve, reject) => {
        const transaction = database.transaction('entries', 'readwrite')
        for (const entry of all) transaction.objectStore('entries').add(entry)
        transaction.oncomplete = () => resolve()
        transaction.onerror = () => reject(transaction.error)
      })
      database.close()
    },
    { name: journal, all: entries }
  )
}
