// What a page's main thread did while something was done to it, by the browser's own trace.
import type { Browser, Page } from 'playwright-core'

type TraceEvent = {
  name: string
  ph: string
  pid: number
  tid: number
  ts: number
  dur?: number
  /** Without what other programs took of the processor. */
  tdur?: number
  args?: { name?: string; data?: { type?: string } }
}

/** The longest task from each key pressed to the next, in ms: by the clock, and of the processor's time alone. */
export type Longest = { clockMs: number[]; workMs: number[] }

export async function longestTasks(browser: Browser, page: Page, work: () => Promise<void>): Promise<Longest> {
  const categories = ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'toplevel']
  await browser.startTracing(page, { categories })
  await work()
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] }
  const keys = trace.traceEvents.filter(({ name, args }) => name === 'EventDispatch' && args?.data?.type === 'keypress')
  const main = keys[0]
  const tasks = trace.traceEvents.filter(
    ({ name, ph, pid, tid }) => ph === 'X' && name.endsWith('RunTask') && pid === main?.pid && tid === main.tid
  )
  if (tasks.length === 0) throw new Error('The trace tells of no task of the page')
  const perKey = keys.map(({ ts }, i) => {
    const endTs = keys[i + 1]?.ts ?? Number.POSITIVE_INFINITY
    // The key's own task began a little before its event.
    return tasks.filter((task) => task.ts + (task.dur ?? 0) > ts && task.ts + (task.dur ?? 0) <= endTs)
  })
  const longest = (of: (task: TraceEvent) => number | undefined): number[] =>
    perKey.map((mine) => Math.max(...mine.map((task) => (of(task) ?? 0) / 1000)))
  return { clockMs: longest(({ dur }) => dur), workMs: longest(({ tdur }) => tdur) }
}
