// Wet yarn and wet cloth are deeper than dry: it is always asked.
import { ChoiceRow } from '../../parts/choice-row.tsx'

type Props = { legend: string; dry: boolean | null; change: (dry: boolean) => void }

export function DryRow({ legend, dry, change }: Props): preact.JSX.Element {
  return (
    <ChoiceRow
      legend={legend}
      choices={[
        { value: 'dry', label: 'Dry' },
        { value: 'wet', label: 'Still damp' }
      ]}
      value={dry === null ? null : dry ? 'dry' : 'wet'}
      onChoose={(value) => change(value === 'dry')}
    />
  )
}
