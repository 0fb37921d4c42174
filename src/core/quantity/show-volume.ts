import { notKnown, showMeasure } from './show-number.ts'
import type { Units } from './units.ts'
import { fromML, type VolumeUnit, volumeML } from './volume-units.ts'

// No US spoon measures under a quarter of a teaspoon, and a syringe is marked in mL. Sources agree on no imperial spoon:
// smaller measures stay in mL.
const measures: Record<'us' | 'imperial', readonly [VolumeUnit, least: number][]> = {
  us: [
    ['US gallon', 1],
    ['US quart', 1],
    ['US cup', 0.25],
    ['US tbsp', 1],
    ['US tsp', 0.25]
  ],
  imperial: [
    ['imperial gallon', 1],
    ['imperial pint', 1],
    ['imperial fl oz', 1]
  ]
}

/** The largest measure that a volume in mL fills at least once (a quarter for cups and teaspoons); mL for whoever
 * measures in metric, and for what fills none. */
export function measureOf(valueML: number, { volume }: Units): VolumeUnit {
  const known = volume === 'metric' ? [] : measures[volume]
  return known.find(([unit, least]) => Math.abs(valueML) >= volumeML(least, unit))?.[0] ?? 'mL'
}

/** "US cups": the word of a measure behind a value to 0.01. Spoons and ounces have no plural. */
export function measureWord(unit: VolumeUnit, value: number): string {
  return value.toFixed(2) !== '1.00' && /(?:cup|quart|gallon|pint)$/.test(unit) ? `${unit}s` : unit
}

/** A volume given in mL. Metric: 0.01 mL steps below 1 mL (a 1 mL syringe), 0.1 below 10, whole mL, then L by 0.01.
 * US and imperial: in the largest measure that is filled (`measureOf`), by 0.01. */
export function showVolume(valueML: number, units: Units): string {
  if (!Number.isFinite(valueML)) return notKnown
  const unit = measureOf(valueML, units)
  if (unit === 'mL') return showMetric(valueML, units)
  const value = fromML(valueML, unit)
  return showMeasure(value, 2, measureWord(unit, value), units)
}

function showMetric(valueML: number, units: Units): string {
  const size = Math.abs(valueML)
  if (size < 0.995) return showMeasure(valueML, 2, 'mL', units)
  if (size < 9.95) return showMeasure(valueML, 1, 'mL', units)
  if (size < 999.5) return showMeasure(valueML, 0, 'mL', units)
  return showMeasure(valueML / 1000, 2, 'L', units)
}
