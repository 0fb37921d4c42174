// How figures of a sum are shown.

import { usualSyringe } from '../../../core/chemistry/index.ts'
import { metricUnits, showMass, showNumber, showVolume, type Units } from '../../../core/quantity/index.ts'
import type { Figure } from './sum.ts'

/** A figure inside a formula: finer than a bench can measure, so that it can be followed. */
export function put(value: number): string {
  const size = Math.abs(value)
  return size !== 0 && size < 0.1 ? String(Number(value.toPrecision(3))) : showNumber(value, 3)
}

/** A volume in the dyer's measure. In mL to what a syringe is marked in: whole mL would be out by more than it is. */
export function volumeText(valueML: number, units: Units): string {
  const bySyringe = units.volume === 'metric' && valueML >= 9.95 && valueML < 99.95
  return bySyringe ? `${showNumber(valueML, 1, units)}\u00a0mL` : showVolume(valueML, units)
}

/** Beside it the same in mL, where the measure is another. */
export function volume(what: string, valueML: number, units: Units): Figure {
  return both(what, volumeText(valueML, units), volumeText(valueML, metricUnits))
}

export function mass(what: string, valueG: number, units: Units): Figure {
  return both(what, showMass(valueG, units), showMass(valueG, metricUnits))
}

/** An estimate: two figures of it are worth showing. */
export function rough(value: number): number {
  return Number(value.toPrecision(2))
}

function both(what: string, figure: string, also: string): Figure {
  return figure === also ? { what, figure } : { what, figure, also }
}

/** A drop of a pipette; common practice, no source. */
const DROP_ML = 0.05

/** What is to be said of a dose that is hard to measure. */
export function smallSay(doseML: number): string[] {
  if (doseML <= 0) return []
  if (doseML < DROP_ML) return ['Less than a drop (0.05 mL): make it weaker first.']
  const error = (usualSyringe.doubtML / doseML) * 100
  if (error <= usualSyringe.errorMostPercent) return []
  const share = `${showNumber(error, 0)}\u00a0%`
  return [
    `A syringe is out by some ${usualSyringe.doubtML}\u00a0mL, ${share} of this: take it weaker, or a finer syringe.`
  ]
}
