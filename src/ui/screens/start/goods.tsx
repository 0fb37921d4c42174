// The goods: tagged skeins with their dry weights, the fibre, and what bath and yarn they come from.
import type { InputProblem, Protocol } from '../../../core/protocol/model.ts'
import { readMass, showMass, type Units } from '../../../core/quantity/index.ts'
import type { BookLine } from '../../kitchen.ts'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { SkeinDraft, StartDraft } from '../../parts/start-draft.ts'
import { Strip } from '../../parts/strip.tsx'
import type { OnShelf } from '../../shelf.ts'
import { problemAt } from './given.ts'
import { notInBook } from './identity.ts'
import { UseChoice } from './use-choice.tsx'

const fibres = [
  'wool',
  'shrink-resist wool',
  'wool and nylon',
  'silk',
  'wool and silk',
  'nylon',
  'alpaca',
  'mohair',
  'cotton',
  'linen'
]

type Props = {
  protocol: Protocol
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  units: Units
  earlier: readonly BookLine[]
  letter: string
  things: readonly OnShelf[]
}

export function Goods(props: Props): preact.JSX.Element {
  const { draft, change, problems, units, letter } = props
  const set = (index: number, skein: Partial<SkeinDraft>): void =>
    change({ skeins: draft.skeins.map((each, i) => (i === index ? { ...each, ...skein } : each)) })
  return (
    <section class="start-part" aria-labelledby="start-goods">
      <h2 id="start-goods">Goods</h2>
      <ul class="start-skeins">
        {draft.skeins.map((skein, i) => (
          <li key={i} class="start-skein">
            <TextField
              label={`Tag ${i + 1}`}
              value={skein.tag}
              onInput={(tag) => set(i, { tag })}
              id={`start-tag-${i}`}
              problem={problemAt(problems, `skeins.${i}.tag`)}
            />
            <TextField
              label="Dry weight"
              kind="decimal"
              unit={/[a-z]/i.test(skein.mass) ? undefined : units.mass === 'us' ? 'oz' : 'g'}
              value={skein.mass}
              onInput={(mass) => set(i, { mass })}
              id={`start-mass-${i}`}
              problem={problemAt(problems, `skeins.${i}.mass`)}
            />
            <Pad
              label={`Remove skein ${skein.tag}`}
              disabled={draft.skeins.length === 1}
              onPress={() => change({ skeins: draft.skeins.filter((_, at) => at !== i) })}
            >
              Remove
            </Pad>
          </li>
        ))}
      </ul>
      <div class="start-row">
        <Pad onPress={() => change({ skeins: [...draft.skeins, nextSkein(draft.skeins, letter)] })}>Add a skein</Pad>
        <p class="start-total">{totalWords(draft.skeins, units)}</p>
      </div>
      <UseChoice kind="yarn" label="Yarn from the shelf" none="Not on the shelf" {...props} />
      {yarnShort(props)}
      <TextField
        label="Fibre"
        suggestions={fibres}
        hint="Shrink-resist wool strikes sooner and cooler."
        value={draft.fibre}
        onInput={(fibre) => change({ fibre })}
        id="start-fibre"
        problem={problemAt(problems, 'fibre')}
      />
      <Before {...props} />
    </section>
  )
}

/** More goods than are free of that yarn. */
function yarnShort({ draft, things, units }: Props): preact.JSX.Element | null {
  const free = things.find(({ item }) => item.itemId === draft.uses?.yarn)?.level?.free
  const wanted = totalG(draft.skeins, units)
  if (free === undefined || wanted === null || wanted <= free + 0.05) return null
  const there = showMass(Math.max(0, free), units)
  return <Strip tone="warn">{`The yarn is ${showMass(wanted - free, units)} short: ${there} free on the shelf.`}</Strip>
}

function totalG(skeins: readonly SkeinDraft[], units: Units): number | null {
  const masses = skeins.map((skein) => readMass(skein.mass, { bareUnit: units.mass === 'us' ? 'oz' : 'g' }))
  const known = masses.every((mass) => mass.ok && mass.value > 0)
  return known ? masses.reduce((sum, mass) => sum + (mass.ok ? mass.value : 0), 0) : null
}

function nextSkein(skeins: readonly SkeinDraft[], letter: string): SkeinDraft {
  const tags = new Set(skeins.map((skein) => skein.tag.trim()))
  let n = skeins.length + 1
  while (tags.has(`${letter}${n}`)) n++
  return { tag: `${letter}${n}`, mass: skeins.at(-1)?.mass ?? '' }
}

function totalWords(skeins: readonly SkeinDraft[], units: Units): string {
  const total = totalG(skeins, units)
  return total === null ? 'Together: weights are missing' : `Together ${showMass(total, units)}`
}

/** A used bath, or yarn that is dyed over. */
function Before({ protocol, draft, change, problems, earlier }: Props): preact.JSX.Element | null {
  if (earlier.length === 0 && protocol.parent === 'none') return null
  const options = (chosen: string, none: string, words: string, other: string): { value: string; label: string }[] => [
    { value: '', label: none },
    // The Dye book may name one from further back than the newest that are offered.
    ...(['', notInBook, ...earlier.map((line) => line.potId)].includes(chosen)
      ? []
      : [{ value: chosen, label: `${words} the batch from the Dye book` }]),
    ...earlier.map((line) => ({ value: line.potId, label: `${words} ${line.batchName}` })),
    { value: notInBook, label: other }
  ]
  return (
    <div class="start-pair">
      <SelectField
        label="Bath"
        options={options(draft.bathOf, 'Fresh', 'Bath of', 'Used, not in this book')}
        hint={draft.bathOf === '' ? undefined : 'How much dye is left in it is not known.'}
        value={draft.bathOf}
        onChange={(bathOf) => change({ bathOf })}
        id="start-bath-of"
        problem={problemAt(problems, 'bathOf')}
      />
      <SelectField
        label="Yarn"
        options={options(draft.yarnOf, 'Undyed', 'Dyed as', 'Dyed, not in this book')}
        value={draft.yarnOf}
        onChange={(yarnOf) => change({ yarnOf })}
        id="start-yarn-of"
        problem={problemAt(problems, 'yarnOf')}
      />
    </div>
  )
}
