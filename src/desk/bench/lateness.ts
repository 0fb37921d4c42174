// How late a call is: from the deadline to the alert, when sound, title and screen are told of it, and on to the call
// standing on the screen; in a visible page, against a bare timer in a worker of the same page. The two take turns, so
// that neither waits for the other.
import { turns } from './bench-programme.ts'
import { type Figure, ms, quantile } from './figure.ts'
import type { Grounds } from './grounds.ts'
import { openRehearsal, startPot, type WithKitchen } from './kitchen-page.ts'

const CALLS = 120
const WAIT_MS = 900
const EXTRA_MOST_MS = 15

export async function lateness({ visit, app }: Grounds): Promise<Figure> {
  const { context, page } = await visit()
  await openRehearsal(page, app)
  const measuring = page.evaluate(measureInPage, { calls: CALLS, waitMs: WAIT_MS })
  await startPot(page, 'Moss', turns(CALLS, WAIT_MS))
  const { alertMs, screenMs, timerMs } = await measuring
  await context.close()
  const early = alertMs.filter((lateMs) => lateMs < 0).length
  const goalMs = quantile(timerMs, 0.99) + EXTRA_MOST_MS
  return {
    what: `How late an alert is, visible, ${alertMs.length} calls, ${early} of them before their time`,
    found: `${spread(alertMs)}; standing on the screen ${spread(screenMs)}; a bare worker timer ${spread(timerMs)}`,
    goal: `p99 of the alert ${ms(goalMs)} or less: that of the timer and ${EXTRA_MOST_MS} ms; none early`,
    met: quantile(alertMs, 0.99) <= goalMs && early === 0
  }
}

function spread(lateMs: number[]): string {
  return `p50 ${ms(quantile(lateMs, 0.5))}, p99 ${ms(quantile(lateMs, 0.99))}`
}

type Lateness = { alertMs: number[]; screenMs: number[]; timerMs: number[] }

async function measureInPage({ calls, waitMs }: { calls: number; waitMs: number }): Promise<Lateness> {
  const { kitchen } = (globalThis as unknown as WithKitchen).strandlineRehearsal
  const timer = new Worker('bench-timer.js')
  const alertMs: number[] = []
  const screenMs: number[] = []
  const timerMs: number[] = []
  let toldAtMs: number | null = null
  kitchen.pots.subscribe(() => {
    const calls = kitchen.pots.value.some(({ alerts }) => alerts.some(({ kind }) => kind === 'call'))
    if (calls) toldAtMs ??= Date.now()
  })
  const onScreen = (): Promise<number> =>
    new Promise((resolve) => {
      const look = (): boolean => document.querySelector('.call .call-act') !== null
      if (look()) return resolve(Date.now())
      const watcher = new MutationObserver(() => {
        if (!look()) return
        watcher.disconnect()
        resolve(Date.now())
      })
      watcher.observe(document.body, { childList: true, subtree: true })
    })
  const bareTimer = async (): Promise<number> => {
    const dueAtMs = Date.now() + waitMs / 2
    const heard = new Promise<number>((resolve) => {
      timer.onmessage = () => resolve(Date.now())
    })
    timer.postMessage(dueAtMs)
    return (await heard) - dueAtMs
  }
  const answer = async (path: string): Promise<void> => {
    await kitchen.send('Moss', { type: 'MarkDone', path })
    while (document.querySelector('.call') !== null) await new Promise((resolve) => setTimeout(resolve, 5))
  }
  for (let no = 1; no <= calls; no++) {
    const seenAtMs = await onScreen()
    const called = kitchen.pots.value[0]?.alerts.find(({ kind, path }) => kind === 'call' && path === `turn${no}`)
    if (called === undefined) throw new Error(`call ${no} is on the screen, but not of turn${no}`)
    alertMs.push((toldAtMs ?? Number.NaN) - called.atMs)
    screenMs.push(seenAtMs - called.atMs)
    await answer(`turn${no}`)
    toldAtMs = null
    if (no < calls) timerMs.push(await bareTimer())
  }
  return { alertMs, screenMs, timerMs }
}
