import { measureWord } from '../../../../core/quantity/show-volume.ts'
import type { Measure } from './measure.ts'
import { NumberStep } from './number-step.tsx'

type Props = { legend: string; measure: Measure; value: number | null; onValue: (value: number | null) => void }

/** A volume in a form, in the dyer's own measure. */
export function VolumeStep({ legend, measure, value, onValue }: Props): preact.JSX.Element {
  const { unit, first, steps } = measure
  return (
    <NumberStep
      legend={legend}
      unit={measureWord(unit, value ?? first)}
      value={value}
      first={first}
      steps={steps}
      onValue={onValue}
    />
  )
}
