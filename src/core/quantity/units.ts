import type { TemperatureUnit } from './temperature-scale.ts'

/** What a dyer wants to read in. Left out: cm, and a decimal point. */
export type Units = {
  temperature: TemperatureUnit
  volume: 'metric' | 'us' | 'imperial'
  mass: 'metric' | 'us'
  length?: 'cm' | 'in'
  decimal?: 'point' | 'comma'
}

export const metricUnits: Units = { temperature: 'C', volume: 'metric', mass: 'metric', length: 'cm', decimal: 'point' }
