// Where all is measured: the built app and the bare pages on one host, so that they share an origin, its storage and
// its policy.
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { launchChromium } from './chromium.ts'
import { buildHello } from './hello-page.ts'
import { hostOf } from './host.ts'

export type Grounds = {
  dist: string
  /** Where the browser is. */
  chromium: string
  /** Addresses: the app, the page that only says hello, the page that does nothing. */
  app: string
  hello: string
  bare: string
  browser: Browser
  /** A page in a profile of its own. */
  visit(): Promise<{ context: BrowserContext; page: Page }>
  close(): Promise<void>
}

/** Posts back at the wall time it is told: what a call is measured against. */
const timerWorker = `onmessage = ({ data }) => setTimeout(() => postMessage(null), data - Date.now())\n`

export async function openGrounds(root: string, chromium: string): Promise<Grounds> {
  const dist = join(root, 'dist')
  const folder = mkdtempSync(join(tmpdir(), 'strandline-bench-'))
  cpSync(dist, join(folder, 'app'), { recursive: true })
  await buildHello(root, join(folder, 'hello'))
  mkdirSync(join(folder, 'bare'))
  writeFileSync(join(folder, 'bare', 'index.html'), '<!doctype html><title>Bare</title>\n')
  writeFileSync(join(folder, 'app', 'bench-timer.js'), timerWorker)
  const host = await hostOf(folder)
  const browser = await launchChromium(chromium)
  return {
    dist,
    chromium,
    app: `${host.address}app/`,
    hello: `${host.address}hello/`,
    bare: `${host.address}bare/`,
    browser,
    async visit() {
      const context = await browser.newContext({ viewport: { width: 412, height: 915 }, hasTouch: true })
      // What the runner of TypeScript wraps functions in does not exist in the page they are sent to.
      await context.addInitScript('globalThis.__name ??= (named) => named')
      return { context, page: await context.newPage() }
    },
    async close() {
      await browser.close()
      await host.stop()
      rmSync(folder, { recursive: true })
    }
  }
}
