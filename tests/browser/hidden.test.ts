// What a hidden, slowed and frozen page still does: Chromium with its own throttling, and a control that shows it bites.
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { turns } from '../../src/desk/bench/bench-programme.ts'
import { type Host, hostOf } from '../../src/desk/bench/host.ts'
import { potFor } from '../../src/desk/bench/kitchen-page.ts'
import { type RawBrowser, type RawPage, rawBrowser } from '../../src/desk/bench/raw-browser.ts'

/** A page that is hidden and silent wakes once a minute: after one hidden minute where it had loaded by then, after five
 * where the browser counts it as loading still. Measured in Chromium 156; its flag for an earlier start changed nothing. */
const SLOWED_AT_THE_LATEST_MS = 7 * 60_000
const noWorker = `globalThis.Worker = class { constructor() { throw new Error('no worker here') } }`
/** So many more than a bare worker's timer would be: DESIGN.md, what is good enough. */
const HIDDEN_LATE_MOST_MS = 100

let host: Host
const browsers: RawBrowser[] = []
beforeAll(async () => {
  host = await hostOf(process.env.STRANDLINE_DIST ?? '')
})
afterAll(async () => {
  await Promise.all(browsers.map((browser) => browser.close()))
  await host?.stop()
})

type Kitchen = { page: RawPage; hide(): Promise<void>; show(): Promise<void> }

async function kitchen({ sound, before }: { sound: boolean; before?: string }): Promise<Kitchen> {
  const browser = await rawBrowser(process.env.CHROME_PATH)
  browsers.push(browser)
  const page = await browser.open(`${host.address}?rehearse=1`, before)
  await page.until(`document.querySelector('.stove .pad-main')`)
  if (sound) {
    await page.evaluate(`document.dispatchEvent(new PointerEvent('pointerup'))`, true)
    await page.until(`document.body.textContent.includes('Sound ready')`)
  }
  const other = await browser.open('about:blank')
  await page.toFront()
  return {
    page,
    async hide() {
      await other.toFront()
      await page.until(`document.visibilityState === 'hidden'`)
    },
    async show() {
      await page.toFront()
      await page.until(`document.visibilityState === 'visible'`)
    }
  }
}

/** Starts a pot that calls again and again, each call `waitMs` after the one before was answered, and answers each in
 * the page as soon as it is told of it. How late each was told, ms, gathers in `late`. */
async function callAgainAndAgain(page: RawPage, calls: number, waitMs: number): Promise<void> {
  const start = potFor('Plum', turns(calls, waitMs))
  await page.evaluate(`(async () => {
    const { kitchen, clock } = strandlineRehearsal
    globalThis.late = []
    kitchen.pots.subscribe((pots) => {
      const call = pots[0]?.alerts.find(({ kind }) => kind === 'call')
      if (call === undefined || globalThis.late.some(({ key }) => key === call.key)) return
      globalThis.late.push({ key: call.key, ms: clock.nowMs() - call.atMs })
      setTimeout(() => kitchen.send('Plum', { type: 'MarkDone', path: call.path }))
    })
    await kitchen.start(${JSON.stringify(start)})
  })()`)
}

const lateOf = async (page: RawPage): Promise<number[]> =>
  (await page.evaluate<{ ms: number }[]>('globalThis.late')).map(({ ms }) => ms)

