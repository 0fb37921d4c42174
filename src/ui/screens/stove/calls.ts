// Which pot may fill the screen. Never over a pot that has hands in it; never two at once.
import type { Alert } from '../../../core/pot/due.ts'
import { handsIn, type LivePot } from './live.ts'

export type Call = { pot: LivePot; alert: Alert }
export type Calls = {
  /** The call that fills the screen. */
  full: Call | null
  /** The others, most urgent first: strips above. */
  strips: Call[]
}

/** `shown`: the key of the call that fills the screen now: it stays until it is answered. `aside`: keys of calls that
 * the dyer laid aside to look at the pots. */
export function sortCalls(pots: LivePot[], nowMs: number, shown: string | null, aside: ReadonlySet<string>): Calls {
  const calls = pots.flatMap((pot) => pot.alerts.map((alert): Call => ({ pot, alert }))).sort(byUrgency)
  const worked = pots.find((pot) => handsIn(pot.state, nowMs)) ?? null
  const fit = calls.filter((call) => fills(call) && !aside.has(keyOf(call)))
  const mayFill = worked ? fit.filter((call) => call.pot.potId === worked.potId) : fit
  const full = mayFill.find((call) => keyOf(call) === shown) ?? mayFill[0] ?? null
  // A pot's own limits are shown on its call, where the act is that ends them.
  const strips = calls.filter((call) => call !== full && !(full && call.pot.potId === full.pot.potId))
  return { full, strips }
}

/** One key for the screen: two pots may call the same step of the same protocol. */
export function keyOf({ pot, alert }: Call): string {
  return `${pot.potId} ${alert.key}`
}

/** Whether it may fill the screen at all. */
export function fills({ pot, alert }: Call): boolean {
  if (pot.state.status === 'held' || pot.state.trouble !== null) return false
  // A lifted skein whose next act calls is shown on that call, with its time out of the bath.
  if (alert.kind === 'outOfBath') return !pot.alerts.some((a) => a.kind === 'call')
  return alert.kind === 'call' || alert.kind === 'look' || (alert.kind === 'finish' && pot.state.heatOn)
}

const order: Record<Alert['urgency'], number> = { late: 0, now: 1, soon: 3 }

function rank({ alert }: Call): number {
  if (alert.kind === 'outOfBath') return -1
  const soft = alert.soft && alert.urgency === 'now' ? 1.5 : 0
  return order[alert.urgency] + (alert.escalates ? 0 : 0.2) + soft
}

function byUrgency(a: Call, b: Call): number {
  return rank(a) - rank(b) || a.alert.atMs - b.alert.atMs || (keyOf(a) < keyOf(b) ? -1 : 1)
}
