import { useState } from 'preact/hooks'
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../../../core/quantity/temperature-scale.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { NumberStep } from './number-step.tsx'

type Props = { kitchen: Kitchen; legend: string; firstC: number; onTemp: (tempC: number | null) => void }

/** A temperature in a form, in the dyer's own degrees; it may be left unread. */
export function DegreeStep({ kitchen, legend, firstC, onTemp }: Props): preact.JSX.Element {
  const { temperature } = kitchen.settings.value
  const inC = temperature === 'C'
  // Kept as it is shown: there and back again, a degree of Fahrenheit would wander.
  const [shown, setShown] = useState<number | null>(null)
  const change = (next: number | null): void => {
    setShown(next)
    onTemp(next === null || inC ? next : Math.round(celsiusFromFahrenheit(next) * 10) / 10)
  }
  return (
    <NumberStep
      legend={legend}
      unit={`°${temperature}`}
      value={shown}
      first={inC ? firstC : Math.round(fahrenheitFromCelsius(firstC))}
      none="not read"
      onValue={change}
    />
  )
}
