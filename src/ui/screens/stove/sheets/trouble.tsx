// Something goes wrong at the stove. The act is said before anything is asked.
import { useState } from 'preact/hooks'
import type { TroubleEnd, TroubleKind } from '../../../../core/pot/events.ts'
import { troubleLines } from '../../../../core/safety/trouble.ts'
import type { Kitchen } from '../../../kitchen.ts'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { expectedTempC } from '../expected.ts'
import { type LivePot, nameOf } from '../live.ts'
import type { Stage } from '../stage.ts'
import { DegreeStep } from './degree-step.tsx'
import './sheets.css'

const kinds: readonly { kind: TroubleKind; say: string }[] = [
  { kind: 'boil-over', say: 'Boil-over' },
  { kind: 'power-cut', say: 'Power cut' },
  { kind: 'gas-out', say: 'Gas out' },
  { kind: 'dropped-skein', say: 'Dropped skein' },
  { kind: 'burn', say: 'Burn' },
  { kind: 'must-leave', say: 'Must leave' },
  { kind: 'other', say: 'Something else' }
]

type Props = { kitchen: Kitchen; stage: Stage; pot: LivePot }

export function Trouble({ kitchen, stage, pot }: Props): preact.JSX.Element {
  const { trouble } = pot.state
  if (trouble) return <Settle kitchen={kitchen} stage={stage} pot={pot} kind={trouble.kind} />
  return (
    <>
      <p class="trouble-act">{troubleLines('other').act}</p>
      <h3>{nameOf(pot)}: what is it</h3>
      <div class="sheet-pads">
        {kinds.map(({ kind, say }) => (
          <Pad
            key={kind}
            kind="lesser"
            look="bad"
            layoutKey="kinds"
            onPress={() => void stage.send(pot.potId, { type: 'CallTrouble', kind })}
          >
            {say}
          </Pad>
        ))}
      </div>
    </>
  )
}

const agos = [0, 1, 2, 5, 10].map((min) => ({ value: min, label: min === 0 ? 'now' : `${min} min ago` }))
const ends: readonly { value: TroubleEnd; label: string }[] = [
  { value: 'absorb', label: 'Go on as timed' },
  { value: 'restart-step', label: 'Time this step afresh' },
  { value: 'off-protocol', label: 'Go on, mark it off the protocol' }
]
const heats = [
  { value: 'off', label: 'off' },
  { value: 'on', label: 'on again' }
] as const

function Settle({ kitchen, stage, pot, kind }: Props & { kind: TroubleKind }): preact.JSX.Element {
  const { state, potId } = pot
  const [agoMin, setAgoMin] = useState(0)
  const [tempC, setTempC] = useState<number | null>(null)
  const [end, setEnd] = useState<TroubleEnd>('absorb')
  const [heat, setHeat] = useState<'on' | 'off'>('off')
  const lines = troubleLines(kind)
  const settle = (): void => {
    const on = heat === 'on'
    const beganAtMs = (state.trouble?.sinceMs ?? kitchen.now.peek()) - agoMin * 60_000
    const heatChange = on === state.heatOn ? [] : [{ type: 'ChangeHeat' as const, on, level: null }]
    const settled = { type: 'SettleTrouble' as const, beganAtMs, tempC, outcome: end }
    void stage.sendAll(potId, [...heatChange, settled]).then((sent) => {
      if (sent.ok) stage.close()
    })
  }
  return (
    <>
      <p class="trouble-act">{lines.act}</p>
      <ul class="trouble-lines">
        {lines.then.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <ChoiceRow legend="It began" kind="lesser" choices={agos} value={agoMin} onChoose={setAgoMin} />
      <ChoiceRow legend="The heat is" kind="lesser" choices={heats} value={heat} onChoose={setHeat} />
      <DegreeStep
        kitchen={kitchen}
        legend="The bath now"
        firstC={expectedTempC(state, null, kitchen.now.peek())}
        onTemp={setTempC}
      />
      <ChoiceRow legend="Then" kind="lesser" choices={ends} value={end} onChoose={setEnd} />
      <Pad kind="main" look="solid" layoutKey="settle" disabled={stage.busy.value} onPress={settle}>
        {nameOf(pot)}: settled
      </Pad>
    </>
  )
}
