import type { ComponentType } from 'preact'
import { useState } from 'preact/hooks'
import type { Step } from '../../../../core/protocol/model.ts'
import { stepsOf } from '../../../../core/protocol/tree.ts'
import { SelectField } from '../../../parts/field.tsx'
import { Pad } from '../../../parts/pad.tsx'
import { openSteps } from '../live.ts'
import { Left } from '../time-leaf.tsx'
import type { Deed, DeedProps } from './deed.ts'
import { Reason } from './reason.tsx'

const MINUTE_MS = 60_000
const reasons = ['judged by eye', 'short of time', 'mistake', 'skein needs it'] as const

type WhichProps = { steps: Step[]; path: string; onPath: (path: string) => void }

function Which({ steps, path, onPath }: WhichProps): preact.JSX.Element | null {
  if (steps.length < 2) return steps[0] ? <h3>{steps[0].knot}</h3> : null
  return (
    <SelectField
      label="Which step"
      value={path}
      options={steps.map((s) => ({ value: s.path, label: s.knot }))}
      onChange={onPath}
    />
  )
}

type Make = { pick: (props: DeedProps) => Step[]; say: string; type: 'EndEarly' | 'Skip' | 'DoOnceMore'; none: string }

/** A deed on one of some steps, with a reason. */
function onStep({ pick, say, type, none }: Make): ComponentType<DeedProps> {
  return function OnStep(props: DeedProps) {
    const steps = pick(props)
    const [path, setPath] = useState(steps[0]?.path ?? '')
    const [reason, setReason] = useState<string>(reasons[0])
    if (steps.length === 0) return <p>{none}</p>
    const chosen = steps.some((s) => s.path === path) ? path : (steps[0] as Step).path
    return (
      <>
        <Which steps={steps} path={chosen} onPath={setPath} />
        <Reason legend="Why" reasons={reasons} value={reason} onReason={setReason} />
        <Pad
          kind="main"
          look="solid"
          layoutKey={type}
          disabled={reason.trim() === '' || props.stage.busy.value}
          onPress={() => props.send({ type, path: chosen, reason: reason.trim() })}
        >
          {say}
        </Pad>
      </>
    )
  }
}

const waits = ({ pot }: DeedProps): Step[] =>
  openSteps(pot.state).flatMap(({ step }) => (step.wait || step.ramp ? [step] : []))
const open = ({ pot }: DeedProps): Step[] => openSteps(pot.state).map(({ step }) => step)
const closed = ({ pot }: DeedProps): Step[] =>
  stepsOf(pot.state.programme).filter(
    (s) =>
      pot.state.ended[s.path] !== undefined &&
      s.behaviour !== 'wait' &&
      !pot.state.active.some((a) => a.path === s.path)
  )

/** A coming time moved, knowingly: the record keeps what it was. */
function Move({ kitchen, pot, send, stage }: DeedProps): preact.JSX.Element {
  const steps = openSteps(pot.state).filter(({ active }) => active.dueAtMs !== null)
  const [path, setPath] = useState(steps[0]?.step.path ?? '')
  const [byMin, setByMin] = useState(0)
  const [reason, setReason] = useState<string>(reasons[0])
  const chosen = steps.find(({ step }) => step.path === path) ?? steps[0]
  if (!chosen) return <p>No step of this pot has a time now.</p>
  const dueAtMs = (chosen.active.dueAtMs as number) + byMin * MINUTE_MS
  return (
    <>
      <Which steps={steps.map(({ step }) => step)} path={chosen.step.path} onPath={setPath} />
      <p>
        Due in <Left kitchen={kitchen} atMs={dueAtMs} />
      </p>
      <div class="number-step-row">
        {[-10, -1, 1, 10].map((by) => (
          <Pad
            key={by}
            kind="lesser"
            label={`${Math.abs(by)} min ${by < 0 ? 'earlier' : 'later'}`}
            onPress={() => setByMin(byMin + by)}
          >
            {by < 0 ? `−${-by}` : `+${by}`} min
          </Pad>
        ))}
      </div>
      <Reason legend="Why" reasons={reasons} value={reason} onReason={setReason} />
      <Pad
        kind="main"
        look="solid"
        layoutKey="move"
        disabled={byMin === 0 || reason.trim() === '' || stage.busy.value}
        onPress={() => send({ type: 'MoveDeadline', path: chosen.step.path, dueAtMs, reason: reason.trim() })}
      >
        Move it
      </Pad>
    </>
  )
}

const runs = ({ state }: DeedProps['pot']): boolean => state.status === 'running' && state.trouble === null

export const stepDeeds: Deed[] = [
  {
    id: 'early',
    say: 'Done early',
    group: 'Step',
    fits: runs,
    Form: onStep({ pick: waits, say: 'End it now', type: 'EndEarly', none: 'Nothing is waiting its time now.' })
  },
  {
    id: 'again',
    say: 'Once more',
    group: 'Step',
    fits: runs,
    Form: onStep({ pick: closed, say: 'Do it once more', type: 'DoOnceMore', none: 'No act has been done yet.' })
  },
  {
    id: 'skip',
    say: 'Skip the step',
    group: 'Step',
    fits: runs,
    Form: onStep({ pick: open, say: 'Skip it', type: 'Skip', none: 'No step is open.' })
  },
  { id: 'move', say: 'Move its time', group: 'Step', fits: () => true, Form: Move }
]
