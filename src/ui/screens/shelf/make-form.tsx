// What the stock is to be.
import { showNumber, type Units } from '../../../core/quantity/index.ts'
import type { Shelved } from '../../../core/shelf/state.ts'
import { ChoiceRow } from '../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { OnShelf } from '../../shelf.ts'
import type { Problems } from './read-draft.ts'
import type { Wish } from './read-wish.ts'
import { volumeUnitOf } from './typed.ts'
import { factsOf, levelWords } from './words.ts'

/** Fewer mL are hardly made at once. Common practice, no source. */
const ROUND_ML = 50

export const emptyWish: Wish = {
  how: 'powder',
  name: '',
  dye: '',
  percentWV: '1',
  volumeML: '',
  lot: '',
  powderLot: '',
  water: '',
  note: '',
  from: '',
  mix: [
    { itemId: '', parts: '1' },
    { itemId: '', parts: '1' }
  ]
}

/** One more of a stock that is there: all that its label tells, and room for what is short, rounded up to 50 mL. */
export function wishLike({ thing }: Shelved, shortML: number): Wish {
  const volumeML = `${Math.ceil(shortML / ROUND_ML) * ROUND_ML} mL`
  if (thing.kind !== 'stock') return { ...emptyWish, volumeML }
  const { name, dye, percentWV, parts } = thing
  const like = { ...emptyWish, name, dye, volumeML, percentWV: showNumber(percentWV, 3) }
  const mix = parts.flatMap((part) => (part.itemId === null ? [] : [{ itemId: part.itemId, parts: `${part.parts}` }]))
  return mix.length > 1 ? { ...like, how: 'mix', mix } : like
}

type Props = {
  wish: Wish
  change: (wish: Wish) => void
  stocks: readonly OnShelf[]
  problems: Problems
  units: Units
}

export function MakeForm({ wish, change, stocks, problems, units }: Props): preact.JSX.Element {
  const { how } = wish
  const field = (name: keyof Wish & string, label: string, more: Partial<Parameters<typeof TextField>[0]> = {}) => (
    <TextField
      label={label}
      value={wish[name] as string}
      onInput={(value) => change({ ...wish, [name]: value })}
      problem={problems[name] ?? null}
      {...more}
    />
  )
  return (
    <div class="shelf-form">
      <ChoiceRow
        legend="Made from"
        choices={[
          { value: 'powder', label: 'Powder' },
          { value: 'dilution', label: 'A stronger stock' },
          { value: 'mix', label: 'Stocks mixed' }
        ]}
        value={how}
        onChoose={(next) => change({ ...wish, how: next })}
      />
      {how === 'dilution' ? (
        <Bottle wish={wish} change={change} stocks={stocks} problems={problems} units={units} />
      ) : null}
      {how === 'mix' ? <Mix wish={wish} change={change} stocks={stocks} problems={problems} units={units} /> : null}
      {field('name', 'Name', { hint: 'As it will stand on the bottle: stock Y.' })}
      {field('dye', 'Dye', {
        hint: how === 'dilution' ? 'Left empty: the same as in the stronger one.' : 'Its generic name and class.'
      })}
      {how === 'mix'
        ? null
        : field('percentWV', 'Strength, % w/v', {
            kind: 'decimal',
            hint: 'Usually 1 %; 0.1 % for pales. 1 % is 1 g in 100 mL.'
          })}
      {field('volumeML', 'How much of it', { kind: 'decimal', unit: volumeUnitOf(units).unit })}
      {field('lot', 'Lot', { hint: 'What tells this making from the next.' })}
      {how === 'powder' ? field('powderLot', 'Lot on the powder’s jar') : null}
      {how === 'mix' ? null : field('water', 'Water', { hint: 'Tap, rain, boiled. Hard water can throw specks.' })}
      {field('note', 'Note', { lines: 2 })}
    </div>
  )
}

function bottles(stocks: readonly OnShelf[], units: Units) {
  const told = stocks.map(({ item, level }) => {
    const [strength = '', ...more] = factsOf(item.thing, 0, units)
    const lot = more.find((fact) => fact.startsWith('lot '))
    const left = level === null ? null : levelWords(level, units).left
    const label = [item.thing.name, strength, lot, left].filter(Boolean).join(' · ')
    return { value: item.itemId, label }
  })
  return [{ value: '', label: 'Choose a bottle' }, ...told]
}

function Bottle({ wish, change, stocks, problems, units }: Props): preact.JSX.Element {
  return (
    <SelectField
      label="From which bottle"
      hint={
        stocks.length === 0 ? 'No stock is on the shelf yet: make one from powder, or add the one you have.' : undefined
      }
      options={bottles(stocks, units)}
      value={wish.from}
      onChange={(from) => change({ ...wish, from })}
      problem={problems.from ?? null}
    />
  )
}

function Mix({ wish, change, stocks, problems, units }: Props): preact.JSX.Element {
  const put = (i: number, one: Partial<Wish['mix'][number]>): void =>
    change({ ...wish, mix: wish.mix.map((each, at) => (at === i ? { ...each, ...one } : each)) })
  return (
    <fieldset class="shelf-mix">
      <legend>Parts, by grams of dye</legend>
      <p class="soft">The mix keeps its parts. Once they are poured together they can’t be varied.</p>
      {wish.mix.map((one, i) => (
        <div class="shelf-mix-row" key={i}>
          <SelectField
            label={`Bottle ${i + 1}`}
            options={bottles(stocks, units)}
            value={one.itemId}
            onChange={(itemId) => put(i, { itemId })}
            problem={i === 0 ? (problems.from ?? null) : null}
          />
          <TextField
            label={`Parts of ${i + 1}`}
            value={one.parts}
            onInput={(parts) => put(i, { parts })}
            kind="decimal"
            problem={problems[`parts.${i}`] ?? null}
          />
        </div>
      ))}
      {wish.mix.length < 6 ? (
        <Pad onPress={() => change({ ...wish, mix: [...wish.mix, { itemId: '', parts: '1' }] })}>One more bottle</Pad>
      ) : null}
    </fieldset>
  )
}
