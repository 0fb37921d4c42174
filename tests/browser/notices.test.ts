import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import type { WithKitchen } from '../../src/desk/bench/kitchen-page.ts'
import { startPot as startOnKitchen } from '../../src/desk/bench/kitchen-page.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import { dose, programme, wait } from '../core/pot/programmes.ts'
import { type CoveredBrowser, openCoveredBrowser, type Target } from './stage/covered-browser.ts'
import { startPot } from './stage/dyer.ts'
import { REHEARSAL, storedIn } from './stage/journal.ts'
import { pressUntilGone } from './stage/press.ts'
import { keepsTheApp, openStage, type Stage } from './stage/stage.ts'

let stage: Stage
beforeAll(async () => {
  stage = await openStage()
})
afterAll(() => stage?.close())

let browser: CoveredBrowser
afterEach(() => browser?.close())

const acid = { knot: 'Acid 1', call: 'Acid 1 in' }
/** Long enough for a slow disk to have the start, then the acid; and a second acid that does not come while the test looks. */
const run = programme([
  wait('soak', 3_000),
  dose('acid1', 30, 'vinegar', acid),
  wait('hold', 3_600_000),
  dose('acid2', 30, 'vinegar', { knot: 'Acid 2', call: 'Acid 2 in' })
])

type Standing = { title: string; body: string; tag: string; actions: string[]; potId: string }

/** The notices that stand, as the worker of the app sees them. */
function standing(worker: Target): Promise<Standing[]> {
  return worker.evaluate(async () => {
    const { registration } = self as unknown as { registration: ServiceWorkerRegistration }
    const all = (await registration.getNotifications()) as (Notification & { actions: { action: string }[] })[]
    const shown = all.map(({ title, body, tag, actions, data }) => {
      return { title, body, tag, actions: actions.map(({ action }) => action), potId: data.potId as string }
    })
    return shown.sort((a, b) => (a.title < b.title ? -1 : 1))
  })
}

/** Presses a button of the notice of a pot, as the system would tell the worker. */
function pressNotice(worker: Target, potId: string, action: string): Promise<void> {
  return worker.evaluate(
    async (pressed) => {
      const { registration } = self as unknown as { registration: ServiceWorkerRegistration }
      const notification = (await registration.getNotifications()).find(({ data }) => data.potId === pressed.potId)
      const Click = (
        self as unknown as {
          NotificationEvent: new (type: string, more: { notification: unknown; action: string }) => Event
        }
      ).NotificationEvent
      self.dispatchEvent(new Click('notificationclick', { notification, action: pressed.action }))
    },
    { potId, action }
  )
}

const entriesIn = async (page: Target): Promise<PotEntry[]> =>
  // It asks nothing of a page but to run a function in it.
  (await storedIn(page as unknown as Page, REHEARSAL)).entries

const closedIn = async (page: Target): Promise<string[]> =>
  (await entriesIn(page)).flatMap(({ event, streamId, by }) => {
    const via = by.kind === 'person' ? by.via : by.kind
    return event.type === 'StepClosed' && event.path === 'acid1' ? [`${streamId} ${event.how} ${via}`] : []
  })

async function until(what: string, come: () => Promise<boolean>): Promise<void> {
  const endMs = Date.now() + 40_000
  while (!(await come())) {
    if (Date.now() > endMs) throw new Error(`It never came: ${what}`)
    await new Promise((again) => setTimeout(again, 50))
  }
}

/** The app in a tab that another one covers, with Plum and Moss about to call. */
async function behindAnotherTab(): Promise<{ page: Target; worker: Target }> {
  const origin = new URL(stage.host.address).origin
  await browser.send('Browser.grantPermissions', { origin, permissions: ['notifications'] })
  const page = await browser.open(`${stage.host.address}?rehearse=1`)
  await until('a Stove served by the worker', () =>
    page.evaluate(
      () => document.querySelector('.stove .pad-main') !== null && navigator.serviceWorker.controller !== null
    )
  )
  const worker = await browser.worker(stage.host.address)
  const cover = await browser.open('about:blank')
  await cover.toFront()
  await until('the page is hidden', () => page.evaluate(() => document.visibilityState === 'hidden'))
  for (const name of ['Plum', 'Moss']) await startOnKitchen(page as unknown as Page, name, run)
  await until('two notices', async () => (await standing(worker)).length === 2)
  return { page, worker }
}

