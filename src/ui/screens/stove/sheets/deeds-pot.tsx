import { useState } from 'preact/hooks'
import { ChoiceRow } from '../../../parts/choice-row.tsx'
import { TextField } from '../../../parts/field.tsx'
import { HoldPad } from '../../../parts/hold-pad.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { nameOf } from '../live.ts'
import type { Deed, DeedProps } from './deed.ts'
import { Finish } from './finish.tsx'
import { Reason } from './reason.tsx'
import { Resume } from './resume.tsx'

const burners = ['front left', 'front right', 'back left', 'back right', 'hot plate'] as const
const heats = ['off', 'low', 'middle', 'high'] as const

function Burner({ pot, send, stage }: DeedProps): preact.JSX.Element {
  const [burner, setBurner] = useState(pot.state.pot.burner)
  return (
    <>
      <p>Now on: {pot.state.pot.burner}</p>
      <Reason legend="It stands on" reasons={burners} value={burner} onReason={setBurner} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="burner"
        disabled={burner.trim() === '' || stage.busy.value}
        onPress={() => send({ type: 'ChangeBurner', burner: burner.trim() })}
      >
        Moved there
      </Pad>
    </>
  )
}

function Heat({ pot, send, stage }: DeedProps): preact.JSX.Element {
  const now = pot.state.heatOn ? pot.state.heatLevel : 'off'
  const [level, setLevel] = useState<string | null>(now)
  const on = level !== 'off'
  return (
    <>
      <p>{pot.state.heatOn ? `Heat is on${now ? `, ${now}` : ''}.` : 'Heat is off.'}</p>
      <ChoiceRow
        legend="The heat now"
        kind="lesser"
        choices={heats.map((value) => ({ value, label: value }))}
        value={level}
        onChoose={setLevel}
      />
      <Pad
        kind="main"
        look="solid"
        layoutKey="heat"
        disabled={level === null || stage.busy.value}
        onPress={() => send({ type: 'ChangeHeat', on, level: on ? level : null })}
      >
        {nameOf(pot)}: heat is {level ?? 'on'}
      </Pad>
    </>
  )
}

function HandOver({ send, stage }: DeedProps): preact.JSX.Element {
  const [to, setTo] = useState('')
  return (
    <>
      <TextField label="Who has the pot now" value={to} onInput={setTo} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="hand over"
        disabled={to.trim() === '' || stage.busy.value}
        onPress={() => send({ type: 'HandOver', to: to.trim() })}
      >
        Handed over
      </Pad>
    </>
  )
}

/** Stops the procedure, not the chemistry. */
function Stop({ pot, send, stage }: DeedProps): preact.JSX.Element {
  const [reason, setReason] = useState('')
  return (
    <>
      <p>The steps stop. The bath goes on dyeing, and its times stand.{pot.state.heatOn ? ' Stay by the heat.' : ''}</p>
      <Reason legend="Why" reasons={['door', 'rest', 'other pot', 'to think']} value={reason} onReason={setReason} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="stop"
        disabled={stage.busy.value}
        onPress={() => send({ type: 'Hold', reason: reason.trim() || null })}
      >
        Stop the procedure
      </Pad>
    </>
  )
}

function Abort({ pot, send }: DeedProps): preact.JSX.Element {
  const [reason, setReason] = useState('')
  return (
    <>
      <p>
        The batch ends here, with its record. This can’t be undone at the stove.
        {pot.state.heatOn ? ' Heat off first.' : ''}
      </p>
      <Reason
        legend="Why"
        reasons={['spoiled', 'no time', 'wrong skein', 'wrong dye']}
        value={reason}
        onReason={setReason}
      />
      <HoldPad
        kind="main"
        disabled={reason.trim() === ''}
        onHeld={() => send({ type: 'Abort', reason: reason.trim() })}
      >
        <span>{nameOf(pot)}: end the batch</span>
        <small>press and hold</small>
      </HoldPad>
    </>
  )
}

const stopped = ({ state }: DeedProps['pot']): boolean => state.status === 'held'

export const potDeeds: Deed[] = [
  { id: 'heat', say: 'Heat', group: 'Pot', fits: () => true, Form: Heat },
  { id: 'burner', say: 'Other burner', group: 'Pot', fits: () => true, Form: Burner },
  { id: 'hand-over', say: 'Hand over', group: 'Pot', fits: () => true, Form: HandOver },
  { id: 'stop', say: 'Stop the procedure', group: 'Pot', fits: (pot) => !stopped(pot), Form: Stop },
  { id: 'resume', say: 'Go on', group: 'Pot', fits: stopped, Form: Resume },
  { id: 'finish', say: 'Finish', group: 'Pot', fits: ({ state }) => state.stepsDone, Form: Finish },
  { id: 'abort', say: 'End the batch', group: 'Pot', fits: () => true, Form: Abort }
]
