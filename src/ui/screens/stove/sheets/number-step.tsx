// A number in a form, moved by a knuckle; it may be left unsaid.
import { showNumber } from '../../../../core/quantity/show-number.ts'
import { Pad } from '../../../parts/pad.tsx'

type Props = {
  legend: string
  unit: string
  value: number | null
  first: number
  onValue: (value: number | null) => void
  /** What is said where nothing was measured. Left out: a number is needed. */
  none?: string
  steps?: readonly number[]
}

export function NumberStep({ legend, unit, value, first, onValue, none, steps = [5, 1] }: Props): preact.JSX.Element {
  const now = value ?? first
  const by = (step: number): void => onValue(Math.max(0, Math.round((now + step) * 1000) / 1000))
  return (
    <fieldset class="number-step">
      <legend>{legend}</legend>
      <div class="number-step-row">
        {steps.map((step) => (
          <Pad key={step} kind="lesser" label={`${legend}: ${step} less`} onPress={() => by(-step)}>
            −{stepWord(step)}
          </Pad>
        ))}
        <output class="number-step-value number" aria-live="polite">
          {value === null && none ? none : `${showNumber(now, 2)} ${unit}`}
        </output>
        {[...steps].reverse().map((step) => (
          <Pad key={step} kind="lesser" label={`${legend}: ${step} more`} onPress={() => by(step)}>
            +{stepWord(step)}
          </Pad>
        ))}
      </div>
      {none ? (
        <div class="number-step-none">
          <Pad kind="lesser" selected={value !== null} onPress={() => onValue(now)}>
            {showNumber(now, 2)} {unit}
          </Pad>
          <Pad kind="lesser" selected={value === null} onPress={() => onValue(null)}>
            {none}
          </Pad>
        </div>
      ) : null}
    </fieldset>
  )
}

/** On a phone five figures would touch the edge of the pad. */
function stepWord(step: number): string {
  return step === 0.25 ? '¼' : String(step)
}