describe('a page that is hidden', () => {
  it('calls by a notice a pot, and "Done" on one closes the step of that pot alone; the page stays behind', async () => {
    browser = await openCoveredBrowser()
    const { page, worker } = await behindAnotherTab()
    const shown = await standing(worker)
    expect(shown.map(({ title, actions }) => `${title} ${actions}`)).toEqual([
      'Moss: Acid 1 done,later',
      'Plum: Acid 1 done,later'
    ])
    expect(shown[0]?.body).toContain('vinegar')
    await pressNotice(worker, 'Plum', 'done')
    await until('the act in the journal', async () => (await closedIn(page)).length > 0)
    expect(await closedIn(page)).toEqual(['pot/Plum done notice'])
    // The worker looks for nobody after that, and the notice of what was answered is gone.
    await until('one notice', async () => (await standing(worker)).length === 1)
    expect((await standing(worker))[0]?.title).toBe('Moss: Acid 1')
    expect(await page.evaluate(() => document.visibilityState)).toBe('hidden')
  })

  it('"Not yet" puts its own pot off, and coming back to the page takes the notices away', async () => {
    browser = await openCoveredBrowser()
    const { page, worker } = await behindAnotherTab()
    await pressNotice(worker, 'Moss', 'later')
    const movedIn = async (): Promise<string[]> =>
      (await entriesIn(page)).flatMap(({ event, streamId }) =>
        event.type === 'DueMoved' ? [`${streamId} ${event.path} ${event.why}`] : []
      )
    await until('the call put off', async () => (await movedIn()).length > 0)
    expect(await movedIn()).toEqual(['pot/Moss acid1 not-yet'])
    await until('one notice', async () => (await standing(worker)).length === 1)
    await page.toFront()
    await until('no notice', async () => (await standing(worker)).length === 0)
    // Plum still calls, on the screen.
    await until('the call', () => page.evaluate(() => document.querySelector('.call-pot')?.textContent === 'Plum'))
    expect(await closedIn(page)).toEqual([])
  })

  it('a press for an act that was done meanwhile does nothing', async () => {
    browser = await openCoveredBrowser()
    const { page, worker } = await behindAnotherTab()
    // A second tab of the app follows: it must not act either.
    const second = await browser.open(`${stage.host.address}?rehearse=1`)
    await until('a second tab that follows', () =>
      second.evaluate(() => document.body?.textContent?.includes('This one follows it') ?? false)
    )
    await until('the page is hidden', () => page.evaluate(() => document.visibilityState === 'hidden'))
    await worker.evaluate(async () => {
      const { registration } = self as unknown as { registration: ServiceWorkerRegistration }
      Object.assign(self, { kept: (await registration.getNotifications()).find(({ data }) => data.potId === 'Plum') })
    })
    await page.evaluate(async () => {
      const { kitchen } = (globalThis as unknown as WithKitchen).strandlineRehearsal
      await kitchen.send('Plum', { type: 'MarkDone', path: 'acid1' })
    })
    const answers = await worker.evaluate(async () => {
      const kept = (self as unknown as { kept: Notification }).kept
      // Heard on the way: what the pages answer to the worker.
      const given: unknown[] = []
      const { clients } = self as unknown as { clients: { matchAll(o: object): Promise<{ postMessage: unknown }[]> } }
      const pages = await clients.matchAll({ type: 'window', includeUncontrolled: true })
      await Promise.all(
        pages.map(
          (one) =>
            new Promise<void>((done) => {
              const { of, potId, key, path } = kept.data
              const press = { type: 'notice-pressed', pressId: 'p1', action: 'done', of, potId, key, path }
              const post = one.postMessage as (message: unknown, transfer: MessagePort[]) => void
              let heard = false
              const ask = (): void => {
                if (heard) return
                const { port1: mine, port2: theirs } = new MessageChannel()
                mine.onmessage = ({ data }) => {
                  if (heard) return
                  heard = true
                  given.push(data)
                  done()
                }
                post.call(one, { ...press, untilMs: Date.now() + 10_000 }, [theirs])
                // A page that is just opened hears nothing before it has fetched what listens.
                setTimeout(ask, 1_000)
              }
              ask()
            })
        )
      )
      return given.map(String).sort()
    })
    expect(answers).toEqual(['follows', 'look'])
    const closed = (await entriesIn(page)).filter(({ event }) => event.type === 'StepClosed' && event.how === 'done')
    expect(closed.map(({ streamId, by }) => `${streamId} ${by.kind === 'person' && by.via}`)).toEqual(['pot/Plum tap'])
  })
})

describe('a browser that refuses notices', () => {
  it('the lamp says so in words, and pots run and are answered as ever', async () => {
    const { page, context, complaints } = await stage.visit(keepsTheApp)
    // A list that leaves notices out denies them.
    await context.grantPermissions(['clipboard-read'], { origin: new URL(stage.host.address).origin })
    await page.goto(`${stage.host.address}?rehearse`)
    expect(await page.evaluate(() => Notification.permission)).toBe('denied')
    await startPot(page, { title: 'Level immersion', colourway: 'Plum', massG: 100 })
    await pressUntilGone(page.locator('.call').getByRole('button', { name: /in soak/ }), page.locator('.call'))
    await page.getByText('Notices refused in the browser').first().waitFor()
    const { entries } = await storedIn(page, REHEARSAL)
    expect(entries.filter(({ event }) => event.type === 'StepClosed')).toHaveLength(1)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('a browser that knows none says that, and opens all the same', async () => {
    const { page, context, complaints } = await stage.visit(keepsTheApp)
    await context.addInitScript(() => Reflect.deleteProperty(globalThis, 'Notification'))
    await page.goto(`${stage.host.address}?rehearse`)
    await page.getByText('This browser shows no notices').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})
