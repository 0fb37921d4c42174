import { notKnown, showMeasure } from './show-number.ts'
import type { Units } from './units.ts'
import { fromML, type VolumeUnit, volumeML } from './volume-units.ts'

/** A volume given in mL. Metric: 0.01 mL steps below 1 mL (a 1 mL syringe), 0.1 below 10, whole mL, then L by 0.01.
 * US and imperial: the largest measure that is filled at least once (a quarter for cups), by 0.01. */
export function showVolume(valueML: number, units: Units): string {
  if (!Number.isFinite(valueML)) return notKnown
  switch (units.volume) {
    case 'metric':
      return showMetric(valueML, units)
    case 'us':
      return showUS(valueML, units)
    case 'imperial':
      return showImperial(valueML, units)
  }
}

function showMetric(valueML: number, units: Units): string {
  const size = Math.abs(valueML)
  if (size < 0.995) return showMeasure(valueML, 2, 'mL', units)
  if (size < 9.95) return showMeasure(valueML, 1, 'mL', units)
  if (size < 999.5) return showMeasure(valueML, 0, 'mL', units)
  return showMeasure(valueML / 1000, 2, 'L', units)
}

function showUS(valueML: number, units: Units): string {
  const size = Math.abs(valueML)
  // No US spoon measures under a quarter of a teaspoon, and a syringe is marked in mL.
  if (size < volumeML(0.25, 'US tsp')) return showMetric(valueML, units)
  if (size < volumeML(1, 'US tbsp')) return showIn(valueML, 'US tsp', false, units)
  if (size < volumeML(0.25, 'US cup')) return showIn(valueML, 'US tbsp', false, units)
  if (size < volumeML(1, 'US quart')) return showIn(valueML, 'US cup', true, units)
  if (size < volumeML(1, 'US gallon')) return showIn(valueML, 'US quart', true, units)
  return showIn(valueML, 'US gallon', true, units)
}

function showImperial(valueML: number, units: Units): string {
  const size = Math.abs(valueML)
  // Sources agree on no imperial spoon: small measures stay in mL.
  if (size < volumeML(1, 'imperial fl oz')) return showMetric(valueML, units)
  if (size < volumeML(1, 'imperial pint')) return showIn(valueML, 'imperial fl oz', false, units)
  if (size < volumeML(1, 'imperial gallon')) return showIn(valueML, 'imperial pint', true, units)
  return showIn(valueML, 'imperial gallon', true, units)
}

function showIn(valueML: number, unit: VolumeUnit, plural: boolean, units: Units): string {
  const value = fromML(valueML, unit)
  const one = value.toFixed(2) === '1.00'
  return showMeasure(value, 2, plural && !one ? `${unit}s` : unit, units)
}
