// When a step that starts is due, and after when an answer to it is late.
import type { Programme, Step, Until, Wait } from '../protocol/model.ts'
import { sequenceOf } from '../protocol/tree.ts'
import type { ActiveStep, Run } from './state.ts'

/** An answer is not late while the hands are at it, and never within half a minute. Common practice, no source. */
const ANSWER_SLACK_MS = 30_000
/** A reading older than this no longer tells the bath's temperature. Common practice, no source. */
const READING_FRESH_MS = 20 * 60_000
/** A reading that is not there yet is asked for again no sooner than this. */
const REREAD_LEAST_MS = 60_000
const REREAD_MOST_MS = 15 * 60_000

export type Timing = {
  dueAtMs: number | null
  timeDueAtMs: number | null
  lateAfterMs: number | null
  carryMs: number
  absorbedMs: number
}

export function answerSlackMs(step: Step): number {
  return Math.max(ANSWER_SLACK_MS, step.hands.likelyMs)
}

/** Due and late times of a step that starts at `atMs` with `carryMs` of lateness to absorb and `graceMs` of leave from
 * the wait before it (null: never late). */
export function timingOf(run: Run, step: Step, atMs: number, carryMs: number, graceMs: number | null): Timing {
  const { wait } = step
  if (wait) return waitTiming(run, step, wait, atMs, carryMs)
  const dueAtMs = notBefore(run, step, step.ramp ? atMs + rampMs(run, step, atMs) : atMs)
  return { dueAtMs, timeDueAtMs: null, lateAfterMs: lateAfter(step, dueAtMs, graceMs), carryMs, absorbedMs: 0 }
}

/** After when an answer is late; null for a soft tick and where the writer set no end. */
export function lateAfter(step: Step, dueAtMs: number | null, graceMs: number | null): number | null {
  return dueAtMs === null || graceMs === null || step.soft ? null : dueAtMs + graceMs + answerSlackMs(step)
}

function waitTiming(run: Run, step: Step, wait: Wait, atMs: number, carryMs: number): Timing {
  const absorbedMs =
    wait.from === null && wait.forMs !== null ? Math.min(carryMs, Math.max(0, wait.forMs - wait.leastMs)) : 0
  const timeDue = timePartDue(run, wait, atMs, absorbedMs)
  if (timeDue === 'unknown') return { dueAtMs: null, timeDueAtMs: null, lateAfterMs: null, carryMs, absorbedMs: 0 }
  const asked = wait.until.filter((u) => u.kind !== 'moment')
  const expected = asked.length === 0 ? atMs : Math.max(...asked.map((u) => atMs + expectedMs(run, step, u, atMs)))
  const waitsForMoment = wait.until.some((u) => u.kind === 'moment' && run.moments[u.name] === undefined)
  const known = timeDue !== null || asked.length > 0 || !waitsForMoment
  const dueAtMs = waitsForMoment || !known ? null : Math.max(timeDue ?? atMs, expected)
  return {
    dueAtMs,
    timeDueAtMs: timeDue,
    lateAfterMs: asked.length > 0 ? lateAfter(step, dueAtMs, wait.graceMs) : null,
    carryMs: carryMs - absorbedMs,
    absorbedMs
  }
}

/** When the time part of a wait is over; 'unknown' while the moment it counts from has not come; null without one. */
export function timePartDue(run: Run, wait: Wait, startedAtMs: number, absorbedMs: number): number | null | 'unknown' {
  if (wait.forMs === null) return null
  if (wait.from === null) return startedAtMs + wait.forMs - absorbedMs
  const from = run.moments[wait.from]
  return from === undefined ? 'unknown' : Math.max(from + wait.forMs, startedAtMs + wait.leastMs)
}

/** The minimum gaps that end in this step put it off. */
function notBefore(run: Run, step: Step, dueAtMs: number): number {
  let due = dueAtMs
  for (const gap of run.programme.gaps) {
    if (gap.atLeastMs === null || (gap.to !== step.id && !step.marks.includes(gap.to))) continue
    const from = run.moments[gap.from]
    if (from !== undefined) due = Math.max(due, from + gap.atLeastMs)
  }
  return due
}

