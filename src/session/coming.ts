import { alertsDue } from '../core/pot/alerts-due.ts'
import { lookAhead } from '../core/pot/catch-up.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { PotState } from '../core/pot/state.ts'
import type { Room } from './room.ts'
import type { PotAlert } from './types.ts'

/** As far ahead as sounds are ordered: a page is looked after again long before. */
const AHEAD_MS = 10 * 60_000
/** More calls than that in ten minutes nobody could answer anyway. */
const MOMENTS_MOST = 8

/** Worked out once for a state: a tick comes four times a second. */
const known = new WeakMap<PotState, { untilMs: number; alerts: PotAlert[] }>()

/** The alerts that come within ten minutes if nobody does anything, in the order of their hours. */
export function coming(room: Room, nowMs: number): PotAlert[] {
  const all: PotAlert[] = []
  for (const [potId, { ahead, readOnly }] of room.pots) {
    if (readOnly !== null || ahead.status === 'idle') continue
    let found = known.get(ahead)
    // Half of the ten minutes may pass before it is looked for anew.
    if (found === undefined || found.untilMs < nowMs + AHEAD_MS / 2) {
      found = { untilMs: nowMs + AHEAD_MS, alerts: comingOf(potId, ahead.pot.colourway, ahead, nowMs) }
      known.set(ahead, found)
    }
    for (const one of found.alerts) if (one.alert.atMs > nowMs) all.push(one)
  }
  return all.sort((a, b) => a.alert.atMs - b.alert.atMs)
}

function comingOf(potId: string, colourway: string, from: PotState, nowMs: number): PotAlert[] {
  const found = new Map<string, PotAlert>()
  const seen = new Set(alertsDue(lookAhead(from, nowMs), nowMs).map(({ key }) => key))
  let atMs = nowMs
  for (let moments = 0; moments < MOMENTS_MOST; moments++) {
    const next = nextDue(lookAhead(from, atMs)).find((due) => due.atMs > atMs)
    if (next === undefined || next.atMs > nowMs + AHEAD_MS) break
    atMs = next.atMs
    for (const alert of alertsDue(lookAhead(from, atMs), atMs)) {
      if (!seen.has(alert.key)) found.set(alert.key, { potId, colourway, alert })
      seen.add(alert.key)
    }
  }
  return [...found.values()]
}
