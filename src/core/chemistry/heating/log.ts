// The readings of one pot as the curve sees them.
import { type Fit, fit } from './fit.ts'
import type { Reading } from './readings.ts'

/** In order of time; `sdC`: what one reading is off by, rounding included. */
export type Log = { readings: Reading[]; targetC: number; sdC: number }

export function fromMin({ readings }: Log): number {
  return readings[0]?.atMin ?? 0
}

export function spanMin(log: Log): number {
  return (log.readings.at(-1)?.atMin ?? 0) - fromMin(log)
}

export function differentTimes({ readings }: Log): number {
  return new Set(readings.map(({ atMin }) => atMin)).size
}

export function fitOf(log: Log): Fit {
  const times = Float64Array.from(log.readings, ({ atMin }) => (atMin - fromMin(log)) / spanMin(log))
  const levels = Float64Array.from(log.readings, ({ tempC }) => tempC - log.targetC)
  const meanLevel = levels.reduce((sum, level) => sum + level, 0) / levels.length
  return fit({ times, levels, meanLevel }, log.sdC ** 2)
}
