import { alertsDue } from '../core/pot/alerts-due.ts'
import { lookAhead } from '../core/pot/catch-up.ts'
import type { Alert } from '../core/pot/due.ts'
import { nextDue } from '../core/pot/next-due.ts'
import type { PotState } from '../core/pot/state.ts'
import { coming } from './coming.ts'
import { brokenPot, type LivePot } from './live-pot.ts'
import { owns, type Room } from './room.ts'
import type { PotAlert } from './types.ts'

/** Works out all standing alerts at once, in memory, and hands them to whoever sounds them. Waits for nothing. */
export function ring(room: Room): void {
  const nowMs = room.options.clock.nowMs() - room.unshiftedMs
  const standing: PotAlert[] = []
  let changed = false
  let soonestMs = Infinity
  for (const [potId, pot] of room.pots) {
    const { ahead, alerts, nextMs } = standingOf(pot, pot.ahead, nowMs)
    soonestMs = Math.min(soonestMs, nextMs)
    // The call after an act says that the act is done: it is seen once that is stored, or can't be.
    const seen = room.failure !== null || pot.state === pot.ahead ? alerts : standingOf(pot, pot.state, nowMs).alerts
    changed ||= signature(seen) !== signature(room.alerts.get(potId) ?? [])
    room.alerts.set(potId, seen)
    if (ahead.status === 'idle') continue
    for (const alert of alerts) standing.push({ potId, colourway: ahead.pot.colourway, alert })
  }
  if (owns(room)) room.options.onAlerts?.(standing, coming(room, nowMs))
  // The beat comes a few times a second: a deadline that waited for it would be called that much late.
  if (soonestMs < Infinity) room.options.clock.tickAt?.(soonestMs + room.unshiftedMs)
  if (changed) room.changed()
}

type Standing = { ahead: PotState; alerts: Alert[]; nextMs: number }

function standingOf(pot: LivePot, from: PotState, nowMs: number): Standing {
  try {
    const ahead = lookAhead(from, nowMs)
    const nextMs = nextDue(ahead).find(({ atMs }) => atMs > nowMs)?.atMs ?? Infinity
    return { ahead, alerts: alertsDue(ahead, nowMs), nextMs }
  } catch (error) {
    // A fault in one pot must not silence the others.
    pot.readOnly ??= brokenPot(error)
    return { ahead: from, alerts: [], nextMs: Infinity }
  }
}

/** Screens redraw a late alert once a second, not at every tick. */
function signature(alerts: readonly PotAlert['alert'][]): string {
  return alerts.map(({ key, urgency, lateMs }) => `${key} ${urgency} ${Math.floor(lateMs / 1000)}`).join('|')
}
