// The numbers of the pot, worked out as the form is filled in: first what wants a look, each with the way out of it.
import { about as formulas } from '../../../core/chemistry/about.ts'
import type { InputProblem, ProgrammeInputs } from '../../../core/protocol/model.ts'
import type { Flag } from '../../../core/protocol/numbers/flag.ts'
import type { Numbers } from '../../../core/protocol/numbers/numbers.ts'
import {
  alkalinityWords,
  flagWords,
  phAfterWords,
  phNotWords,
  ratioWords
} from '../../../core/protocol/numbers/words.ts'
import { showTemperature, showVolume, type Units } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { CountsOn } from './counts-on.tsx'
import { fieldId, toField } from './field-id.ts'
import { type WayOut, wayOut } from './way-out.ts'
import './numbers.css'

type Props = {
  kitchen: Kitchen
  /** Null: there is no programme yet. */
  numbers: Numbers | null
  inputs: ProgrammeInputs
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  units: Units
  things: readonly OnShelf[]
}

export function TheNumbers(props: Props): preact.JSX.Element {
  const { kitchen, numbers, inputs, draft, change, problems, units, things } = props
  return (
    <section class="start-part" aria-labelledby="start-numbers">
      <h2 id="start-numbers">The numbers</h2>
      {numbers === null ? null : (
        <>
          <Flags flags={numbers.flags} units={units} ways={(flag) => wayOut(flag, draft, units, change)} />
          <Facts numbers={numbers} boilC={inputs.boilC} units={units} />
        </>
      )}
      <CountsOn kitchen={kitchen} draft={draft} change={change} problems={problems} units={units} things={things} />
      {numbers === null ? null : <Formulas numbers={numbers} units={units} />}
    </section>
  )
}

type FlagsProps = { flags: readonly Flag[]; units: Units; ways: (flag: Flag) => WayOut | null }

function Flags({ flags, units, ways }: FlagsProps): preact.JSX.Element {
  if (flags.length === 0) return <p class="soft">Nothing stands out.</p>
  return (
    <ul class="start-flags" aria-label="Worth a look">
      {flags.map((flag, i) => {
        const { say, way } = flagWords(flag, units)
        const out = ways(flag)
        const id = fieldId(flag.field)
        return (
          <li key={`${flag.code} ${i}`} class="start-flag" data-code={flag.code}>
            <p>
              <strong>{say}</strong> {way}
            </p>
            <div class="start-flag-ways">
              {out ? <Pad onPress={out.press}>{out.words}</Pad> : null}
              {id === null ? null : <Pad onPress={() => toField(id)}>{fieldWords[flag.code]}</Pad>}
            </div>
          </li>
        )
      })}
    </ul>
  )
}

/** What the field that settles it is called. */
const fieldWords: Record<Flag['code'], string> = {
  'small-dose': 'To its bottle',
  'over-boil': 'To the boil here',
  'boil-presumed': 'To the boil here',
  'pot-full': 'To the pot’s size',
  'ratio-changed': 'To the field',
  'ratio-counted': 'To how they go in',
  'not-covered': 'To the weights',
  'alkalinity-left': 'To the water',
  'ph-outside': 'To the water'
}

function Facts({
  numbers,
  boilC,
  units
}: {
  numbers: Numbers
  boilC: number | null
  units: Units
}): preact.JSX.Element {
  const { liquor, ph } = numbers
  return (
    <dl class="start-facts">
      {liquor ? (
        <div>
          <dt>Liquor</dt>
          <dd>
            {`${ratioWords(liquor.ratio)}: ${showVolume(liquor.waterML, units)} of water. `}
            {`With all that goes in ${showVolume(liquor.wholeML, units)}, ${ratioWords(liquor.trueRatio)}.`}
          </dd>
        </div>
      ) : null}
      <div>
        <dt>pH, estimated</dt>
        <dd>
          {ph.after.map((after) => (
            <p key={after.path}>{phAfterWords(after, units)}</p>
          ))}
          {ph.not.map((not) => {
            const id = not.field === null ? null : fieldId(not.field)
            return (
              <p key={`${not.code} ${not.of}`}>
                {phNotWords(not)} {id === null ? null : <Pad onPress={() => toField(id)}>To the field</Pad>}
              </p>
            )
          })}
          {ph.after.length === 0 ? null : (
            <p class="soft">
              {`An estimate, without the goods, which raise it: measure for the record. ${alkalinityWords(ph)}`}
            </p>
          )}
        </dd>
      </div>
      <div>
        <dt>Water boils here at</dt>
        <dd>
          {boilC === null
            ? `Not said; ${showTemperature(100, units)} presumed.`
            : showTemperature(boilC, units, { digits: 1 })}
        </dd>
      </div>
    </dl>
  )
}

function Formulas({ numbers, units }: { numbers: Numbers; units: Units }): preact.JSX.Element {
  const used = new Set<keyof typeof formulas>([
    'stockFor',
    'waterFor',
    'ratioOf',
    'acidDose',
    'bathPh',
    'boilingPointC'
  ])
  for (const flag of numbers.flags) {
    const { about } = flagWords(flag, units)
    if (about) used.add(about)
    if (flag.code === 'small-dose') used.add('dilute')
  }
  return (
    <details class="start-sources">
      <summary>Formulas and where they come from</summary>
      <dl>
        {[...used].map((name) => (
          <div key={name} class="start-formula">
            <dt>{formulas[name].formula}</dt>
            <dd>{formulas[name].source}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
