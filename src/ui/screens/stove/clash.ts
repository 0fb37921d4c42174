// Two pots that will want hands at once: which goes first, and how long the other can wait.
import { type Collision, collisions, startOf, type Work } from '../../../core/pot/collisions.ts'
import { type LivePot, nameOf } from './live.ts'
import { lengthSay, roughSay } from './words.ts'

const MINUTE_MS = 60_000
/** Said this far ahead: long enough to move something, near enough to still be so. */
const SAY_AHEAD_MS = 15 * MINUTE_MS
/** Nearer than this the calls themselves say it. */
const SAY_LEAST_MS = MINUTE_MS
/** Looked for this often: a forecast of every pot is not for every second. */
const LOOK_EVERY_MS = 15_000

/** The hour at which collisions were last looked for: the same for a quarter of a minute. */
export function lookAtMs(nowMs: number): number {
  return Math.floor(nowMs / LOOK_EVERY_MS) * LOOK_EVERY_MS
}

export type Clash = { key: string; say: string; order: string }

/** The next collision that may be said; `seen`: those that the dyer has been told of. */
export function clashNow(pots: readonly LivePot[], nowMs: number, seen: ReadonlySet<string>): Clash | null {
  const near = collisions(pots, nowMs).filter((each) => {
    const inMs = startOf(each) - nowMs
    return inMs >= SAY_LEAST_MS && inMs <= SAY_AHEAD_MS
  })
  const next = near.find((each) => !seen.has(keyOf(each)))
  if (next === undefined) return null
  const names = new Map(pots.map((pot) => [pot.potId, nameOf(pot)]))
  const name = (potId: string): string => names.get(potId) ?? ''
  return { key: keyOf(next), say: clashSay(next, name, nowMs), order: orderSay(next, name) }
}

/** "In 12 min Plum and Moss want hands at once. Plum first, 2 min; Moss can wait 3 min." */
export function clashSay(clash: Collision, name: (potId: string) => string, nowMs: number): string {
  const { first, second } = clash
  const at = `In ${roughSay(startOf(clash) - nowMs)} ${name(first.potId)} and ${name(second.potId)} want hands at once.`
  return `${at} ${orderSay(clash, name)}`
}

/** "Plum first, 2 min; Moss can wait 3 min." */
function orderSay({ first, second, waitMs }: Collision, name: (potId: string) => string): string {
  const begin = `${name(first.potId)} first, ${lengthSay(Math.max(MINUTE_MS, first.handsMs))}`
  return `${begin}; ${waitSay(name(second.potId), second, waitMs)}`
}

function waitSay(name: string, { canWaitMs }: Work, waitMs: number): string {
  if (canWaitMs === null) return `${name} can wait.`
  if (canWaitMs >= waitMs) return `${name} can wait ${roughSay(canWaitMs)}.`
  return `${name} can wait ${roughSay(canWaitMs)} and would be ${roughSay(waitMs - canWaitMs)} late.`
}

function keyOf({ first, second }: Collision): string {
  return [first, second].map(({ potId, path }) => `${potId} ${path}`).join(' | ')
}
