// What stands on a pot's bath: one act, one time, one mark, one pad.

import type { PhReading } from '../../../core/pot/events.ts'
import type { Expectation } from '../../../core/pot/expected/expectation.ts'
import type { PhEstimate } from '../../../core/pot/expected/ph.ts'
import type { LiveState } from '../../../core/pot/state.ts'
import type { Step } from '../../../core/protocol/model.ts'
import { showTemperature, showTemperatureRange } from '../../../core/quantity/show-temperature.ts'
import type { Units } from '../../../core/quantity/units.ts'
import { troubleLines } from '../../../core/safety/trouble.ts'
import { type Ask, askOf, calledBy } from './asks.ts'
import { ASKED_SOON_MS, actAfter, type LivePot, nameOf, type Open, openSteps, stepAfter } from './live.ts'
import { roughSay } from './words.ts'

/** A reading older than this is grey: it tells of a bath that was. */
export const STALE_MS = 15 * 60_000
/** So near to its act a wait is said as the act to come. */
const BEAT_MS = 2 * 60_000

export type Pad =
  | { kind: 'ask'; ask: Ask }
  /** The wait ends a little before its time, with the act after it. */
  | { kind: 'early'; waitPath: string; path: string; say: string }
  | { kind: 'read'; say: string }
  | { kind: 'note'; say: string }
  /** A free pot: what was done is told. */
  | { kind: 'deeds'; say: string }
  | { kind: 'resume'; say: string }
  | { kind: 'settle'; say: string }
  | { kind: 'finish'; say: string }

export type Time =
  /** `about`: no clock closes it. */
  | { kind: 'to'; atMs: number; about: boolean }
  | { kind: 'since'; atMs: number }
  | { kind: 'stands'; leftMs: number }
  | { kind: 'words'; say: string }

export type Mark = { say: string; stale: boolean }
export type Gauge = { now: number; to: number | null; label: string }

export type BathView = {
  name: string
  status: 'running' | 'stopped' | 'trouble' | 'done'
  act: string
  time: Time
  detail: string | null
  mark: Mark | null
  gauge: Gauge | null
  pad: Pad
  /** Is the act due? Then "Not yet" stands beside the pad. */
  duePath: string | null
  chips: { path: string; say: string; atMs: number | null }[]
  out: { sinceMs: number; limitAtMs: number | null } | null
  /** Of the step that is shown, what its thermometer tells. */
  expected: Expectation | null
  /** The last pH that was read, unless acid or water came in since, and what the doses would make. */
  ph: { reading: PhReading; made: PhEstimate | null } | null
}

export function bathView(pot: LivePot, nowMs: number, units: Units): BathView {
  const { state } = pot
  const open = openSteps(state)
  const main = open[0] ?? null
  const chips = open.slice(1).map(({ active, step }) => ({ path: step.path, say: step.doing, atMs: active.dueAtMs }))
  const out = state.outSinceMs === null ? null : { sinceMs: state.outSinceMs, limitAtMs: state.outLimitAtMs }
  const shared = {
    name: nameOf(pot),
    chips,
    out,
    mark: markOf(state, main?.step ?? null, nowMs, units),
    gauge: null,
    expected: null,
    ph: phOf(pot)
  }
  if (state.trouble !== null) return { ...shared, ...inTrouble(state) }
  if (state.status === 'held') return { ...shared, ...stopped(state.heldSinceMs, main, nowMs) }
  const look = pot.alerts.find((a) => a.kind === 'look')
  if (look?.path) {
    const { act, ask } = calledBy(state, look)
    if (ask)
      return { ...shared, ...plain(act, { kind: 'since', atMs: look.atMs }, { kind: 'ask', ask }), duePath: null }
  }
  if (!main) return { ...shared, ...finished(state) }
  const expected = pot.expected?.[main.active.path] ?? null
  const own = running(state, main, nowMs)
  return { ...shared, ...own, time: expectedTime(own, expected, nowMs), expected }
}

function phOf({ state: { ph, doses }, madePh }: LivePot): BathView['ph'] {
  if (ph === null || doses.some(({ atMs }) => atMs > ph.atMs)) return null
  return { reading: ph.reading, made: madePh ?? null }
}

/** Not while it calls, nor once it ought to be there: the next reading is what counts then. */
function expectedTime({ time, duePath }: Own, expected: Expectation | null, nowMs: number): Time {
  if (duePath !== null || expected === null) return time
  // The time of the next reading, said large, would be taken for that of the temperature.
  if (expected.kind === 'never')
    return { kind: 'words', say: expected.going === 'up' ? 'not on this heat' : 'not by itself' }
  if (expected.atMs - nowMs < BEAT_MS) return time
  return { kind: 'to', atMs: expected.atMs, about: true }
}

type Own = Pick<BathView, 'status' | 'act' | 'time' | 'detail' | 'pad' | 'duePath'> & { gauge?: Gauge | null }

function plain(act: string, time: Time, pad: Pad): Own {
  return { status: 'running', act, time, detail: null, pad, duePath: null }
}

function inTrouble(state: LiveState): Own {
  const trouble = state.trouble as NonNullable<LiveState['trouble']>
  const pad: Pad = { kind: 'settle', say: 'settle it' }
  const { act } = troubleLines(trouble.kind)
  return {
    ...plain(act, { kind: 'since', atMs: trouble.sinceMs }, pad),
    status: 'trouble',
    detail: 'Then settle it here'
  }
}

