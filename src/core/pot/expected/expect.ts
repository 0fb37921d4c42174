// From the readings so far, or before there are enough from earlier batches or the protocol's rate, to the expected times
// of what a pot waits for at the thermometer.
import type { TimeToTemperature } from '../../chemistry/heating/answer.ts'
import { timeToTemperature } from '../../chemistry/heating/time-to-temperature.ts'
import { stepAt } from '../../protocol/tree.ts'
import type { LiveState, TempReading } from '../state.ts'
import { coolingMs } from '../timing.ts'
import { type EarlierHeat, fromEarlier } from './earlier.ts'
import type { Doubt, Expectation, Expectations, ExpectedAt, Grounds, Outcome } from './expectation.ts'
import { type Goal, goalOf } from './goal.ts'

const MINUTE_MS = 60_000
/** A kitchen thermometer in a stirred bath, read in whole degrees. Common practice, no source. */
export const readingDoubt = { sdC: 0.5, resolutionC: 1 } as const
/** A reading older than this no longer tells where a bath begins. Common practice, no source. */
const FRESH_MS = 20 * MINUTE_MS
/** Rings differ: a fifth faster, half as slow again; rooms differ more. Common practice, no source. */
const RING = { least: 0.8, most: 1.5 }
const ROOM = { least: 0.7, most: 1.6 }

/** What is expected of the open steps that wait for a temperature. In trouble nothing goes its way: empty. */
export function expectationsOf(state: LiveState, earlier: readonly EarlierHeat[]): Expectations {
  const all: Record<string, Expectation> = {}
  if (state.trouble !== null) return all
  for (const active of state.active) {
    const goal = goalOf(state, active)
    const found = goal && expect(state, goal, earlier)
    if (found) all[active.path] = { targetC: goal.targetC, going: goal.going, ...found }
  }
  return all
}

function expect(state: LiveState, goal: Goal, earlier: readonly EarlierHeat[]): Outcome | null {
  const { readings } = goal
  if (readings.length === 0) return estimate(state, goal, earlier)
  const { answer, counted } = asked(goal, readings)
  const [first, last] = [counted[0] as TempReading, counted.at(-1) as TempReading]
  const atOf = (min: number): number => first.atMs + min * MINUTE_MS
  if (answer.kind === 'never') return { kind: 'never', readings: counted.length }
  if (answer.kind === 'cannot-tell') {
    const leastMs = answer.lowMin === undefined ? null : atOf(answer.lowMin)
    const guess = estimate(state, goal, earlier)
    return guess && doubted(guess, { code: answer.code, leastMs })
  }
  // At the last reading it was not there yet, whatever the curve says.
  const notBefore = (min: number): number => Math.max(last.atMs, atOf(min))
  return {
    kind: 'at',
    atMs: notBefore(answer.min),
    leastMs: notBefore(answer.lowMin),
    mostMs: answer.highMin === null ? null : notBefore(answer.highMin),
    grounds: { by: 'readings', count: counted.length, sinceMs: first.atMs },
    readings: readings.length,
    doubt: null
  }
}

type Asked = { answer: TimeToTemperature; counted: readonly TempReading[] }

/** Where a lid or a draught changed the curve, the readings since then are asked alone. */
function asked(goal: Goal, readings: readonly TempReading[]): Asked {
  const { aimC, boilC, going } = goal
  const startMs = readings[0]?.atMs ?? 0
  const inMin = readings.map(({ atMs, tempC }) => ({ atMin: (atMs - startMs) / MINUTE_MS, tempC }))
  const answer = timeToTemperature({ readings: inMin, targetC: aimC, ...readingDoubt, boilC, towards: going })
  if (answer.kind !== 'cannot-tell' || answer.fitsFromMin === undefined) return { answer, counted: readings }
  const fromMs = startMs + answer.fitsFromMin * MINUTE_MS
  // Half a second, for minutes are no whole numbers.
  const late = readings.filter(({ atMs }) => atMs >= fromMs - 500)
  return late.length < readings.length ? asked(goal, late) : { answer, counted: readings }
}

/** Not before the earliest that the readings leave, and nobody knows how late. */
function doubted(guess: ExpectedAt, doubt: Doubt): ExpectedAt {
  if (doubt.leastMs === null) return { ...guess, doubt }
  const leastMs = Math.max(guess.leastMs, doubt.leastMs)
  return { ...guess, leastMs, atMs: Math.max(guess.atMs, leastMs), mostMs: null, doubt }
}

/** By earlier batches, else by the protocol's rate, from the last reading on; null: nobody says where it begins. */
function estimate(state: LiveState, goal: Goal, earlier: readonly EarlierHeat[]): ExpectedAt | null {
  const from = beginning(state, goal)
  if (from === null) return null
  const way = { fromC: from.tempC, targetC: goal.aimC, going: goal.going }
  const before = goal.going === 'down' && goal.cPerMin !== null ? null : fromEarlier(earlier, state, way)
  if (before) {
    const { count, pot, min, leastMin, mostMin } = before
    return guessed(goal, from.atMs, [leastMin, min, mostMin], { by: 'batches', count, pot })
  }
  const min = minutesByRate(state, goal, from.tempC)
  const { least, most } = goal.cPerMin === null ? ROOM : RING
  return min === null ? null : guessed(goal, from.atMs, [min * least, min, min * most], { by: 'rate' })
}

function guessed(
  { readings }: Goal,
  fromMs: number,
  [least, likely, most]: [number, number, number | null],
  grounds: Grounds
): ExpectedAt {
  const at = (min: number): number => Math.round(fromMs + min * MINUTE_MS)
  const mostMs = most === null ? null : at(most)
  return {
    kind: 'at',
    atMs: at(likely),
    leastMs: at(least),
    mostMs,
    grounds,
    readings: readings.length,
    doubt: null
  }
}

/** The last reading of this way, else one shortly before it, else where the programme presumes it to begin. */
function beginning(state: LiveState, { readings, active, fromC }: Goal): TempReading | null {
  const last = readings.at(-1)
  if (last) return last
  const { startedAtMs } = active
  const { bathTempC, bathTempAtMs } = state
  const fresh = bathTempAtMs !== null && bathTempAtMs <= startedAtMs && startedAtMs - bathTempAtMs <= FRESH_MS
  if (fresh && bathTempC !== null) return { atMs: startedAtMs, tempC: bathTempC }
  return fromC === null ? null : { atMs: startedAtMs, tempC: fromC }
}

function minutesByRate({ programme }: LiveState, goal: Goal, fromC: number): number | null {
  const { going, aimC, cPerMin, active } = goal
  if (going === 'up') return Math.max(0, aimC - fromC) / (cPerMin as number)
  const wait = stepAt(programme, active.path)?.wait ?? null
  const ms = coolingMs(programme, wait, fromC, aimC)
  return ms === null ? null : ms / MINUTE_MS
}
