// From the tap's command to "stored", through the real kitchen of the built app, against a bare strict write of a record
// of the same size in the same page. One of each in turn, so that a slow moment of the disk hits both alike.
import { turns } from './bench-programme.ts'
import { type Figure, median, ms, ratio } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { JOURNAL, openRehearsal, startPot, type WithKitchen } from './kitchen-page.ts'

const TRIES = 500
const RATIO_MOST = 1.5
const EXTRA_MOST_MS = 3

export async function tapToStored({ visit, app }: Grounds): Promise<Figure> {
  const { context, page } = await visit()
  await openRehearsal(page, app)
  await startPot(page, 'Moss', turns(1, 0))
  const { tapMs, bareMs } = await page.evaluate(measureInPage, { tries: TRIES, journal: JOURNAL })
  await context.close()
  const [tap, bare] = [median(tapMs), median(bareMs)]
  const goalMs = Math.max(bare * RATIO_MOST, bare + EXTRA_MOST_MS)
  return {
    what: `From tap to stored, median of ${tapMs.length}`,
    found: `${ms(tap)}; a bare strict write ${ms(bare)} (${ratio(tap, bare)})`,
    goal: `${ms(goalMs)} or less: the larger of ${RATIO_MOST} x the bare write and ${EXTRA_MOST_MS} ms more`,
    met: tap <= goalMs
  }
}

async function measureInPage({ tries, journal }: { tries: number; journal: string }): Promise<{
  tapMs: number[]
  bareMs: number[]
}> {
  const opened = (request: IDBOpenDBRequest): Promise<IDBDatabase> =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result)
      request.onerror = () => reject(request.error)
    })
  const theirs = await opened(indexedDB.open(journal))
  const likeThis = await new Promise<{ seq: number }>((resolve) => {
    const all = theirs.transaction('entries').objectStore('entries').getAll()
    all.onsuccess = () => resolve(all.result.at(-1))
  })
  theirs.close()
  const making = indexedDB.open('bench-bare', 1)
  making.onupgradeneeded = () =>
    making.result.createObjectStore('entries', { keyPath: ['streamId', 'writerId', 'seq'] })
  const bare = await opened(making)
  const add = (record: object): Promise<void> =>
    new Promise((resolve, reject) => {
      const transaction = bare.transaction(['entries'], 'readwrite', { durability: 'strict' })
      transaction.objectStore('entries').add(record)
      transaction.oncomplete = () => resolve()
      transaction.onabort = () => reject(transaction.error)
    })
  const { kitchen } = (globalThis as unknown as WithKitchen).strandlineRehearsal
  const tapMs: number[] = []
  const bareMs: number[] = []
  for (let no = 0; no < tries; no++) {
    const tappedMs = performance.now()
    const sent = await kitchen.send('Moss', { type: 'WriteNote', text: `note ${no}` })
    tapMs.push(performance.now() - tappedMs)
    if (!sent.ok) throw new Error(`note ${no} was not stored`)
    const beganMs = performance.now()
    await add({ ...likeThis, seq: no })
    bareMs.push(performance.now() - beganMs)
  }
  return { tapMs, bareMs }
}
