import type { Alert } from '../core/pot/due.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { PotState } from '../core/pot/state.ts'

const WATCHED_AHEAD_MS = 30 * 60_000

/** A pot is watched while its heat is on or something is due within half an hour; else it rests. The screen stays on,
 * and the app never updates itself, while any pot is watched. */
export function isWatched(pot: { state: PotState; alerts: readonly Alert[] }, nowMs: number): boolean {
  const { state, alerts } = pot
  if (state.status !== 'running' && state.status !== 'held') return false
  if (state.heatOn || alerts.length > 0) return true
  const next = nextDue(state)[0]
  return next !== undefined && next.atMs - nowMs <= WATCHED_AHEAD_MS
}

/** Is any of them? */
export function anyWatched(pots: readonly Parameters<typeof isWatched>[0][], nowMs: number): boolean {
  return pots.some((pot) => isWatched(pot, nowMs))
}