function freshTempC(run: Run, atMs: number): number | null {
  return run.bathTempAtMs !== null && atMs - run.bathTempAtMs <= READING_FRESH_MS ? run.bathTempC : null
}

function rampMs(run: Run, step: Step, atMs: number): number {
  const ramp = step.ramp
  if (!ramp) return 0
  const fromC = freshTempC(run, atMs) ?? ramp.expectedFromC
  return Math.max(0, ((ramp.lowC - fromC) / ramp.cPerMin) * 60_000)
}

function expectedMs(run: Run, step: Step, until: Until, atMs: number): number {
  if (until.kind !== 'temperature') return step.clock.likelyMs
  const fromC = freshTempC(run, atMs)
  const targetC = until.going === 'down' ? until.highC : until.lowC
  if (fromC === null || targetC === null) return step.clock.likelyMs
  if (until.going === 'down') return coolingMs(run.programme, step.wait, fromC, targetC) ?? step.clock.likelyMs
  return fromC >= targetC ? 0 : step.clock.likelyMs
}

/** Minutes of cooling by Newton's law, T = Ta + (T0 - Ta) e^-kt, in ms; null when the room never lets it get there.
 * The constant k stands in the programme with its source. With cold water it goes at the rate of the wait. */
export function coolingMs(programme: Programme, wait: Wait | null, fromC: number, targetC: number): number | null {
  if (fromC <= targetC) return 0
  if (wait?.coolCPerMin !== undefined) return ((fromC - targetC) / wait.coolCPerMin) * 60_000
  if (targetC <= programme.roomC) return null
  const min = Math.log((fromC - programme.roomC) / (targetC - programme.roomC)) / programme.coolingPerMin
  return min * 60_000
}

/** When to ask again after a reading that is not there yet. */
export function rereadMs(programme: Programme, step: Step, tempC: number): number {
  const bounded = (ms: number): number => Math.min(REREAD_MOST_MS, Math.max(REREAD_LEAST_MS, Math.round(ms)))
  if (step.ramp) return bounded(((step.ramp.lowC - tempC) / step.ramp.cPerMin) * 60_000)
  const until = step.wait?.until.find((u) => u.kind === 'temperature')
  if (until?.kind === 'temperature' && until.going === 'down' && until.highC !== null) {
    return bounded(coolingMs(programme, step.wait, tempC, until.highC) ?? REREAD_MOST_MS)
  }
  return 5 * 60_000
}

/** Are all conditions of a wait met, its time aside? */
export function conditionsMet(run: Run, active: ActiveStep, wait: Wait): boolean {
  return wait.until.every((u, i) => (u.kind === 'moment' ? run.moments[u.name] !== undefined : active.met.includes(i)))
}

/** When the last of the moments came that a wait waits for; long ago where it waits for none. */
export function lastMomentMs(run: Run, wait: Wait): number {
  const came = wait.until.flatMap((u) => (u.kind === 'moment' ? (run.moments[u.name] ?? []) : []))
  return Math.max(Number.NEGATIVE_INFINITY, ...came)
}

/** Is it only a named moment that a wait lacks? Then nobody is called to it: nobody could answer. */
export function lacksOnlyMoments(run: Run, active: ActiveStep, wait: Wait): boolean {
  return !conditionsMet(run, active, wait) && wait.until.every((u, i) => u.kind === 'moment' || active.met.includes(i))
}

/** Does the clock close this step when it is due? */
export function closesByClock(run: Run, active: ActiveStep, step: Step): boolean {
  return step.wait !== null && active.remainingMs === null && conditionsMet(run, active, step.wait)
}

/** The late rule of a step: its own, else that of the wait it ends, else the protocol's. */
export function lateRuleOf(programme: Programme, step: Step): 'shift' | 'absorb' | 'off-protocol' {
  if (step.late) return step.late
  const { siblings, index } = sequenceOf(programme, step.path)
  const before = index > 0 ? siblings[index - 1] : undefined
  return (before?.node === 'step' && before.wait ? before.late : null) ?? programme.late
}
