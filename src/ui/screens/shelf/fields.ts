// The fields of each kind of thing: what is asked, and how what is typed is read.
import type { Units } from '../../../core/quantity/index.ts'
import type { Thing, ThingKind } from '../../../core/shelf/thing.ts'
import { volumeUnitOf } from './typed.ts'

/** What is typed, by field. */
export type Draft = Record<string, string>

export type FieldSpec = {
  field: string
  label: string
  hint?: string
  reads: 'text' | 'note' | 'percent' | 'number' | 'volume' | 'mass' | 'day'
  /** Left empty it is not known. */
  optional?: true
  choices?: readonly { value: string; label: string }[]
}

const name = (hint: string): FieldSpec => ({ field: 'name', label: 'Name', hint, reads: 'text' })
const lot: FieldSpec = { field: 'lot', label: 'Lot', reads: 'text', optional: true }
const note: FieldSpec = { field: 'note', label: 'Note', reads: 'note', optional: true }
const yesNo = (yes: string, no: string) => [
  { value: 'yes', label: yes },
  { value: 'no', label: no }
]

const stock: FieldSpec[] = [
  name('As on its bottle: stock Y.'),
  { field: 'dye', label: 'Dye', hint: 'Its generic name and class, as on the jar.', reads: 'text' },
  { field: 'percentWV', label: 'Strength, % w/v', hint: '1 % is 1 g in 100 mL.', reads: 'percent' },
  { ...lot, hint: 'What tells this making from the next.' },
  { field: 'madeOn', label: 'Made on', hint: 'Leave it empty where nobody knows.', reads: 'day', optional: true },
  note
]

function acid(draft: Draft): FieldSpec[] {
  const powder = draft.form === 'powder'
  return [
    name('As on its bottle: vinegar, citric in the blue tin.'),
    { field: 'acid', label: 'Acid', hint: 'Acetic, citric, formic.', reads: 'text' },
    {
      field: 'form',
      label: 'It is',
      reads: 'text',
      choices: [
        { value: 'liquid', label: 'Liquid' },
        { value: 'powder', label: 'Powder' }
      ]
    },
    ...(powder ? [] : strength(draft)),
    lot,
    note
  ]
}

function strength({ basis }: Draft): FieldSpec[] {
  const asked: FieldSpec[] = [
    { field: 'percent', label: 'Strength, %', reads: 'percent' },
    {
      field: 'basis',
      label: 'The % is',
      reads: 'text',
      choices: [
        { value: 'w/v', label: 'w/v: g in 100 mL' },
        { value: 'w/w', label: 'w/w: g in 100 g' }
      ]
    }
  ]
  if (basis === 'w/w') asked.push({ field: 'densityGPerML', label: 'Density, g/mL', reads: 'number' })
  return asked
}

const yarn: FieldSpec[] = [
  name('The base, as you call it.'),
  { field: 'fibre', label: 'Fibre', hint: 'Wool; wool 75 %, nylon 25 %.', reads: 'text' },
  {
    field: 'treated',
    label: 'Shrink-resist treated',
    reads: 'text',
    choices: [...yesNo('Yes', 'No'), { value: 'unknown', label: 'Not known' }]
  },
  lot,
  note
]

const water: FieldSpec[] = [
  name('Tap, rain, spring.'),
  {
    field: 'alkalinityMgPerL',
    label: 'Alkalinity, mg/L as CaCO₃',
    hint: 'It uses up acid: hard water can want twice as much. Leave it empty where nobody measured.',
    reads: 'number',
    optional: true
  },
  {
    field: 'source',
    label: 'Where the figure comes from',
    hint: 'Test strip, the supplier’s report.',
    reads: 'text',
    optional: true
  },
  note
]

const pot: FieldSpec[] = [
  name('The big steel one.'),
  { field: 'volumeML', label: 'Holds', reads: 'volume', optional: true },
  {
    field: 'material',
    label: 'Made of',
    hint: 'Citric acid attacks copper, zinc and aluminium.',
    reads: 'text',
    optional: true
  },
  { field: 'lid', label: 'Lid', reads: 'text', choices: yesNo('With a lid', 'No lid') },
  note
]

const burner: FieldSpec[] = [
  name('Front left.'),
  { field: 'heat', label: 'Heats by', hint: 'Gas, hotplate, induction; how strong.', reads: 'text', optional: true },
  note
]

export function fieldsOf(kind: ThingKind, draft: Draft): FieldSpec[] {
  switch (kind) {
    case 'stock':
      return stock
    case 'acid':
      return acid(draft)
    case 'yarn':
      return yarn
    case 'water':
      return water
    case 'pot':
      return pot
    case 'burner':
      return burner
  }
}

/** What how much there is of it is told in; null: it is not counted. */
export function countedIn(kind: ThingKind, { form }: Draft): 'mL' | 'g' | null {
  if (kind === 'stock') return 'mL'
  if (kind === 'acid') return form === 'powder' ? 'g' : 'mL'
  return kind === 'yarn' ? 'g' : null
}

export const emptyDraft: Draft = { form: 'liquid', basis: 'w/v', treated: 'unknown', lid: 'yes' }

/** A thing as it would be typed. */
export function draftOf(thing: Thing, units: Units): Draft {
  const draft: Draft = { ...emptyDraft }
  for (const [field, value] of Object.entries(thing)) {
    if (field === 'volumeML' && typeof value === 'number') draft[field] = volumeUnitOf(units).typed(value)
    else if (typeof value === 'boolean') draft[field] = value ? 'yes' : 'no'
    else if (typeof value === 'string' || typeof value === 'number') draft[field] = String(value)
  }
  return draft
}
