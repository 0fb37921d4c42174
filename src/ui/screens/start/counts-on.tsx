// What the numbers count on beside goods and bottles: the pot, the water, where it boils, how wet the goods go in.
import type { Carries, InputProblem } from '../../../core/protocol/model.ts'
import { readBoilHere } from '../../../core/protocol/numbers/boil-here.ts'
import { carriedPerG } from '../../../core/protocol/numbers/carried.ts'
import { showTemperature, type Units } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { SelectField, TextField } from '../../parts/field.tsx'
import { Pad } from '../../parts/pad.tsx'
import type { StartDraft } from '../../parts/start-draft.ts'
import type { OnShelf } from '../../shelf.ts'
import { potUnit, problemAt } from './given.ts'
import { UseChoice } from './use-choice.tsx'

type Props = {
  kitchen: Kitchen
  draft: StartDraft
  change: (change: Partial<StartDraft>) => void
  problems: readonly InputProblem[]
  units: Units
}

type Seen = { things: readonly OnShelf[] }

export function CountsOn({ kitchen, draft, change, problems, units, things }: Props & Seen): preact.JSX.Element {
  const fields = ['potML', 'boilC', 'alkalinity', 'carries']
  const wrong = problems.some((problem) => fields.includes(problem.field))
  return (
    <details class="start-counts-on" open={wrong || undefined}>
      <summary>Pot, water and the boil here</summary>
      <div class="start-grid">
        <UseChoice
          kind="pot"
          label="Pot from the shelf"
          none="Not on the shelf"
          {...{ things, draft, change, units }}
        />
        <TextField
          label="The pot holds"
          unit={/[a-z]/i.test(draft.pot ?? '') ? undefined : potUnit(units)}
          kind="decimal"
          hint="To the brim. More than two thirds of it is told."
          value={draft.pot ?? ''}
          onInput={(pot) => change({ pot })}
          id="start-pot-holds"
          problem={problemAt(problems, 'potML')}
        />
        <Boil kitchen={kitchen} draft={draft} change={change} problems={problems} units={units} />
        <UseChoice
          kind="water"
          label="Water from the shelf"
          none="Not on the shelf"
          {...{ things, draft, change, units }}
        />
        <TextField
          label="Alkalinity of the water"
          unit="mg/L"
          kind="decimal"
          hint="As CaCO3, from a drop test or the water works. 1 °dKH is 17.8 mg/L."
          value={draft.alkalinity ?? ''}
          onInput={(alkalinity) => change({ alkalinity })}
          id="start-alkalinity"
          problem={problemAt(problems, 'alkalinity')}
        />
        <SelectField
          label="The goods go in"
          options={(['dry', 'spun', 'dripping'] as const).map((value) => ({
            value,
            label: value === 'dry' ? 'dry' : `${value}: they carry ${carriedPerG[value]} mL for each g`
          }))}
          value={draft.carries ?? 'dry'}
          onChange={(carries) => change({ carries: carries as Carries })}
          id="start-carries"
          problem={problemAt(problems, 'carries')}
        />
      </div>
      <label class="start-tick">
        <input
          type="checkbox"
          checked={draft.countAll === true}
          onChange={(event) => change({ countAll: event.currentTarget.checked })}
        />
        <span>Stock, acid and what the goods carry count as liquor: pour so much less water</span>
      </label>
    </details>
  )
}

/** A bare figure is kept with its scale: the scale may be changed later. */
function withScale(text: string, { temperature }: Units): string {
  return /^[\d.,]+$/.test(text) ? `${text} °${temperature}` : text
}

/** Asked for once: the settings keep it for every pot. */
function Boil({ kitchen, draft, change, problems, units }: Props): preact.JSX.Element {
  const kept = kitchen.settings.value.boilsAt
  const typed = draft.boil.trim()
  const read = typed === '' && kept === '' ? null : readBoilHere(typed || kept, units)
  const boils = read?.ok ? showTemperature(read.value.boilC, units, { digits: 1 }) : null
  const from = read?.ok && read.value.from === 'pressure' ? ' As the barometer beside the pot reads.' : ''
  const hint =
    typed === '' && kept !== ''
      ? `From the settings, ${kept}: it boils at ${boils ?? 'what can’t be read'}.`
      : boils !== null
        ? `It boils at ${boils}.${from}`
        : `Altitude, pressure or the boil itself: 1200 m, 905 hPa, ${showTemperature(96, units)}.`
  return (
    <div>
      <TextField
        label="Water boils here at"
        hint={hint}
        value={draft.boil}
        onInput={(boil) => change({ boil })}
        id="start-boil"
        problem={problemAt(problems, 'boilC')}
      />
      {read?.ok && typed !== '' && typed !== kept ? (
        <Pad onPress={() => void kitchen.changeSettings({ boilsAt: withScale(typed, units) })}>
          Keep it for every pot
        </Pad>
      ) : null}
    </div>
  )
}
