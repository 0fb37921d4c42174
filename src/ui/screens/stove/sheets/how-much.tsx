// How much of something went in, by what it was measured with.
import type { Amount } from '../../../../core/protocol/model.ts'
import { measureWord } from '../../../../core/quantity/show-volume.ts'
import type { Units } from '../../../../core/quantity/units.ts'
import type { VolumeUnit } from '../../../../core/quantity/volume-units.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { enteredAmount } from '../amount.ts'
import { pouredOf, stepsIn } from './measure.ts'
import { NumberStep } from './number-step.tsx'

type TakenIn = VolumeUnit | 'g'
/** `value`: null where nothing was said yet. */
export type Taken = { unit: TakenIn; value: number | null }

const FIRST = 10

const choices: Record<Units['volume'], readonly { value: TakenIn; label: string }[]> = {
  metric: inOrder(['mL', 'mL'], ['g', 'g']),
  us: inOrder(['mL', 'mL'], ['US tbsp', 'tbsp'], ['US cup', 'cup'], ['g', 'g']),
  imperial: inOrder(['mL', 'mL'], ['imperial fl oz', 'fl oz'], ['imperial pint', 'pint'], ['g', 'g'])
}

function inOrder(...units: [TakenIn, string][]): { value: TakenIn; label: string }[] {
  return units.map(([value, label]) => ({ value, label }))
}

const isPlain = (unit: TakenIn): boolean => unit === 'mL' || unit === 'g'

/** 25 mL may have been meant as 25 g; as 25 cups it was not. */
export function turnedTo(unit: TakenIn, was: Taken): Taken {
  if (unit === was.unit) return was
  return { unit, value: isPlain(unit) && isPlain(was.unit) ? was.value : null }
}

/** What a bottle holds is weighed, or measured in whatever is at hand. */
export function turnedToBottle(unit: 'mL' | 'g', was: Taken): Taken {
  return unit === 'mL' && was.unit !== 'g' ? was : turnedTo(unit, was)
}

export function amountTaken({ unit, value }: Taken, of: string): Amount {
  const taken = value ?? firstIn(unit)
  if (unit === 'g') return enteredAmount({ value: taken, unit, of, asEntered: '' }, taken)
  return { unit: 'mL', of, ...pouredOf({ unit }, taken) }
}

function firstIn(unit: TakenIn): number {
  return isPlain(unit) ? FIRST : 1
}

type Props = { units: Units; taken: Taken; onTaken: (taken: Taken) => void }

export function HowMuch({ units, taken, onTaken }: Props): preact.JSX.Element {
  const { unit, value } = taken
  const first = firstIn(unit)
  return (
    <div class="how-much">
      <ChoiceRow
        legend="In"
        kind="lesser"
        choices={choices[units.volume]}
        value={unit}
        onChoose={(next) => onTaken(turnedTo(next, taken))}
      />
      <NumberStep
        legend="How much"
        unit={unit === 'g' ? unit : measureWord(unit, value ?? first)}
        value={value}
        first={first}
        steps={unit === 'g' ? [10, 1] : stepsIn(unit, [10, 1])}
        onValue={(next) => onTaken({ unit, value: next })}
      />
    </div>
  )
}
