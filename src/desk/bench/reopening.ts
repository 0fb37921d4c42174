// A day of pots opened again: from the session's opening to its pots, in a page just loaded, against a page just loaded
// that does nothing but read the same entries.
import type { Page } from 'playwright-core'
import { turns } from './bench-programme.ts'
import { type Figure, median, ms, ratio } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { JOURNAL, openRehearsal, startPot, type WithKitchen } from './kitchen-page.ts'

const POTS = 8
const ENTRIES = 2_000
/** As many steps as a long dip gradient has, and more than the fill needs. */
const STEPS = 80
const TRIES = 15
const RATIO_MOST = 1.5

export async function reopening({ visit, app, bare }: Grounds): Promise<Figure> {
  const { context, page } = await visit()
  await openRehearsal(page, app)
  for (let no = 1; no <= POTS; no++) {
    const potId = `Pot ${no}`
    await startPot(page, potId, turns(STEPS, 0))
    await page.evaluate(fillInPage, { potId, entries: ENTRIES / POTS, journal: JOURNAL })
  }
  const openMs: number[] = []
  const rawMs: number[] = []
  let entries = 0
  for (let no = 0; no < TRIES; no++) {
    await page.goto(bare)
    const raw = await page.evaluate(readRaw, JOURNAL)
    rawMs.push(raw.tookMs)
    entries = raw.entries
    await openRehearsal(page, app)
    openMs.push(await tookToOpen(page))
  }
  await context.close()
  const [open, raw] = [median(openMs), median(rawMs)]
  return {
    what: `A day opened again: ${POTS} pots, ${entries} entries, median of ${TRIES} loads`,
    found: `${ms(open)}; the same entries read raw ${ms(raw)} (${ratio(open, raw)})`,
    goal: `${ms(raw * RATIO_MOST)} or less: ${RATIO_MOST} x reading them raw`,
    met: open <= raw * RATIO_MOST
  }
}

/** Acts, readings, judgements and notes, as on a day at the stove, until the journal of the pot is long enough. */
async function fillInPage({
  potId,
  entries,
  journal
}: {
  potId: string
  entries: number
  journal: string
}): Promise<void> {
  const { kitchen } = (globalThis as unknown as WithKitchen).strandlineRehearsal
  const database = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open(journal)
    request.onsuccess = () => resolve(request.result)
  })
  const stored = (): Promise<number> =>
    new Promise((resolve) => {
      const range = IDBKeyRange.bound([`pot/${potId}`], [`pot/${potId}`, []])
      const request = database.transaction('entries').objectStore('entries').count(range)
      request.onsuccess = () => resolve(request.result)
    })
  for (let no = 1; (await stored()) < entries; no++) {
    await kitchen.send(potId, { type: 'MarkDone', path: `turn${no}` })
    await kitchen.send(potId, { type: 'ReadTemperature', tempC: 60 + (no % 30) })
    if (no % 3 === 0) await kitchen.send(potId, { type: 'Judge', of: 'bath', grade: 'tint', hue: 'greenish' })
    if (no % 4 === 0) await kitchen.send(potId, { type: 'WriteNote', text: `Looks even, turn ${no}` })
  }
  database.close()
}

async function tookToOpen(page: Page): Promise<number> {
  const { tookMs, pots } = await page.evaluate(() => {
    const [from] = performance.getEntriesByName('pots-opening')
    const [to] = performance.getEntriesByName('pots-open')
    const { kitchen } = (globalThis as unknown as WithKitchen).strandlineRehearsal
    return { tookMs: (to?.startTime ?? Number.NaN) - (from?.startTime ?? 0), pots: kitchen.pots.value.length }
  })
  if (pots !== POTS) throw new Error(`${pots} pots came back, not ${POTS}`)
  return tookMs
}

async function readRaw(journal: string): Promise<{ tookMs: number; entries: number }> {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(journal)
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
  // The app opens its database while it starts; here, too, opening it is not what is measured.
  const beganMs = performance.now()
  const all = await new Promise<unknown[]>((resolve, reject) => {
    const request = database.transaction('entries').objectStore('entries').getAll()
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
  const tookMs = performance.now() - beganMs
  database.close()
  return { tookMs, entries: all.length }
}
