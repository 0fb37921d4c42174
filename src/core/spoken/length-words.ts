import { numberWords } from './number-words.ts'

const SECOND_MS = 1_000
const MINUTE_MS = 60 * SECOND_MS

/** A length of time, no finer than an ear wants it: "forty seconds" (by tens), "three minutes", "one hour twenty
 * minutes". */
export function lengthWords(ms: number): string {
  if (ms < 95 * SECOND_MS) return counted(Math.max(1, Math.round(ms / SECOND_MS / 10)) * 10, 'second')
  const minutes = Math.round(ms / MINUTE_MS)
  if (minutes < 60) return counted(minutes, 'minute')
  const hours = Math.floor(minutes / 60)
  const rest = minutes % 60
  if (hours >= 48) return counted(Math.round(hours / 24), 'day')
  return rest === 0 ? counted(hours, 'hour') : `${counted(hours, 'hour')} ${counted(rest, 'minute')}`
}

function counted(count: number, unit: string): string {
  return `${numberWords(count)} ${unit}${count === 1 ? '' : 's'}`
}
