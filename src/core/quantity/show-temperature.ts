import { type Digits, noBreakSpace, notKnown, showNumber } from './show-number.ts'
import type { TemperatureRange } from './temperature-range.ts'
import { fahrenheitFromCelsius } from './temperature-scale.ts'
import type { Units } from './units.ts'

type Precision = { digits?: Digits }

/** A temperature given in °C, in the dyer's scale, whole degrees unless `digits` says more: "82 °C", "180 °F". */
export function showTemperature(tempC: number, units: Units, precision: Precision = {}): string {
  if (!Number.isFinite(tempC)) return notKnown
  return `${figure(tempC, units, precision)}${degree(units)}`
}

/** A range in the dyer's scale: "85–90 °C", "at least 85 °C", "at most 40 °C", "the boil". */
export function showTemperatureRange(
  range: Pick<TemperatureRange, 'lowC' | 'highC'> & { boil?: boolean },
  units: Units,
  precision: Precision = {}
): string {
  const { lowC, highC } = range
  if (range.boil) return 'the boil'
  if (lowC === null) return highC === null ? 'any temperature' : `at most ${showTemperature(highC, units, precision)}`
  if (highC === null) return `at least ${showTemperature(lowC, units, precision)}`
  if (!Number.isFinite(lowC) || !Number.isFinite(highC)) return notKnown
  const low = figure(lowC, units, precision)
  const high = figure(highC, units, precision)
  if (low === high) return `${high}${degree(units)}`
  // A dash beside a minus sign is misread.
  const joint = lowC < 0 || highC < 0 ? ' to ' : '–'
  return `${low}${joint}${high}${degree(units)}`
}

function figure(tempC: number, units: Units, precision: Precision): string {
  const value = units.temperature === 'C' ? tempC : fahrenheitFromCelsius(tempC)
  return showNumber(value, precision.digits ?? 0, units)
}

function degree(units: Units): string {
  return `${noBreakSpace}°${units.temperature}`
}
