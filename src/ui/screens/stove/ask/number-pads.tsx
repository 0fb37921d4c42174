// A number without a keyboard: steps of ten, one and a tenth about the one expected.
import { useState } from 'preact/hooks'
import { showNumber } from '../../../../core/quantity/show-number.ts'
import { Pad } from '../../../parts/pad.tsx'
import type { AskLook } from './ask-panel.tsx'

type Props = {
  first: number
  unit: string
  look: AskLook
  layoutKey: string
  onNumber: (value: number) => void
  /** Words before the number on the pad. */
  say?: string
}

export function NumberPads({ first, unit, look, layoutKey, onNumber, say }: Props): preact.JSX.Element {
  const [value, setValue] = useState(first)
  const steps = stepsFor(first)
  const by = (amount: number): void => setValue(Math.max(0, Math.round((value + amount) * 1000) / 1000))
  const shown = `${showNumber(value, 2)} ${unit}`.trim()
  return (
    <div class="ask-number">
      <Pad kind="main" look={look} layoutKey={layoutKey} onPress={() => onNumber(value)}>
        <span class="ask-figure">{say ? `${say} ${shown}` : shown}</span>
      </Pad>
      <div class="ask-steps">
        {steps.map((step) => (
          <Pad key={`less ${step}`} kind="lesser" look={look} label={`${step} less`} onPress={() => by(-step)}>
            −{step}
          </Pad>
        ))}
        {steps.map((step) => (
          <Pad key={`more ${step}`} kind="lesser" look={look} label={`${step} more`} onPress={() => by(step)}>
            +{step}
          </Pad>
        ))}
      </div>
    </div>
  )
}

/** Big steps first, of the size of the number itself. */
function stepsFor(first: number): number[] {
  if (first >= 200) return [100, 10, 1]
  if (first >= 5) return [10, 1, 0.1]
  return [1, 0.1, 0.01]
}
