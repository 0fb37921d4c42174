// What the browser tests stand on: the built app on a host of its own, Chromium, and visits that are watched: what the
// browser complains of, and every address that is asked for.
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { launchChromium } from '../../../src/desk/bench/chromium.ts'
import { type Host, hostOf } from '../../../src/desk/bench/host.ts'
import { slowHand } from './hand.ts'

export type Visit = {
  context: BrowserContext
  page: Page
  /** Errors on the console and errors nobody caught, in every page of the visit. */
  complaints: string[]
  /** Addresses that were asked for and are not of the app's own host. */
  elsewhere(): string[]
  another(): Promise<Page>
}

export type Stage = {
  host: Host
  visit(more?: BrowserContextOptions): Promise<Visit>
  close(): Promise<void>
}

export const phone = {
  locale: 'en-GB',
  viewport: { width: 412, height: 915 },
  hasTouch: true,
  isMobile: true,
  // Nothing here looks at pixels, and a software renderer pays for each.
  deviceScaleFactor: 1,
  // Each visit is the first on a new device: keeping the whole app for offline costs a third of most tests.
  serviceWorkers: 'block' as const
}

/** For a visit that goes on without a network, or hears of the worker. */
export const keepsTheApp = { serviceWorkers: 'allow' as const }

/** One browser for all files of a worker, ended with it: a visit has a context of its own, as on a device of its own. */
let opened: Promise<Browser> | null = null

async function openBrowser(): Promise<Browser> {
  if (opened !== null && !(await opened.then((browser) => browser.isConnected()).catch(() => false))) opened = null
  opened ??= launchChromium(process.env.CHROME_PATH)
  return opened
}

export async function openStage(): Promise<Stage> {
  const host = await hostOf(process.env.STRANDLINE_DIST ?? '')
  const browser = await openBrowser()
  const visits = new Set<BrowserContext>()
  return {
    host,
    async visit(more = {}) {
      const context = await browser.newContext({ ...phone, ...more })
      visits.add(context)
      context.on('close', () => visits.delete(context))
      return watch(context, host)
    },
    async close() {
      await Promise.all([...visits].map((context) => context.close()))
      await host.stop()
    }
  }
}

export async function watch(context: BrowserContext, host: Host): Promise<Visit> {
  const complaints: string[] = []
  const asked: string[] = []
  context.on('request', (request) => asked.push(request.url()))
  const another = async (): Promise<Page> => {
    const page = await context.newPage()
    slowHand(page)
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
    page.on('pageerror', (error) => complaints.push(`${error.name}: ${error.message}`))
    return page
  }
  const own = [host.address, 'blob:', 'data:', 'about:']
  return {
    context,
    page: await another(),
    complaints,
    elsewhere: () => asked.filter((url) => !own.some((start) => url.startsWith(start))),
    another
  }
}

/** Until the worker of the first visit serves this page. */
export async function keptForOffline(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
}
