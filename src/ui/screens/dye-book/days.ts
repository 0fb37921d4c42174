// The dyer's own days.
import type { BookLine } from '../../kitchen.ts'
import { dayName } from '../../parts/day-name.ts'

/** `key`: "2031-06-14" */
export type Day = { key: string; name: string; lines: BookLine[] }

/** Lines grouped by the local day on which their pot began, in the order given. */
export function byDay(lines: readonly BookLine[], nowMs: number): Day[] {
  const days: Day[] = []
  for (const line of lines) {
    const name = dayName(line.startedAtMs, nowMs)
    const last = days.at(-1)
    if (last?.name === name) last.lines.push(line)
    else days.push({ key: dayKey(line.startedAtMs), name, lines: [line] })
  }
  return days
}

/** "2031-06-14", where the dyer is. */
export function dayKey(atMs: number): string {
  const at = new Date(atMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
}

/** From the midnight that begins a local day to the one that ends it: 23 or 25 hours where clocks change. */
export function dayBounds(key: string): { fromMs: number; toMs: number } {
  const [year = 0, month = 1, date = 1] = key.split('-').map(Number)
  return { fromMs: new Date(year, month - 1, date).getTime(), toMs: new Date(year, month - 1, date + 1).getTime() }
}
