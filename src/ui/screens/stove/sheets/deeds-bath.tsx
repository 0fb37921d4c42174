import { useState } from 'preact/hooks'
import type { Amount } from '../../../../core/protocol/model.ts'
import { stepsOf } from '../../../../core/protocol/tree.ts'
import { showDose } from '../../../../core/quantity/show-amount.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { SelectField, TextField } from '../../../parts/field.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { unitsOf } from '../../../parts/units-of.ts'
import { enteredAmount } from '../amount.ts'
import { livePots, nameOf } from '../live.ts'
import type { Deed, DeedProps } from './deed.ts'
import { DegreeStep } from './degree-step.tsx'
import { amountTaken, HowMuch, type Taken, turnedToBottle } from './how-much.tsx'
import { measureFor, pouredOf, roundMeasureFor } from './measure.ts'
import { NumberStep } from './number-step.tsx'
import { OutOfBottle, outOf, type Poured } from './out-of-bottle.tsx'
import { VolumeStep } from './volume-step.tsx'

const levels = ['at the mark', 'above', 'below'].map((value) => ({ value, label: value }))
const TOP_UP_ML = 200

function TopUp({ kitchen, send, stage }: DeedProps): preact.JSX.Element {
  const measure = roundMeasureFor(TOP_UP_ML, unitsOf(kitchen.settings.value), [100, 10])
  const [added, setAdded] = useState<number | null>(null)
  const [tempC, setTempC] = useState<number | null>(null)
  const [before, setBefore] = useState<string>('below')
  const [after, setAfter] = useState<string>('at the mark')
  const topUp = (): void => {
    const { value: volumeML } = pouredOf(measure, added ?? measure.first)
    send({ type: 'TopUp', volumeML, tempC, levelBefore: before, levelAfter: after })
  }
  return (
    <>
      <p>Water at the bath’s own temperature, at the wall, skeins lifted.</p>
      <VolumeStep legend="Water added" measure={measure} value={added} onValue={setAdded} />
      <DegreeStep kitchen={kitchen} legend="The water was" firstC={60} onTemp={setTempC} />
      <ChoiceRow legend="Level before" kind="lesser" choices={levels} value={before} onChoose={setBefore} />
      <ChoiceRow legend="Level after" kind="lesser" choices={levels} value={after} onChoose={setAfter} />
      <Pad kind="main" look="solid" layoutKey="top up" disabled={stage.busy.value} onPress={topUp}>
        Topped up
      </Pad>
    </>
  )
}

type Cup = { path: string; amount: Amount; label: string }

/** The cups of this pot that were not yet said to be in. */
function cupsLeft({ pot }: DeedProps): Cup[] {
  const { programme, ended } = pot.state
  return stepsOf(programme).flatMap(({ path, dose, knot }) =>
    dose && ended[path] === undefined ? [{ path, amount: dose.amount, label: dose.cup ?? knot }] : []
  )
}

function Elsewhere(props: DeedProps): preact.JSX.Element {
  const { kitchen, stage, pot } = props
  const cups = cupsLeft(props)
  const others = livePots(kitchen.pots.value).filter((p) => p.potId !== pot.potId)
  const units = unitsOf(kitchen.settings.value)
  const [cup, setCup] = useState(cups[0] ?? null)
  // In the measure that is shown; null: the whole cup.
  const [value, setValue] = useState<number | null>(null)
  const measure = cup?.amount.unit === 'mL' ? measureFor(cup.amount.value, units, [10, 1]) : null
  const go = (toPotId: string): void => {
    if (!cup) return
    const part = value !== null && measure ? { ...cup.amount, ...pouredOf(measure, value) } : null
    const amount = part ?? enteredAmount(cup.amount, value ?? cup.amount.value)
    stage.busy.value = true
    void kitchen.sendAddedElsewhere(pot.potId, cup.path, toPotId, amount).then((sent) => {
      stage.busy.value = false
      if (sent.ok) stage.close()
      else stage.said.value = { potId: pot.potId, say: sent.say }
    })
  }
  if (!cup) return <p>No cup of this pot is left.</p>
  return (
    <>
      <SelectField
        label={`Which cup of ${nameOf(pot)}`}
        value={cup.path}
        options={cups.map((c) => ({ value: c.path, label: `${c.label}, ${showDose(c.amount, units)}` }))}
        onChange={(path) => {
          setCup(cups.find((c) => c.path === path) ?? cup)
          setValue(null)
        }}
      />
      {measure ? (
        <VolumeStep legend="How much" measure={measure} value={value} onValue={setValue} />
      ) : (
        <NumberStep
          legend="How much"
          unit={cup.amount.unit === 'count' ? '' : cup.amount.unit}
          value={value}
          first={cup.amount.value}
          steps={[10, 1]}
          onValue={setValue}
        />
      )}
      <h3>It went into</h3>
      {others.map((other) => (
        <Pad
          key={other.potId}
          kind="main"
          look="solid"
          layoutKey="elsewhere"
          disabled={stage.busy.value}
          onPress={() => go(other.potId)}
        >
          {nameOf(other)}
        </Pad>
      ))}
    </>
  )
}

function Unplanned({ kitchen, pot, send, stage }: DeedProps): preact.JSX.Element {
  const known = [...new Set(pot.state.programme.setOut.map((s) => s.amount.of))]
  const [of, setOf] = useState(known[0] ?? '')
  const [taken, setTaken] = useState<Taken>({ unit: 'mL', value: null })
  const [bottle, setBottle] = useState<Poured | null>(null)
  const add = (): void => {
    send({ type: 'AddUnplanned', amount: amountTaken(taken, of.trim()), ...outOf(bottle, of) })
  }
  const pour = (poured: Poured | null): void => {
    setBottle(poured)
    if (poured === null) return
    setOf(poured.of)
    setTaken(turnedToBottle(poured.unit, taken))
  }
  return (
    <>
      <OutOfBottle kitchen={kitchen} poured={outOf(bottle, of).itemId ? bottle : null} choose={pour} />
      <TextField label="What went in" value={of} suggestions={known} onInput={setOf} />
      <HowMuch units={unitsOf(kitchen.settings.value)} taken={taken} onTaken={setTaken} />
      <Pad kind="main" look="solid" layoutKey="unplanned" disabled={of.trim() === '' || stage.busy.value} onPress={add}>
        It is in
      </Pad>
    </>
  )
}

export const bathDeeds: Deed[] = [
  { id: 'top-up', say: 'Topped up', group: 'Bath', fits: () => true, Form: TopUp },
  { id: 'unplanned', say: 'Added, not planned', group: 'Bath', fits: () => true, Form: Unplanned },
  { id: 'elsewhere', say: 'Cup went into another pot', group: 'Bath', fits: () => true, Form: Elsewhere }
]
