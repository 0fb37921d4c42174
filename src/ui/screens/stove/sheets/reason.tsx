// Why: a few likely reasons for a knuckle, and room for one's own.
import { useState } from 'preact/hooks'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { TextField } from '../../../parts/field.tsx'

const OWN = 'other'

type Props = { legend: string; reasons: readonly string[]; value: string; onReason: (reason: string) => void }

export function Reason({ legend, reasons, value, onReason }: Props): preact.JSX.Element {
  const [own, setOwn] = useState(false)
  const choices = [...reasons, OWN].map((label) => ({ value: label, label }))
  return (
    <>
      <ChoiceRow
        legend={legend}
        kind="lesser"
        choices={choices}
        value={own ? OWN : value}
        onChoose={(chosen) => {
          setOwn(chosen === OWN)
          onReason(chosen === OWN ? '' : chosen)
        }}
      />
      {own ? <TextField label="In your words" value={value} onInput={onReason} /> : null}
    </>
  )
}
