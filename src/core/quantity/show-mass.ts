import { fromG } from './mass-units.ts'
import { noBreakSpace, notKnown, showMeasure, showNumber } from './show-number.ts'
import type { Units } from './units.ts'

/** A mass given in g. Metric: 0.001 g steps below 1 g (dye powder), 0.01 below 10, 0.1 below 1 kg, whole g below
 * 10 kg, then kg by 0.01. US: grams below a quarter of an ounce, oz by 0.01, from 1 lb on pounds and ounces by 0.1. */
export function showMass(massG: number, units: Units): string {
  if (!Number.isFinite(massG)) return notKnown
  switch (units.mass) {
    case 'metric':
      return showMetric(massG, units)
    case 'us':
      return showUS(massG, units)
  }
}

function showMetric(massG: number, units: Units): string {
  const size = Math.abs(massG)
  if (size < 0.9995) return showMeasure(massG, 3, 'g', units)
  if (size < 9.995) return showMeasure(massG, 2, 'g', units)
  if (size < 999.95) return showMeasure(massG, 1, 'g', units)
  if (size < 9999.5) return showMeasure(massG, 0, 'g', units)
  return showMeasure(massG / 1000, 2, 'kg', units)
}

function showUS(massG: number, units: Units): string {
  const massOz = fromG(massG, 'oz')
  const size = Math.abs(massOz)
  // Dye powder is weighed on a balance marked in grams; in ounces too few places would be left of it.
  if (size < 0.25) return showMetric(massG, units)
  if (size < 15.995) return showMeasure(massOz, 2, 'oz', units)
  // Rounded before it is parted, so that 15.96 oz carries into the next pound.
  const tenths = Math.round(size * 10)
  const pounds = showMeasure(Math.sign(massOz) * Math.floor(tenths / 160), 0, 'lb', units)
  const ounces = (tenths % 160) / 10
  return ounces === 0 ? pounds : `${pounds} ${showNumber(ounces, 1, units)}${noBreakSpace}oz`
}
