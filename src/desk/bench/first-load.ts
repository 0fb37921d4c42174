// The JavaScript that a first visit needs before the Stove works, as the browser really asked for it; and, told beside
// it, what is fetched once the Stove is drawn, for the calls to come.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Figure } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { stoveIsThere } from './kitchen-page.ts'

const MOST_KB = 60

export async function firstLoad({ visit, app, dist }: Grounds): Promise<Figure> {
  const { context, page } = await visit()
  await page.addInitScript(markWhenDrawn)
  // Without the worker of the app, which fetches everything to keep it: that is not what the page waits for.
  await page.route('**/sw.js', (route) => route.abort())
  await page.goto(app)
  await stoveIsThere(page)
  await page.waitForLoadState('networkidle')
  const asked = await page.evaluate(askedFor)
  await context.close()
  const kBOf = (urls: string[]): number =>
    urls.reduce((sum, url) => sum + gzipSync(readFileSync(join(dist, url.slice(app.length)))).length / 1000, 0)
  const before = kBOf(asked.before)
  return {
    what: 'First visit: JavaScript asked for before the Stove is drawn',
    found: `${before.toFixed(1)} kB gzip in ${asked.before.length} files (${kBOf(asked.after).toFixed(1)} kB more after, for calls and sheets)`,
    goal: `${MOST_KB} kB or less`,
    met: before <= MOST_KB && asked.before.length > 0
  }
}

/** Marks the moment when there is something to press on the Stove. */
function markWhenDrawn(): void {
  const watcher = new MutationObserver(() => {
    if (document.querySelector('.stove .pad-main') === null) return
    watcher.disconnect()
    performance.mark('drawn')
  })
  watcher.observe(document, { childList: true, subtree: true })
}

function askedFor(): { before: string[]; after: string[] } {
  const drawnMs = performance.getEntriesByName('drawn')[0]?.startTime ?? Infinity
  const scripts = performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('.js'))
  const urls = (early: boolean): string[] => [
    ...new Set(scripts.filter(({ startTime }) => startTime < drawnMs === early).map(({ name }) => name))
  ]
  return { before: urls(true), after: urls(false) }
}
