import type { BatchName } from '../../backup.ts'
import { dayName } from '../../parts/day-name.ts'

export function many(count: number, one: string, more: string): string {
  return `${count} ${count === 1 ? one : more}`
}

const NAMED_MOST = 5

/** "Moss of Monday 3 June 2031, Plum of Today and 4 more": each can be found again in the Dye book. */
export function named(batches: readonly BatchName[], nowMs: number): string {
  const some = batches.slice(0, NAMED_MOST).map(({ colourway, startedAtMs }) => nameOf(colourway, startedAtMs, nowMs))
  const more = batches.length - some.length
  return more === 0 ? some.join(', ') : `${some.join(', ')} and ${more} more`
}

export function nameOf(colourway: string, startedAtMs: number, nowMs: number): string {
  return `${colourway || 'a batch whose start can’t be read'}${startedAtMs === 0 ? '' : ` (${dayName(startedAtMs, nowMs)})`}`
}
