import type { Units } from '../../../core/quantity/index.ts'
import { SelectField } from '../../parts/field.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { chose, standing, useWords } from './uses.ts'

type Props = {
  kind: 'yarn' | 'water' | 'pot'
  label: string
  none: string
  things: readonly OnShelf[]
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  units: Units
}

/** One of a kind from the shelf; nothing where none stands there. */
export function UseChoice({ kind, label, none, things, draft, change, units }: Props): preact.JSX.Element | null {
  const there = standing(things, kind)
  if (there.length === 0) return null
  const chosen = draft.uses?.[kind] ?? ''
  return (
    <SelectField
      label={label}
      options={[
        { value: '', label: none },
        ...there.map((one) => ({ value: one.item.itemId, label: useWords(one, units) }))
      ]}
      value={there.some(({ item }) => item.itemId === chosen) ? chosen : ''}
      onChange={(id) =>
        change(
          chose(
            draft,
            kind,
            there.find(({ item }) => item.itemId === id)
          )
        )
      }
      id={`start-use-${kind}`}
    />
  )
}
