// What rules a rehearsal: one row over its Stove, and a sheet for what is changed seldom.
import { showTemperature } from '../../../core/quantity/index.ts'
import type { Kitchen } from '../../kitchen.ts'
import { Pad } from '../../parts/pad.tsx'
import { unitsOf } from '../../parts/units-of.ts'
import type { RehearsalRun } from '../../rehearsing.ts'
import { Pace } from './pace.tsx'

type Props = { kitchen: Kitchen; run: RehearsalRun; menu: boolean; setMenu: (open: boolean) => void }

export function Bar({ kitchen, run, menu, setMenu }: Props): preact.JSX.Element {
  const paused = run.paused.value
  return (
    <section class="rehearse-bar" aria-label="Rehearsal">
      <Where kitchen={kitchen} run={run} />
      <div class="rehearse-pads">
        <Pad onPress={() => run.pause(!paused)}>{paused ? 'Go on' : 'Pause'}</Pad>
        <Pad onPress={() => void run.toNextCall()}>Next call</Pad>
        <Pad onPress={() => setMenu(true)}>Pace</Pad>
        <Pad onPress={() => kitchen.go('#/rehearse')}>End</Pad>
      </div>
      {menu ? <Pace kitchen={kitchen} run={run} onClose={() => setMenu(false)} /> : null}
    </section>
  )
}

function Where({ kitchen, run }: Pick<Props, 'kitchen' | 'run'>): preact.JSX.Element {
  const units = unitsOf(kitchen.settings.value)
  const say = run.stuck.value ?? run.first.value
  const baths = run.baths.value.map(({ name, tempC }) => `${name} ${showTemperature(tempC, units)}`)
  const coming = run.coming.value.map(({ name, inMs }) => `${name} starts in ${minutes(inMs)}`)
  return (
    <p class="rehearse-where">
      <strong>Rehearsal.</strong> <span class="rehearse-passed">{clock(run.passedMs.value)}</span> in, {pace(run)}.
      {say === null ? null : <span role="status"> {say}</span>}
      {baths.length + coming.length > 0 ? ` ${[...baths, ...coming].join(', ')}.` : ''}
    </p>
  )
}

function pace(run: RehearsalRun): string {
  const goes = run.goes.value
  if (goes === 0) return 'paused'
  if (goes === run.speed.value) return `${goes}×`
  return `${goes}× while you are called`
}

function minutes(ms: number): string {
  return `${Math.max(0, Math.ceil(ms / 60_000))} min`
}

/** "1:07": hours and minutes. */
export function clock(ms: number): string {
  const min = Math.floor(Math.max(0, ms) / 60_000)
  return `${Math.floor(min / 60)}:${String(min % 60).padStart(2, '0')}`
}
