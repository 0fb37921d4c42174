// Two pots that will want the same pair of hands at the same time, said while something can still be done about it.
import type { Programme, Step } from '../protocol/model.ts'
import { sequenceOf, stepAt } from '../protocol/tree.ts'
import type { Expectations } from './expected/expectation.ts'
import { forecast } from './forecast.ts'
import type { Knot } from './knot.ts'
import { gapLimit } from './next-due.ts'
import type { LiveState } from './state.ts'
import { answerSlackMs, lateRuleOf } from './timing.ts'

/** Acts this near together in one pot are one piece of work. Common practice, no source. */
const ONE_WORK_MS = 60_000
/** Not before somebody could have got used to it, and not so far ahead that it will change. */
const AHEAD_MOST_MS = 30 * 60_000

/** One stretch of work that wants hands: from `atMs` for `handsMs`, ms. `canWaitMs`: how much later it may begin before
 * its protocol minds (late rule, gap, yarn out of the bath); null: as long as need be. */
export type Work = {
  potId: string
  path: string
  label: string
  atMs: number
  handsMs: number
  canWaitMs: number | null
}

/** `first` is to be served first, for it can wait less. `waitMs`: how long the other has to wait then. */
export type Collision = { first: Work; second: Work; waitMs: number }

/** `expected`: what its thermometer tells, where it does. */
export type PotAhead = { potId: string; state: LiveState; expected?: Expectations }

/** The collisions within the next half hour, earliest first. Works by likely times; what follows a loop of unknown length
 * is left out. Pure: the same states and hour give the same answer. */
export function collisions(pots: readonly PotAhead[], nowMs: number): Collision[] {
  const works = pots.map((pot) => worksOf(pot, nowMs))
  const found: Collision[] = []
  works.forEach((ofOne, at) => {
    for (const ofOther of works.slice(at + 1)) {
      for (const a of ofOne) for (const b of ofOther) if (overlap(a, b)) found.push(inOrder(a, b))
    }
  })
  return found.sort((x, y) => startOf(x) - startOf(y))
}

export function startOf({ first, second }: Collision): number {
  return Math.max(first.atMs, second.atMs)
}

function worksOf({ potId, state, expected }: PotAhead, nowMs: number): Work[] {
  if (state.status === 'held' || state.trouble !== null) return []
  const works: Work[] = []
  for (const knot of forecast(state, nowMs, expected)) {
    const step = stepAt(state.programme, knot.path)
    if (!step || !wantsHands(knot, step) || knot.atMs <= nowMs || knot.atMs > nowMs + AHEAD_MOST_MS) continue
    const waitMs = canWaitMs(state, step, knot.atMs)
    const last = works.at(-1)
    if (last && knot.atMs - (last.atMs + last.handsMs) <= ONE_WORK_MS) {
      last.handsMs = knot.atMs + knot.handsMs - last.atMs
      last.canWaitMs = least(last.canWaitMs, waitMs)
    } else {
      const { path, label, atMs, handsMs } = knot
      works.push({ potId, path, label, atMs, handsMs, canWaitMs: waitMs })
    }
  }
  return works
}

function wantsHands({ handsMs, faint }: Knot, { soft, wait }: Step): boolean {
  return handsMs > 0 && !faint && !soft && wait === null
}

function overlap(a: Work, b: Work): boolean {
  return a.atMs < b.atMs + b.handsMs && b.atMs < a.atMs + a.handsMs
}

/** What can wait less goes first; where both can, the one that is wanted first. */
function inOrder(a: Work, b: Work): Collision {
  const [waitA, waitB] = [a.canWaitMs ?? Infinity, b.canWaitMs ?? Infinity]
  const aFirst = waitA === waitB ? a.atMs <= b.atMs : waitA < waitB
  const [first, second] = aFirst ? [a, b] : [b, a]
  return { first, second, waitMs: Math.max(0, first.atMs + first.handsMs - second.atMs) }
}

/** How much later than `atMs` an act may begin before its protocol minds; null: as long as need be. */
export function canWaitMs(state: LiveState, step: Step, atMs: number): number | null {
  let ms = byLateRule(state.programme, step)
  for (const gap of state.programme.gaps) {
    if (gap.to !== step.id && !step.marks.includes(gap.to)) continue
    const limitMs = gapLimit(state, gap)
    if (limitMs !== null) ms = least(ms, Math.max(0, limitMs - atMs))
  }
  if (state.outLimitAtMs !== null) ms = least(ms, Math.max(0, state.outLimitAtMs - atMs))
  return ms
}

/** shift: what follows moves along. absorb: as much as the next wait can shrink. off-protocol: until it counts as late. */
function byLateRule(programme: Programme, step: Step): number | null {
  switch (lateRuleOf(programme, step)) {
    case 'shift':
      return null
    case 'absorb': {
      const { siblings, index } = sequenceOf(programme, step.path)
      const next = siblings.slice(index + 1).find((node) => node.node === 'step' && node.wait !== null)
      const wait = next?.node === 'step' ? next.wait : null
      return wait === null || wait.forMs === null ? 0 : Math.max(0, wait.forMs - wait.leastMs)
    }
    case 'off-protocol':
      return answerSlackMs(step)
  }
}

function least(a: number | null, b: number | null): number | null {
  return a === null ? b : b === null ? a : Math.min(a, b)
}
