// What the thermometer will most likely say: so that a reading is a knuckle on a pad and not a number typed.
import type { LiveState } from '../../../core/pot/state.ts'
import type { Question } from '../../../core/protocol/model.ts'
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../../core/quantity/temperature-scale.ts'
import { openSteps } from './live.ts'

const WARM_C = 60
const BOIL_C = 100

/** Expected bath temperature, whole °C: the middle of what is asked, else what is held, else the last reading carried on. */
export function expectedTempC(state: LiveState, question: Question | null, nowMs: number): number {
  const carried = carriedC(state, nowMs)
  if (question?.kind === 'temperature') {
    const { lowC, highC } = question
    if (lowC !== null && highC !== null) return Math.round((lowC + highC) / 2)
    return Math.round(lowC ?? highC ?? carried ?? WARM_C)
  }
  for (const { step } of openSteps(state)) {
    const { setPoint } = step
    if (setPoint?.lowC != null && setPoint.highC != null) return Math.round((setPoint.lowC + setPoint.highC) / 2)
  }
  return Math.round(carried ?? WARM_C)
}

/** The last reading carried on: up at the ramp's rate, down by Newton's law with the programme's own constant. */
function carriedC(state: LiveState, nowMs: number): number | null {
  const { bathTempC, bathTempAtMs, programme } = state
  if (bathTempC === null || bathTempAtMs === null) return null
  const minutes = Math.max(0, nowMs - bathTempAtMs) / 60_000
  const ramp = openSteps(state).find(({ step }) => step.ramp)?.step.ramp
  if (ramp) return Math.min(ramp.lowC, bathTempC + ramp.cPerMin * minutes)
  const coolCPerMin = openSteps(state).find(({ step }) => step.wait?.coolCPerMin !== undefined)?.step.wait?.coolCPerMin
  if (coolCPerMin !== undefined) return Math.max(programme.roomC, bathTempC - coolCPerMin * minutes)
  if (state.heatOn || bathTempC <= programme.roomC) return bathTempC
  return programme.roomC + (bathTempC - programme.roomC) * Math.exp(-programme.coolingPerMin * minutes)
}

/** Seven readings about the expected one, lowest first: within 3 °C each is one tap. In °F every second degree. */
export function readingsAround(expectedC: number, unit: 'C' | 'F'): { tempC: number; say: string }[] {
  const offsets = [-3, -2, -1, 0, 1, 2, 3]
  if (unit === 'C') return offsets.map((by) => ({ tempC: expectedC + by, say: String(expectedC + by) }))
  const middleF = Math.round(fahrenheitFromCelsius(expectedC))
  return offsets.map((by) => {
    const tempF = middleF + 2 * by
    return { tempC: Math.round(celsiusFromFahrenheit(tempF) * 10) / 10, say: String(tempF) }
  })
}

/** Moves the window by the dyer's own degrees, within what a bath can be. An odd number of °F leads to the degrees between. */
export function movedC(middleC: number, by: number, unit: 'C' | 'F'): number {
  return Math.min(BOIL_C + 2, Math.max(3, middleC + (unit === 'C' ? by : by / 1.8)))
}
