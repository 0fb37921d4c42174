import type { Rung, RungAlert } from '../rung.ts'

/** Said again this often: another tab that goes to rest takes the badge of the whole app away. */
const AGAIN_MS = 10_000

export type Badge = { setAppBadge?(count: number): Promise<void>; clearAppBadge?(): Promise<void> }

/** The number of pots that call, on the icon of the installed app. */
export function badgeRung(nowMs: () => number, badge: Badge = navigator as Badge): Rung {
  let said: { count: number; atMs: number } | null = null
  const say = (count: number): void => {
    if (said !== null && said.count === count && nowMs() - said.atMs < AGAIN_MS) return
    said = { count, atMs: nowMs() }
    const done = count > 0 ? badge.setAppBadge?.(count) : badge.clearAppBadge?.()
    // An app that is not installed has no icon to put it on.
    done?.catch(() => {})
  }
  return {
    id: 'badge',
    works: () => false,
    lamp: () => null,
    onLamp: () => () => {},
    raise: (alerts) => say(callingPots(alerts)),
    rest: () => say(0)
  }
}

/** A heads-up is no call yet. */
function callingPots(alerts: readonly RungAlert[]): number {
  return new Set(alerts.filter(({ alert }) => alert.urgency !== 'soon').map(({ potId }) => potId)).size
}
