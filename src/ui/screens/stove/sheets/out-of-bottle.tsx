// The bottle on the shelf that an unplanned dose came out of, so that its level goes down with it.
import { unitOf } from '../../../../core/shelf/thing.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { labelWords, nameOf } from '../../../parts/bottle-words.ts'
import { SelectField } from '../../../parts/field.tsx'
import { useShelfSeen } from '../../../parts/shelf-seen.ts'
import { unitsOf } from '../../../parts/units-of.ts'

export type Poured = { itemId: string; of: string; unit: 'mL' | 'g' }

type Props = { kitchen: Kitchen; poured: Poured | null; choose: (poured: Poured | null) => void }

/** Nothing where no bottle stands there. */
export function OutOfBottle({ kitchen, poured, choose }: Props): preact.JSX.Element | null {
  const { things } = useShelfSeen(kitchen)
  const units = unitsOf(kitchen.settings.value)
  const bottles = (things ?? []).filter(
    ({ item: { status, thing } }) => status === 'here' && (thing.kind === 'stock' || thing.kind === 'acid')
  )
  if (bottles.length === 0) return null
  const chosen = (itemId: string): Poured | null => {
    const thing = bottles.find(({ item }) => item.itemId === itemId)?.item.thing
    return thing ? { itemId, of: thing.name, unit: unitOf(thing) ?? 'mL' } : null
  }
  return (
    <SelectField
      label="Out of which bottle"
      options={[
        { value: '', label: 'None from the shelf' },
        ...bottles.map((one) => ({
          value: one.item.itemId,
          label: [nameOf(one), labelWords(one, units)].filter(Boolean).join(': ')
        }))
      ]}
      value={poured?.itemId ?? ''}
      onChange={(itemId) => choose(chosen(itemId))}
    />
  )
}

/** What goes with the dose: a bottle of another name was not poured from. */
export function outOf(poured: Poured | null, of: string): { itemId?: string } {
  return poured !== null && poured.of === of.trim() ? { itemId: poured.itemId } : {}
}
