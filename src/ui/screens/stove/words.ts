// How the Stove says times and lateness. Short, plain; what is guessed is "about".
import { showCountdown } from '../../../core/quantity/show-countdown.ts'

const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS
/** An overdue time is said as late only from here on; a second is nobody's lateness. */
const LATE_FROM_MS = 1_000

/** "14:32", in the kitchen's own time. */
export function clockSay(atMs: number): string {
  const at = new Date(atMs)
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`
}

/** A length of time in a line of text: "0:24", "7 min", "1 h 40". Under two minutes the seconds count. */
export function lengthSay(ms: number): string {
  if (ms < 2 * MINUTE_MS) return showCountdown(Math.max(0, ms))
  return roughSay(ms)
}

/** Without seconds: "under 1 min", "7 min", "1 h 40", "2 days". */
export function roughSay(ms: number): string {
  const minutes = Math.round(ms / MINUTE_MS)
  if (minutes < 1) return 'under 1 min'
  if (minutes < 100) return `${minutes} min`
  const hours = Math.floor(minutes / 60)
  if (hours >= 48) return `${Math.round(hours / 24)} days`
  const rest = minutes % 60
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`
}

/** The giant time: a countdown to the second under an hour, above it to the minute. */
export function giantSay(leftMs: number): string {
  if (leftMs < 0) return showCountdown(-leftMs)
  if (leftMs >= HOUR_MS) {
    const minutes = Math.ceil(leftMs / MINUTE_MS)
    return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`
  }
  return showCountdown(leftMs)
}

/** "0:12 late", or "now". */
export function lateSay(lateMs: number): string {
  if (lateMs < LATE_FROM_MS) return 'now'
  return `${lateMs < HOUR_MS ? showCountdown(Math.floor(lateMs / 1000) * 1000) : roughSay(lateMs)} late`
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