describe.concurrent('a hidden page', () => {
  it('that sounds keeps its time', async () => {
    const { page, hide } = await kitchen({ sound: true })
    // Well over the minute after which a silent one is slowed.
    await callAgainAndAgain(page, 60, 1_500)
    await page.until('globalThis.late.length >= 2')
    await hide()
    const before = (await lateOf(page)).length
    await page.until('globalThis.late.length >= 58', 170_000)
    const late = (await lateOf(page)).slice(before)
    expect(late.length).toBeGreaterThan(50)
    // On a machine that does other things too a few may be later; the exact figures are the bench's. A page that is slowed
    // to a second is late by half of one in the middle, and by more in each second one.
    const [middle, nineTenths] = [0.5, 0.9].map(
      (share) => late.toSorted((a, b) => a - b)[Math.floor(late.length * share)]
    )
    expect(middle).toBeLessThanOrEqual(HIDDEN_LATE_MOST_MS)
    expect(nineTenths).toBeLessThan(900)
  })

  it('whose worker can not be had still keeps it to a second, for the bed keeps the page awake', async () => {
    const { page, hide } = await kitchen({ sound: true, before: noWorker })
    await callAgainAndAgain(page, 32, 3_000)
    await hide()
    await page.until('globalThis.late.length >= 30', 170_000)
    // A page that is not kept awake wakes once a minute: nearly each of these would be late by more.
    const late = (await lateOf(page)).slice(1).sort((a, b) => a - b)
    expect(late[Math.floor(late.length * 0.9)]).toBeLessThan(2_500)
  })

  it(
    'and without bed or worker is late by much: the control',
    async () => {
      const { page, hide } = await kitchen({ sound: false, before: noWorker })
      await hide()
      await callAgainAndAgain(page, 40, 14_000)
      await page.until('globalThis.late.some(({ ms }) => ms > 5_000)', SLOWED_AT_THE_LATEST_MS)
    },
    SLOWED_AT_THE_LATEST_MS + 60_000
  )

  it('that was frozen says first what was missed when it comes back, and calls', async () => {
    const { page, hide, show } = await kitchen({ sound: true })
    // Long enough for the page to be hidden and frozen before its call is due, on a machine at work too.
    const dueAfterMs = 20_000
    const start = potFor('Plum', turns(1, dueAfterMs))
    await page.evaluate(`strandlineRehearsal.kitchen.start(${JSON.stringify(start)})`)
    const startedAtMs = Date.now()
    await hide()
    await page.order('Page.setWebLifecycleState', { state: 'frozen' })
    while (Date.now() - startedAtMs < dueAfterMs + 10_000) await new Promise((over) => setTimeout(over, 200))
    await page.order('Page.setWebLifecycleState', { state: 'active' })
    await show()
    await page.until(`/Turn/.test(document.querySelector('.missed')?.textContent ?? '')`)
    await page.until(`strandlineRehearsal.kitchen.pots.value[0].alerts.some(({ kind }) => kind === 'call')`)
  })
})

/** Remembers every audio context and every worker of the page, to end them as a phone might. */
const remembered = `
  globalThis.contexts = []
  const Context = globalThis.AudioContext
  globalThis.AudioContext = class extends Context { constructor(...given) { super(...given); contexts.push(this) } }
  globalThis.workers = []
  const Beat = globalThis.Worker
  globalThis.Worker = class extends Beat { constructor(...given) { super(...given); workers.push(this) } }
  globalThis.sounded = 0
  const start = AudioBufferSourceNode.prototype.start
  AudioBufferSourceNode.prototype.start = function (...given) { globalThis.sounded += 1; return start.apply(this, given) }`

describe.concurrent('a page of which a part dies', () => {
  it('builds an audio context anew that was closed, and sounds', async () => {
    const { page } = await kitchen({ sound: true, before: remembered })
    await callAgainAndAgain(page, 30, 3_000)
    await page.until('globalThis.late.length >= 1')
    await page.evaluate('contexts[0].close()')
    await page.until(`contexts.length > 1 && contexts.at(-1).state === 'running'`)
    await page.until(`document.body.textContent.includes('Sound ready')`)
    const sounded = await page.evaluate<number>('globalThis.sounded')
    await page.until(`globalThis.sounded > ${sounded}`)
  })

  it('starts a worker anew that was ended, and calls in time again', async () => {
    const { page } = await kitchen({ sound: false, before: remembered })
    await callAgainAndAgain(page, 30, 1_500)
    await page.until('globalThis.late.length >= 1')
    await page.evaluate('workers[0].terminate()')
    await page.until('workers.length > 1')
    const before = (await lateOf(page)).length
    // Most of eight in a row: a machine at work may be late itself now and then.
    const inTime = `globalThis.late.slice(${before + 1}).slice(-8).filter(({ ms }) => ms < ${HIDDEN_LATE_MOST_MS}).length >= 5`
    await page.until(inTime)
  })

  it('orders the sound of a call ahead, so that it comes though the page is asleep by then', async () => {
    const { page } = await kitchen({ sound: true, before: remembered })
    await page.evaluate(`strandlineRehearsal.kitchen.start(${JSON.stringify(potFor('Plum', turns(1, 60_000)))})`)
    await page.until('globalThis.sounded > 0')
    const alerts = await page.evaluate<number>('strandlineRehearsal.kitchen.pots.value[0].alerts.length')
    expect(alerts).toBe(0)
  })
})
