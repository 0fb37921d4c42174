// How late an alert is told of in a page that nobody sees, with the bed sounding; against a bare timer in a worker of the
// same hidden page. The two take turns. The browser slows hidden pages as it does for a dyer.
import { turns } from './bench-programme.ts'
import { type Figure, ms, quantile } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { potFor } from './kitchen-page.ts'
import { type RawPage, rawBrowser } from './raw-browser.ts'

const CALLS = 60
const WAIT_MS = 900
const EXTRA_MOST_MS = 100

export async function hiddenLateness({ app, chromium }: Grounds): Promise<Figure> {
  const browser = await rawBrowser(chromium)
  try {
    const page = await browser.open(`${app}?rehearse=1`)
    await page.until(`document.querySelector('.stove .pad-main')`)
    await page.evaluate(`document.dispatchEvent(new PointerEvent('pointerup'))`, true)
    await page.until(`document.body.textContent.includes('Sound ready')`)
    const other = await browser.open('about:blank')
    await other.toFront()
    await page.until(`document.visibilityState === 'hidden'`)
    const { alertMs, timerMs } = await measure(page)
    const goalMs = quantile(timerMs, 0.99) + EXTRA_MOST_MS
    const late = quantile(alertMs, 0.99)
    return {
      what: `How late an alert is, hidden with the bed sounding, ${alertMs.length} calls`,
      found: `${spread(alertMs)}; a bare worker timer ${spread(timerMs)}`,
      goal: `p99 of the alert ${ms(goalMs)} or less: that of the timer and ${EXTRA_MOST_MS} ms; none early`,
      met: late <= goalMs && Math.min(...alertMs) >= 0
    }
  } finally {
    await browser.close()
  }
}

function spread(lateMs: number[]): string {
  return `p50 ${ms(quantile(lateMs, 0.5))}, p99 ${ms(quantile(lateMs, 0.99))}`
}

async function measure(page: RawPage): Promise<{ alertMs: number[]; timerMs: number[] }> {
  const start = JSON.stringify(potFor('Moss', turns(CALLS, WAIT_MS)))
  return page.evaluate(`(async () => {
    const { kitchen, clock } = strandlineRehearsal
    const timer = new Worker('bench-timer.js')
    const alertMs = []
    const timerMs = []
    const bareTimer = () => {
      const dueAtMs = Date.now() + ${WAIT_MS / 2}
      timer.onmessage = () => timerMs.push(Date.now() - dueAtMs)
      timer.postMessage(dueAtMs)
    }
    const seen = new Set()
    let over
    const done = new Promise((resolve) => { over = resolve })
    kitchen.pots.subscribe((pots) => {
      const call = pots[0]?.alerts.find(({ kind }) => kind === 'call')
      if (call === undefined || seen.has(call.key)) return
      seen.add(call.key)
      alertMs.push(clock.nowMs() - call.atMs)
      if (alertMs.length === ${CALLS}) return over()
      setTimeout(() => kitchen.send('Moss', { type: 'MarkDone', path: call.path }).then(bareTimer))
    })
    await kitchen.start(${start})
    await done
    return { alertMs, timerMs }
  })()`)
}
