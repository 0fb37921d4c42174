// The fields of one thing.
import type { Units } from '../../../core/quantity/index.ts'
import type { ThingKind } from '../../../core/shelf/thing.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { TextField } from '../../parts/field.tsx'
import { type Draft, type FieldSpec, fieldsOf } from './fields.ts'
import type { Problems } from './read-draft.ts'
import { volumeUnitOf } from './typed.ts'

type Props = { kind: ThingKind; draft: Draft; change: (draft: Draft) => void; problems: Problems; units: Units }

export function FormFields({ kind, draft, change, problems, units }: Props): preact.JSX.Element {
  const set = (field: string, value: string): void => change({ ...draft, [field]: value })
  return (
    <>
      {fieldsOf(kind, draft).map((spec) => (
        <Field
          key={spec.field}
          spec={spec}
          value={draft[spec.field] ?? ''}
          set={(value) => set(spec.field, value)}
          problem={problems[spec.field] ?? null}
          units={units}
        />
      ))}
    </>
  )
}

type FieldProps = { spec: FieldSpec; value: string; set: (value: string) => void; problem: string | null; units: Units }

function Field({ spec, value, set, problem, units }: FieldProps): preact.JSX.Element {
  const { label, hint, reads, choices } = spec
  if (choices) return <ChoiceRow legend={label} choices={choices} value={value} onChoose={set} />
  const kind = reads === 'day' ? 'date' : reads === 'text' || reads === 'note' ? 'text' : 'decimal'
  return (
    <TextField
      label={label}
      hint={hint}
      value={value}
      onInput={set}
      problem={problem}
      kind={kind}
      lines={reads === 'note' ? 2 : undefined}
      unit={reads === 'volume' ? volumeUnitOf(units).unit : undefined}
    />
  )
}
