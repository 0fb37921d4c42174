// The deeds of a free pot that want one more word: how much, how deep, how long.
import { useState } from 'preact/hooks'
import { Pad } from '../../../parts/pad.tsx'
import { unitsOf } from '../../../parts/units-of.ts'
import { openSteps } from '../live.ts'
import type { DeedProps } from './deed.ts'
import { DeedCautions } from './deed-cautions.tsx'
import { amountTaken, HowMuch, type Taken, turnedToBottle } from './how-much.tsx'
import { pouredOf, roundMeasureFor } from './measure.ts'
import { OutOfBottle, outOf, type Poured } from './out-of-bottle.tsx'
import { Reason } from './reason.tsx'
import { VolumeStep } from './volume-step.tsx'

const usual = ['vinegar', 'citric acid', 'dye stock', 'salt']
/** A usual liquor ratio for the first figure shown. Common practice, no source. */
const LIQUOR_RATIO = 20
const FILL_STEP_ML = 100

export function FillForm({ kitchen, pot, send, stage }: DeedProps): preact.JSX.Element {
  const massG = pot.state.pot.skeins.reduce((sum, skein) => sum + skein.massG, 0)
  const first = Math.max(FILL_STEP_ML, Math.round((massG * LIQUOR_RATIO) / FILL_STEP_ML) * FILL_STEP_ML)
  const measure = roundMeasureFor(first, unitsOf(kitchen.settings.value), [500, 100])
  const [value, setValue] = useState<number | null>(null)
  const fill = (): void => {
    send({
      type: 'AddUnplanned',
      amount: { unit: 'mL', of: 'water', ...pouredOf(measure, value ?? measure.first) }
    })
  }
  return (
    <>
      <VolumeStep legend="Water" measure={measure} value={value} onValue={setValue} />
      <Pad kind="main" look="solid" layoutKey="fill" disabled={stage.busy.value} onPress={fill}>
        It is in
      </Pad>
    </>
  )
}

/** What went in before comes first: it goes in again more often than not. */
export function AddForm({ kitchen, pot, send, stage }: DeedProps): preact.JSX.Element {
  const before = pot.state.doses.flatMap(({ of }) => (of === 'water' ? [] : [of]))
  const known = [...new Set([...before.reverse(), ...usual])].slice(0, 6)
  const last = pot.state.doses.findLast(({ of, added }) => of === known[0] && added.unit !== 'count')
  const [of, setOf] = useState(known[0] ?? '')
  const [taken, setTaken] = useState<Taken>({
    unit: last?.added.unit === 'g' ? 'g' : 'mL',
    value: last?.added.value ?? null
  })
  const [bottle, setBottle] = useState<Poured | null>(null)
  const pour = (poured: Poured | null): void => {
    setBottle(poured)
    setOf(poured?.of ?? known[0] ?? '')
    if (poured) setTaken(turnedToBottle(poured.unit, taken))
  }
  const out = outOf(bottle, of)
  const amount = amountTaken(taken, of.trim())
  return (
    <>
      <OutOfBottle kitchen={kitchen} poured={out.itemId ? bottle : null} choose={pour} />
      {out.itemId ? null : <Reason legend="Which" reasons={known} value={of} onReason={setOf} />}
      <HowMuch units={unitsOf(kitchen.settings.value)} taken={taken} onTaken={setTaken} />
      <DeedCautions key={of} stage={stage} pot={pot} adds={amount} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="add"
        disabled={of.trim() === '' || stage.busy.value}
        onPress={() => send({ type: 'AddUnplanned', amount, ...out })}
      >
        It is in
      </Pad>
    </>
  )
}

const depths = ['1/4 of the skein', '1/3 of the skein', '1/2 of the skein', '2/3 of the skein', '3/4 of the skein']

export function LowerForm({ send, stage }: DeedProps): preact.JSX.Element {
  return (
    <div class="free-pads">
      {[...depths, 'whole skein'].map((say) => (
        <Pad
          key={say}
          kind="main"
          disabled={stage.busy.value}
          onPress={() => send({ type: 'NoteDeed', word: 'lower', say })}
        >
          {say.replace(' of the skein', '')}
        </Pad>
      ))}
    </div>
  )
}

const MINUTE_MS = 60_000

export function CallMeForm({ kitchen, pot, send, stage }: DeedProps): preact.JSX.Element {
  const path = openSteps(pot.state).find(({ step }) => step.open)?.step.path
  if (path === undefined) return <p>This pot is finished.</p>
  const callIn = (min: number): void =>
    send({
      type: 'MoveDeadline',
      path,
      dueAtMs: kitchen.now.peek() + min * MINUTE_MS,
      reason: `call me in ${min} min`
    })
  return (
    <>
      <div class="free-pads">
        {[5, 10, 20, 30].map((min) => (
          <Pad key={min} kind="main" disabled={stage.busy.value} onPress={() => callIn(min)}>
            {min} min
          </Pad>
        ))}
      </div>
      {pot.state.heatOn ? <p>The heat is on. Stay by the pot.</p> : null}
    </>
  )
}
