// What is really in the bottles: their strength decides how much goes in.
import type { AcidKind, InputProblem, Material, Protocol } from '../../../core/protocol/model.ts'
import { acidOf } from '../../../core/protocol/numbers/acid-of.ts'
import type { Units } from '../../../core/quantity/index.ts'
import { labelWords, nameOf } from '../../parts/bottle-words.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import type { BottleDraft, StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { servers } from './from-shelf.ts'
import { problemAt } from './given.ts'

type Props = {
  protocol: Protocol
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  things: readonly OnShelf[]
  units: Units
}

export function Bottles({ protocol, draft, change, problems, things, units }: Props): preact.JSX.Element | null {
  const asked = protocol.materials.filter((material) => draft.bottles[material.id] !== undefined)
  if (asked.length === 0) return null
  return (
    <section class="start-part" aria-labelledby="start-bottles">
      <h2 id="start-bottles">Bottles</h2>
      <p class="soft">Write what the labels say, not what the protocol presumes.</p>
      {asked.map((material) => (
        <Bottle
          key={material.id}
          material={material}
          bottle={draft.bottles[material.id] as BottleDraft}
          set={(bottle) =>
            change({
              bottles: {
                ...draft.bottles,
                [material.id]: { ...(draft.bottles[material.id] as BottleDraft), ...bottle }
              }
            })
          }
          problems={problems}
          things={servers(things, material)}
          units={units}
        />
      ))}
    </section>
  )
}

const acidNames: Record<AcidKind, string> = {
  acetic: 'Vinegar or acetic acid',
  citric: 'Citric acid',
  other: 'Another acid'
}

type BottleProps = {
  material: Material
  bottle: BottleDraft
  set: (bottle: Partial<BottleDraft>) => void
  problems: readonly InputProblem[]
  things: readonly OnShelf[]
  units: Units
}

function Bottle(props: BottleProps): preact.JSX.Element {
  const { material, bottle, things } = props
  const { id, label } = material
  const wrong = problemAt(props.problems, `materials.${id}.shelf`)
  return (
    <fieldset class="start-bottle">
      <legend>{label}</legend>
      {things.length === 0 && !bottle.shelf?.length ? null : <FromTheShelf {...props} problem={wrong} />}
      {bottle.shelf?.length ? null : <Typed {...props} />}
    </fieldset>
  )
}

/** One bottle, and where that does not do a second or a third. */
function FromTheShelf({
  material,
  bottle,
  set,
  things,
  units,
  problem
}: BottleProps & { problem: string | null }): preact.JSX.Element {
  const chosen = bottle.shelf ?? []
  const choose = (at: number, id: string): void => {
    const next = id === '' ? chosen.slice(0, at) : chosen.with(at, id)
    set({ shelf: next.filter((one, i) => next.indexOf(one) === i) })
  }
  const options = [
    { value: '', label: 'Not on the shelf' },
    ...things.map((one) => ({
      value: one.item.itemId,
      label: [nameOf(one), labelWords(one, units)].filter(Boolean).join(': ')
    }))
  ]
  const gone = (id: string): { value: string; label: string }[] =>
    id === '' || things.some(({ item }) => item.itemId === id) ? [] : [{ value: id, label: 'No longer on the shelf' }]
  const fields = chosen.length === 0 ? [''] : chosen
  return (
    <>
      {fields.map((id, at) => (
        <SelectField
          key={at}
          label={at === 0 ? `${material.label} from the shelf` : `and the rest from`}
          options={
            at === 0 ? [...gone(id), ...options] : [...gone(id), { value: '', label: 'No other' }, ...options.slice(1)]
          }
          value={id}
          onChange={(value) => (chosen.length === 0 ? set({ shelf: value === '' ? [] : [value] }) : choose(at, value))}
          id={`start-bottle-${material.id}-shelf-${at}`}
          problem={at === 0 ? problem : null}
        />
      ))}
    </>
  )
}

/** What the label says, where the bottle is not on the shelf. */
function Typed({ material, bottle, set, problems }: BottleProps): preact.JSX.Element {
  const { id, kind, label } = material
  const told = acidOf(bottle.name, label, id)
  const at = (part: string): string | null => problemAt(problems, `materials.${id}.${part}`)
  // A mixed stock is as strong as what it is mixed from.
  const liquid = (kind === 'stock' || kind === 'acid' || kind === 'other') && !material.parts
  return (
    <>
      <div class="start-grid">
        <TextField
          label="On the label"
          value={bottle.name}
          onInput={(name) => set({ name })}
          id={`start-bottle-${id}-name`}
          problem={at('name')}
        />
        {liquid ? (
          <TextField
            label="Strength"
            kind="decimal"
            unit="%"
            value={bottle.percent}
            onInput={(percent) => set({ percent })}
            id={`start-bottle-${id}-percent`}
            problem={at('percent')}
          />
        ) : null}
      </div>
      {liquid ? (
        <ChoiceRow
          legend={`Strength of ${label} is by`}
          choices={[
            { value: 'w/v', label: 'volume, g in 100 mL' },
            { value: 'w/w', label: 'weight, g in 100 g' }
          ]}
          value={bottle.basis}
          onChoose={(basis) => set({ basis: basis as BottleDraft['basis'] })}
        />
      ) : null}
      {kind === 'acid' ? (
        <SelectField
          label="Which acid it is"
          options={[
            { value: '', label: told ? `${acidNames[told]}, as its name says` : 'Not said' },
            { value: 'acetic', label: 'Vinegar or acetic acid' },
            { value: 'citric', label: 'Citric acid' },
            { value: 'other', label: 'Another acid' }
          ]}
          hint={told || bottle.acid ? undefined : 'The estimated pH needs it.'}
          value={bottle.acid ?? ''}
          onChange={(acid) => set({ acid: acid === '' ? undefined : (acid as AcidKind) })}
          id={`start-bottle-${id}-acid`}
          problem={at('acid')}
        />
      ) : null}
      {liquid && bottle.basis === 'w/w' ? (
        <TextField
          label="Density"
          kind="decimal"
          unit="g/mL"
          hint="From the label or the data sheet. Acetic 56 %: 1.06; 80 %: 1.07."
          value={bottle.density}
          onInput={(density) => set({ density })}
          id={`start-bottle-${id}-density`}
          problem={at('density')}
        />
      ) : null}
    </>
  )
}
