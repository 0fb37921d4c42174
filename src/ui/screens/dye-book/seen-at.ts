// A time typed for what was seen earlier: by the clock of the device, as its own field gives it.
import { clockOf, dayName } from '../../parts/day-name.ts'

export type SeenAt = { ok: true; atMs: number } | { ok: false; say: string }

/** "2031-06-14T10:32", as a field for date and time takes and gives it. */
export function typedFrom(atMs: number): string {
  const at = new Date(atMs)
  const two = (n: number): string => String(n).padStart(2, '0')
  const day = `${String(at.getFullYear()).padStart(4, '0')}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`
}

/** Refuses what is no time, what is still to come, and what was before the batch began. */
export function readSeenAt(typed: string, startedAtMs: number, nowMs: number): SeenAt {
  const found = /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::\d{2}(?:\.\d+)?)?$/.exec(typed.trim())
  if (found === null) return refused('Give the day and the time, for example 2031-06-14 10:32.')
  const [year = 0, month = 0, date = 0, hour = 0, minute = 0] = found.slice(1).map(Number)
  const at = new Date(year, month - 1, date, hour, minute)
  // An hour that the clocks leap over in spring is taken for the one after it; a day or an hour that never is, is not.
  const isDay = at.getFullYear() === year && at.getMonth() === month - 1 && at.getDate() === date
  if (!isDay || hour > 23 || minute > 59) return refused('There is no such day or time.')
  const atMs = at.getTime()
  if (atMs > nowMs) {
    return refused(`That is still to come. It is ${dayName(nowMs, nowMs).toLowerCase()}, ${clockOf(nowMs)}.`)
  }
  // The field knows no seconds: the minute in which the batch began is not before it.
  if (atMs < Math.floor(startedAtMs / MINUTE_MS) * MINUTE_MS) {
    return refused(`The batch began later: ${dayName(startedAtMs, nowMs)}, ${clockOf(startedAtMs)}.`)
  }
  return { ok: true, atMs: Math.max(atMs, startedAtMs) }
}

const MINUTE_MS = 60_000

function refused(say: string): SeenAt {
  return { ok: false, say }
}
