// A volume in a form, in the measure that the dyer would take for it.
import type { Amount } from '../../../../core/protocol/model.ts'
import { showNumber } from '../../../../core/quantity/show-number.ts'
import type { Units } from '../../../../core/quantity/units.ts'
import { fromML, type VolumeUnit, volumeML } from '../../../../core/quantity/volume-units.ts'

/** `first`: what is shown to begin with, in `unit`. */
export type Measure = { unit: VolumeUnit; first: number; steps: readonly number[] }

const quarters = [1, 0.25]
/** The largest that is filled is taken (a quarter for cups), as amounts are shown elsewhere. */
const measures: Record<'us' | 'imperial', readonly [VolumeUnit, least: number, steps: readonly number[]][]> = {
  us: [
    ['US gallon', 1, quarters],
    ['US quart', 1, quarters],
    ['US cup', 0.25, quarters],
    ['US tbsp', 1, quarters],
    ['US tsp', 0.25, quarters]
  ],
  imperial: [
    ['imperial gallon', 1, quarters],
    ['imperial pint', 1, quarters],
    ['imperial fl oz', 1, [5, 1]]
  ]
}

/** `steps`: those in mL. */
export function measureFor(firstML: number, units: Units, steps: readonly number[]): Measure {
  const known = units.volume === 'metric' ? [] : measures[units.volume]
  const found = known.find(([unit, least]) => firstML >= volumeML(least, unit))
  const unit = found?.[0] ?? 'mL'
  return { unit, first: fromML(firstML, unit), steps: stepsIn(unit, steps) }
}

/** `steps`: those in mL. */
export function stepsIn(unit: VolumeUnit, steps: readonly number[]): readonly number[] {
  return [...measures.us, ...measures.imperial].find(([known]) => known === unit)?.[2] ?? steps
}

/** As `measureFor`, for a figure that nobody worked out: it begins at a whole step. */
export function roundMeasureFor(firstML: number, units: Units, steps: readonly number[]): Measure {
  const measure = measureFor(firstML, units, steps)
  const least = Math.min(...measure.steps)
  return { ...measure, first: Math.max(least, Math.round(measure.first / least) * least) }
}

/** "US cups" */
export function unitWord(unit: VolumeUnit, value: number): string {
  return value.toFixed(2) !== '1.00' && /(?:cup|quart|gallon|pint)$/.test(unit) ? `${unit}s` : unit
}

/** Given on as mL; what was read off the measure stays as it was. */
export function pouredOf({ unit }: Pick<Measure, 'unit'>, value: number): Pick<Amount, 'value' | 'asEntered'> {
  return { value: volumeML(value, unit), asEntered: `${showNumber(value, 2)} ${unitWord(unit, value)}` }
}
