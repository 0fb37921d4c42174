// Puts made batches into a browser's journal, past the app.
import type { Page } from 'playwright-core'
import { type Batch, batchNo } from './book-batches.ts'

/** So many go into one transaction. */
const AT_ONCE = 250

/** The page must be of the app's origin, and the journal there already. */
export async function fillBook(page: Page, journal: string, count: number, nowMs: number): Promise<void> {
  for (let from = 0; from < count; from += AT_ONCE) {
    const batches = Array.from({ length: Math.min(AT_ONCE, count - from) }, (_, i) => batchNo(from + i, nowMs))
    // As one text: the driver would walk through every field.
    await page.evaluate(putBatches, { journal, text: JSON.stringify(batches) })
  }
}

async function putBatches({ journal, text }: { journal: string; text: string }): Promise<void> {
  const batches: Batch[] = JSON.parse(text)
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(journal)
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
  const transaction = database.transaction(['entries', 'summaries'], 'readwrite')
  for (const { entries, summary } of batches) {
    for (const entry of entries) transaction.objectStore('entries').put(entry)
    transaction.objectStore('summaries').put(summary)
  }
  await new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve()
    transaction.onerror = () => reject(transaction.error)
  })
  database.close()
}
