// A photo of 12 megapixels from its file to readings at its marks, in the built app, against the browser's own decoding of
// the same file in the same page; and how long the page was kept from anything else meanwhile.
import type { Marks } from '../../core/colour/index.ts'
import { type Figure, median, ms, ratio } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { openRehearsal } from './kitchen-page.ts'

const TRIES = 9
const GOAL = 1.5
/** A browser tells of tasks from here on. */
const LONG_TASK_MS = 50

/** What of the app is measured. */
type Desk = {
  photos: {
    open(id: string, file: Blob): Promise<{ ok: boolean }>
    read(id: string, marks: Marks): Promise<{ ok: boolean; read?: object }>
  }
}
type WithDesk = { strandlineRehearsal: { kitchen: { swatches?(): Promise<Desk> } } }

type Timed = { decodedMs: number[]; readMs: number[]; keptMs: number[]; longestMs: number; bytes: number }

export async function photoFile(grounds: Grounds): Promise<Figure> {
  const { context, page } = await grounds.visit()
  await openRehearsal(page, grounds.app)
  const timed = await page.evaluate(timeIn, TRIES)
  await context.close()
  const [decoded, read, kept] = [median(timed.decodedMs), median(timed.readMs), median(timed.keptMs)]
  const longest = timed.longestMs === 0 ? `under ${LONG_TASK_MS} ms` : ms(timed.longestMs)
  return {
    what: `A photo of 12 megapixels (${(timed.bytes / 1e6).toFixed(1)} MB), middle of ${TRIES}`,
    found: `${ms(read)} from the file to readings; the browser's own decoding ${ms(decoded)} (${ratio(read, decoded)}); with the smaller picture that is kept ${ms(kept)}; longest task of the page ${longest}`,
    goal: `${GOAL} x of the decoding at most, no task of ${LONG_TASK_MS} ms`,
    met: read <= GOAL * decoded && timed.longestMs === 0
  }
}

async function timeIn(tries: number): Promise<Timed> {
  const { kitchen } = (globalThis as unknown as WithDesk).strandlineRehearsal
  const swatches = await kitchen.swatches?.()
  if (!swatches) throw new Error('there are no swatches')
  const canvas = new OffscreenCanvas(4000, 3000)
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('no canvas')
  // Detail as a photo has it: an even picture decodes in no time.
  for (let no = 0; no < 60_000; no++) {
    pen.fillStyle = `hsl(${(no * 137) % 360} 30% ${40 + (no % 30)}%)`
    pen.fillRect((no * 7919) % 4000, (no * 104_729) % 3000, 30, 9)
  }
  const file = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 })
  const spot = (x: number, y: number) => ({ x, y, halfLong: 100, halfWide: 100, turnRad: 0 })
  const marks: Marks = {
    grey: spot(2000, 2600),
    undyed: [spot(150, 800), spot(3850, 800)],
    series: [0, 1, 2, 3, 4, 5].map((nth) => spot(600 + 450 * nth, 1700)),
    skein: [0, 1, 2, 3, 4, 5, 6, 7].map((nth) => {
      return { patch: spot(500 + 400 * nth, 800), at: nth / 7, band: nth + 1, zone: 'dyed' }
    })
  }
  const timed: Timed = { decodedMs: [], readMs: [], keptMs: [], longestMs: 0, bytes: file.size }
  const decode = async (): Promise<void> => {
    const beganMs = performance.now()
    const bitmap = await createImageBitmap(file)
    timed.decodedMs.push(performance.now() - beganMs)
    bitmap.close()
  }
  let watching = false
  const watch = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) if (watching) timed.longestMs = Math.max(timed.longestMs, duration)
  })
  watch.observe({ type: 'longtask' })
  const readOnce = async (id: string): Promise<void> => {
    const beganMs = performance.now()
    const opened = swatches.photos.open(id, file)
    const read = swatches.photos.read(id, marks).then((answer) => {
      timed.readMs.push(performance.now() - beganMs)
      return answer
    })
    const [{ ok }, answer] = await Promise.all([opened, read])
    timed.keptMs.push(performance.now() - beganMs)
    if (!ok || !answer.ok || !answer.read || 'refused' in answer.read) throw new Error('the photo was not read')
  }
  // The first of each starts what comes with it.
  await decode()
  await readOnce('warming')
  for (const times of [timed.decodedMs, timed.readMs, timed.keptMs]) times.length = 0
  watching = true
  // In turn, so that a slow moment hits both.
  for (let no = 0; no < tries; no++) {
    await decode()
    await readOnce(`photo ${no}`)
  }
  await new Promise((done) => setTimeout(done, 200))
  watch.disconnect()
  return timed
}
