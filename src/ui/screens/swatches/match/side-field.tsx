// One side of a match: a reading that was kept, or figures typed here.
import { type White, whites } from '../../../../core/colour/index.ts'
import type { KeptReading } from '../../../../core/record/swatch-readings.ts'
import { SelectField, TextField } from '../../../parts/field.tsx'
import { type SideDraft, TYPED } from './draft.ts'
import { type Names, readingName } from './side.ts'

type Props = {
  label: string
  hint: string
  draft: SideDraft
  readings: readonly KeptReading[]
  /** Batches that it came from. */
  parents?: readonly string[]
  names: Names
  problem: string | null
  /** Why the two can't be compared. */
  refused: string | null
  change: (part: Partial<SideDraft>) => void
}

export function SideField(props: Props): preact.JSX.Element {
  const { label, hint, draft, readings, parents = [], names, problem, refused, change } = props
  const typed = draft.key === TYPED
  const parent = ({ batchId }: KeptReading): string => (batchId && parents.includes(batchId) ? 'Parent: ' : '')
  return (
    <>
      <SelectField
        label={label}
        hint={hint}
        value={draft.key ?? ''}
        problem={typed ? null : (problem ?? refused)}
        options={[
          ...(draft.key === null ? [{ value: '', label: 'Choose' }] : []),
          ...readings.map((one) => ({ value: one.key, label: `${parent(one)}${readingName(one, names)}` })),
          { value: TYPED, label: 'L*a*b* typed here' }
        ]}
        onChange={(key) => change({ key: key === '' ? null : key })}
      />
      {typed ? (
        <>
          <TextField
            label={`${label}: L*a*b*`}
            hint="Three figures: “42.1 30.2 11.0”. A line for each band, from end A; several readings of one are parted by semicolons."
            lines={3}
            value={draft.text}
            problem={problem}
            onInput={(text) => change({ text })}
          />
          <SelectField
            label={`${label}: light and observer`}
            value={draft.white}
            problem={refused}
            options={whites.map((value) => ({ value, label: `${value}°` }))}
            onChange={(white) => change({ white: white as White })}
          />
        </>
      ) : null}
    </>
  )
}
