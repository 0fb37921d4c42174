// A volume in a form, in the measure that the dyer would take for it.
import type { Amount } from '../../../../core/protocol/model.ts'
import { showNumber } from '../../../../core/quantity/show-number.ts'
import { measureOf, measureWord } from '../../../../core/quantity/show-volume.ts'
import type { Units } from '../../../../core/quantity/units.ts'
import { fromML, type VolumeUnit, volumeML } from '../../../../core/quantity/volume-units.ts'

/** `first`: what is shown to begin with, in `unit`. */
export type Measure = { unit: VolumeUnit; first: number; steps: readonly number[] }

const ounces = [5, 1]
const quarters = [1, 0.25]

/** `steps`: those in mL. */
export function measureFor(firstML: number, units: Units, steps: readonly number[]): Measure {
  const unit = measureOf(firstML, units)
  return { unit, first: fromML(firstML, unit), steps: stepsIn(unit, steps) }
}

/** `steps`: those in mL. */
export function stepsIn(unit: VolumeUnit, steps: readonly number[]): readonly number[] {
  if (unit === 'mL') return steps
  return unit === 'imperial fl oz' ? ounces : quarters
}

/** As `measureFor`, for a figure that nobody worked out: it begins at a whole step. */
export function roundMeasureFor(firstML: number, units: Units, steps: readonly number[]): Measure {
  const measure = measureFor(firstML, units, steps)
  const least = Math.min(...measure.steps)
  return { ...measure, first: Math.max(least, Math.round(measure.first / least) * least) }
}

/** Given on as mL; what was read off the measure stays as it was. */
export function pouredOf({ unit }: Pick<Measure, 'unit'>, value: number): Pick<Amount, 'value' | 'asEntered'> {
  return { value: volumeML(value, unit), asEntered: `${showNumber(value, 2)} ${measureWord(unit, value)}` }
}
