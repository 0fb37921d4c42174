// One of a few: shown all at once, never a drop-down, so that a knuckle can choose.
import { useId } from 'preact/hooks'
import { Pad } from './pad.tsx'
import './choice-row.css'

export type ChoiceRowProps<T extends string | number> = {
  legend: string
  choices: readonly { value: T; label: string }[]
  value: T | null
  onChoose: (value: T) => void
  kind?: 'lesser' | 'control'
  look?: 'plain' | 'bath'
  /** Keeps the legend for the ear only. */
  quiet?: boolean
}

export function ChoiceRow<T extends string | number>(props: ChoiceRowProps<T>): preact.JSX.Element {
  const { legend, choices, value, onChoose, kind = 'control', look = 'plain', quiet } = props
  const id = useId()
  return (
    <fieldset class="choice-row" aria-labelledby={id}>
      <legend id={id} class={quiet ? 'unseen' : undefined}>
        {legend}
      </legend>
      <div class="choice-row-pads">
        {choices.map((choice) => (
          <Pad
            key={choice.value}
            kind={kind}
            look={look}
            selected={choice.value === value}
            onPress={() => onChoose(choice.value)}
          >
            {choice.label}
          </Pad>
        ))}
      </div>
    </fieldset>
  )
}
