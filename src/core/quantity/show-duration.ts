import type { Duration } from './duration.ts'
import { dayMs, hourMs, minuteMs, secondMs } from './duration-term.ts'
import { noBreakSpace, notKnown } from './show-number.ts'

/** A length of time: "45 s", "6 min", "1 h 20 min", from 48 h on "2 days 3 h". To the second below an hour, to the
 * minute from an hour on. */
export function showDuration(ms: number): string {
  if (!Number.isFinite(ms)) return notKnown
  const size = Math.abs(ms)
  const step = size < hourMs ? secondMs : minuteMs
  const rounded = Math.round(size / step) * step
  const days = rounded >= 2 * dayMs ? Math.floor(rounded / dayMs) : 0
  const hours = Math.floor((rounded - days * dayMs) / hourMs)
  const minutes = Math.floor((rounded % hourMs) / minuteMs)
  const seconds = Math.floor((rounded % minuteMs) / secondMs)
  const parts = [part(days, 'days'), part(hours, 'h'), part(minutes, 'min'), part(seconds, 's')].filter((p) => p !== '')
  if (parts.length === 0) return `0${noBreakSpace}s`
  return `${ms < 0 ? '−' : ''}${parts.join(' ')}`
}

/** A length of time with its ends: "6 min", "25–30 min", "at least 20 min", "at most 3 min", "1 h – 1 h 20 min". */
export function showDurationRange(duration: Pick<Duration, 'lowMs' | 'highMs'>): string {
  const low = showDuration(duration.lowMs)
  if (duration.highMs === null) return `at least ${low}`
  const high = showDuration(duration.highMs)
  if (low === high) return high
  if (duration.lowMs === 0) return `at most ${high}`
  const [lowFigure, lowUnit, ...lowMore] = low.split(/[ \u00a0]/)
  const [, highUnit, ...highMore] = high.split(/[ \u00a0]/)
  const oneUnit = lowUnit === highUnit && lowMore.length === 0 && highMore.length === 0
  return oneUnit ? `${lowFigure}–${high}` : `${low} – ${high}`
}

function part(value: number, unit: string): string {
  return value === 0 ? '' : `${value}${noBreakSpace}${unit}`
}
