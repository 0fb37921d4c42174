// The dyer's own days.
import type { BookLine } from '../../kitchen.ts'
import { dayName } from '../../parts/day-name.ts'

export type Day = { name: string; lines: BookLine[] }

/** Lines grouped by the local day on which their pot began, in the order given. */
export function byDay(lines: readonly BookLine[], nowMs: number): Day[] {
  const days: Day[] = []
  for (const line of lines) {
    const name = dayName(line.startedAtMs, nowMs)
    const last = days.at(-1)
    if (last?.name === name) last.lines.push(line)
    else days.push({ name, lines: [line] })
  }
  return days
}