function stopped(sinceMs: number, main: Open | null, nowMs: number): Own {
  const over = main?.active.dueAtMs != null && main.active.dueAtMs < nowMs
  const time: Time = main?.active.dueAtMs == null || over ? { kind: 'since', atMs: sinceMs } : dueTime(main)
  const detail = over ? `${main?.step.knot ?? 'Its step'} is past its time` : (main?.step.doing ?? null)
  const pad: Pad = { kind: 'resume', say: 'go on' }
  return { ...plain('Stopped, still dyeing', time, pad), status: 'stopped', detail }
}

function finished(state: LiveState): Own {
  const act = state.heatOn ? 'Heat off. All steps are done' : 'All steps are done'
  return { ...plain(act, { kind: 'words', say: 'done' }, { kind: 'finish', say: 'finish' }), status: 'done' }
}

function dueTime({ active, step }: Open): Time {
  if (active.dueAtMs !== null) return { kind: 'to', atMs: active.dueAtMs, about: step.ramp !== null }
  if (active.remainingMs !== null) return { kind: 'stands', leftMs: active.remainingMs }
  return { kind: 'words', say: 'waits' }
}

function running(state: LiveState, open: Open, nowMs: number): Own {
  const { active, step } = open
  const { path } = step
  const ask = askOf(active, step)
  const due = active.dueAtMs !== null && active.dueAtMs <= nowMs
  if (due && ask) {
    const { act } = calledBy(state, { kind: 'call', path })
    return {
      ...plain(act, dueTime(open), { kind: 'ask', ask }),
      detail: step.detail,
      duePath: path,
      gauge: gaugeOf(state, step)
    }
  }
  if (step.open) return free(state, nowMs)
  const after = actAfter(state, active, step)
  if (after && active.dueAtMs !== null && active.dueAtMs - nowMs <= BEAT_MS) {
    const pad: Pad = { kind: 'early', waitPath: path, path: after.path, say: after.done }
    const detail = after.detail ?? `${step.doing} until then`
    return { ...plain(after.call, dueTime(open), pad), detail, gauge: gaugeOf(state, after) }
  }
  return {
    ...plain(step.doing, dueTime(open), padWhile(state, step, ask)),
    detail: whileSay(state, open),
    gauge: gaugeOf(state, step)
  }
}

/** The time since the last deed, and since the start. */
function free(state: LiveState, nowMs: number): Own {
  const sinceMs = state.deedAtMs ?? state.startedAtMs
  const asked = state.active[0]?.dueAtMs ?? null
  const call = asked !== null && asked - nowMs <= ASKED_SOON_MS ? `, call in ${roughSay(asked - nowMs)}` : ''
  const on = `On for ${roughSay(nowMs - state.startedAtMs)}${call}`
  const detail = state.heatOn ? `Heat is on. Stay by the pot. ${on}` : on
  const act = state.deedAtMs === null ? 'Started' : 'Since the last deed'
  const gauge =
    state.depth === null ? null : { now: state.depth, to: null, label: `${Math.round(state.depth * 100)} %` }
  return { ...plain(act, { kind: 'since', atMs: sinceMs }, { kind: 'deeds', say: 'what was done' }), detail, gauge }
}

/** What can be done while a step runs by itself. */
function padWhile(state: LiveState, step: Step, ask: Ask | null): Pad {
  if (ask && (step.wait === null || step.wait.forMs === null)) return { kind: 'ask', ask }
  const warm = state.heatOn || step.setPoint !== null || step.ramp !== null
  const asksTemp = step.wait?.until.some((u) => u.kind === 'temperature') ?? false
  return warm || asksTemp ? { kind: 'read', say: 'read temperature' } : { kind: 'note', say: 'note' }
}

function whileSay(state: LiveState, { active, step }: Open): string | null {
  if (active.remainingMs !== null) return 'Outside its range. The time stands still'
  const forbids = step.forbids.length > 0 ? `Do not ${step.forbids.join(', do not ')}` : null
  const after = stepAfter(state, active, step)
  return step.detail ?? forbids ?? (after ? `then ${after.call.charAt(0).toLowerCase()}${after.call.slice(1)}` : null)
}

function gaugeOf(state: LiveState, step: Step): Gauge | null {
  if (!step.depth && state.depth === null) return null
  return {
    now: state.depth ?? 0,
    to: step.depth?.fraction ?? null,
    label: step.depth?.label ?? `${Math.round((state.depth ?? 0) * 100)} %`
  }
}

function markOf(state: LiveState, step: Step | null, nowMs: number, units: Units): Mark | null {
  const range = step?.ramp ?? step?.setPoint ?? null
  if (state.bathTempC === null || state.bathTempAtMs === null) {
    return range ? { say: `no reading, wants ${showTemperatureRange(range, units)}`, stale: true } : null
  }
  const reading = showTemperature(state.bathTempC, units)
  const ageMs = nowMs - state.bathTempAtMs
  if (ageMs > STALE_MS) return { say: `${reading}, ${roughSay(ageMs)} ago`, stale: true }
  return { say: range ? `${reading}, ${placeIn(state.bathTempC, range, units)}` : reading, stale: false }
}

function placeIn(
  tempC: number,
  range: { lowC: number | null; highC: number | null; cPerMin?: number },
  units: Units
): string {
  const wants = showTemperatureRange(range, units)
  if (range.lowC !== null && tempC < range.lowC)
    return range.cPerMin === undefined ? `low, wants ${wants}` : `to ${wants}`
  if (range.highC !== null && tempC > range.highC) return `high, wants ${wants}`
  return 'in range'
}
