// What the Stove asks of a pot's state before it draws anything.
import { asCalled } from '../../../core/pot/expected/as-called.ts'
import type { Expectations } from '../../../core/pot/expected/expectation.ts'
import { forecast } from '../../../core/pot/forecast.ts'
import type { Knot } from '../../../core/pot/knot.ts'
import type { ActiveStep, LiveState } from '../../../core/pot/state.ts'
import type { Step } from '../../../core/protocol/model.ts'
import { sequenceOf, stepAt } from '../../../core/protocol/tree.ts'
import type { PotOnStove } from '../../kitchen.ts'

export type LivePot = PotOnStove & { state: LiveState }
export type Open = { active: ActiveStep; step: Step }

/** Bands a minute or two apart are one piece of work: the hands stay in. Common practice, no source. */
export const BEAT_MS = 2 * 60_000
/** Lift, acid, stir, enter: one after the other, and no more than this between them. */
const AT_IT_MS = 3 * 60_000
/** A call of a free pot that the dyer asked for; the one it makes by itself is hours off. */
export const ASKED_SOON_MS = 60 * 60_000

export function livePots(pots: PotOnStove[]): LivePot[] {
  return pots.filter((p): p is LivePot => p.state.status === 'running' || p.state.status === 'held')
}

export function nameOf(pot: LivePot): string {
  return pot.state.pot.colourway || pot.state.pot.letter
}

/** The open steps, what wants hands first in front. */
export function openSteps(state: LiveState): Open[] {
  const far = Number.MAX_SAFE_INTEGER
  return state.active
    .map((active) => ({ active, step: stepAt(state.programme, active.path) }))
    .filter((open): open is Open => open.step !== null)
    .sort((a, b) => (a.active.dueAtMs ?? far) - (b.active.dueAtMs ?? far))
}

/** Does it hang on the rod: does it need heat or hands? Else it lies on the bench. */
export function needsStove(pot: LivePot): boolean {
  const { state } = pot
  if (state.heatOn || state.trouble !== null) return true
  if (pot.alerts.some((a) => a.kind !== 'headsUp')) return true
  return openSteps(state).some(({ step }) => !step.bench)
}

export function isAct(step: Step): boolean {
  return step.behaviour === 'act' || step.behaviour === 'dose'
}

/** Has this pot hands in it: a skein lifted, acts one after another, or bands with a short wait between them? */
export function handsIn(state: LiveState, nowMs: number): boolean {
  if (state.status === 'held' || state.trouble !== null) return false
  return openSteps(state).some(({ active, step }) => {
    if (isAct(step)) return state.outSinceMs !== null || followsAct(state, step, nowMs)
    return step.wait !== null && isBeat(state, active, step)
  })
}

function followsAct(state: LiveState, step: Step, nowMs: number): boolean {
  const { siblings, index } = sequenceOf(state.programme, step.path)
  const before = siblings[index - 1]
  if (before?.node !== 'step' || !isAct(before)) return false
  const ended = state.ended[before.path]
  return ended !== undefined && nowMs - ended < AT_IT_MS
}

/** A wait so short, with an act after it, that nobody goes away in between. */
export function isBeat(state: LiveState, active: ActiveStep, step: Step): boolean {
  if (step.wait === null || step.wait.until.length > 0 || active.dueAtMs === null) return false
  return active.dueAtMs - active.startedAtMs <= BEAT_MS && actAfter(state, active, step) !== null
}

/** A wait that the clock alone ends. */
export function isClockWait(step: Step): boolean {
  return step.wait !== null && step.wait.until.length === 0
}

/** The step that follows an open one by itself, as the forecast has it. */
export function stepAfter(state: LiveState, active: ActiveStep, step: Step): Step | null {
  if (active.dueAtMs === null) return null
  const next = forecast(state, active.dueAtMs).find((k) => !k.active)
  const after = next ? stepAt(state.programme, next.path) : null
  if (!next || !after || after.path === step.path) return null
  return next.atMs - active.dueAtMs <= 1000 ? after : null
}

/** The same where it is an act for the hands. */
export function actAfter(state: LiveState, active: ActiveStep, step: Step): Step | null {
  const after = stepAfter(state, active, step)
  return after && isAct(after) ? after : null
}

/** Knots worth drawing: an open wait that the clock closes is plain yarn, what comes after it is the knot. */
export function knotsOf(state: LiveState, nowMs: number, expected?: Expectations): Knot[] {
  return forecast(state, nowMs, expected).filter((knot) => {
    if (!knot.active) return true
    const step = stepAt(state.programme, knot.path)
    // The call that a free pot makes by itself is no act to come.
    if (step?.open) return knot.atMs - nowMs <= ASKED_SOON_MS
    return !(step && isClockWait(step))
  })
}

export type Wanted = { pot: LivePot; atMs: number; about: boolean; what: string }

/** Which pots want hands, soonest first. What is due already comes first of all. */
export function handsWanted(pots: LivePot[], nowMs: number): Wanted[] {
  return pots
    .flatMap((pot): Wanted[] => {
      const knot = knotsOf(pot.state, nowMs, pot.expected)
        .map((k) => asCalled(pot.state, k, pot.expected))
        .sort((a, b) => a.atMs - b.atMs)
        .find((k) => wantsPerson(pot.state, k))
      if (!knot) return pot.state.stepsDone ? [{ pot, atMs: nowMs, about: false, what: 'finish' }] : []
      return [{ pot, atMs: knot.atMs, about: knot.mostMs - knot.leastMs > 60_000, what: knot.label }]
    })
    .sort((a, b) => a.atMs - b.atMs)
}

function wantsPerson(state: LiveState, knot: Knot): boolean {
  const step = stepAt(state.programme, knot.path)
  if (!step) return false
  return step.behaviour !== 'wait' || (step.wait?.until.length ?? 0) > 0
}
