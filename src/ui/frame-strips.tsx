// What must be seen on whatever screen is open: not saved, followed, clock jumped, newer version, rehearsal; and off the
// Stove also the pot that calls.
import type { PotIdentity } from '../core/pot/events.ts'
import type { Kitchen } from './kitchen.ts'
import { bathColour } from './parts/bath-colour.ts'
import { Pad } from './parts/pad.tsx'
import { Strip } from './parts/strip.tsx'
import { VoiceStrip } from './parts/voice-strip.tsx'
import { type BroughtIn, routeOf } from './sharing.ts'

type Props = { kitchen: Kitchen }

export function FrameStrips({ kitchen, stove }: Props & { stove: boolean }): preact.JSX.Element {
  return (
    <div class="frame-strips">
      <NotSaved kitchen={kitchen} />
      <Following kitchen={kitchen} />
      <Jump kitchen={kitchen} />
      <Update kitchen={kitchen} />
      <VoiceStrip kitchen={kitchen} />
      {stove && callingIn(kitchen).length > 0 ? null : <Arrived kitchen={kitchen} />}
      {kitchen.rehearsal ? <Strip tone="warn">Rehearsal. No real pot is on.</Strip> : null}
      {stove ? null : <Calls kitchen={kitchen} />}
    </div>
  )
}

function NotSaved({ kitchen }: Props): preact.JSX.Element | null {
  const notSaved = kitchen.notSaved.value
  if (!notSaved) return null
  return (
    <Strip
      tone="bad"
      urgent
      actions={
        <>
          <Pad kind="lesser" onPress={() => kitchen.retrySave()}>
            Try again
          </Pad>
          <Pad kind="lesser" onPress={() => kitchen.rescue()}>
            Save a copy
          </Pad>
        </>
      }
    >
      Not saved. {notSaved.say}
    </Strip>
  )
}

function Following({ kitchen }: Props): preact.JSX.Element | null {
  if (kitchen.owner.value) return null
  return (
    <Strip
      tone="warn"
      actions={
        <Pad kind="lesser" onPress={() => kitchen.takeOver()}>
          Work here
        </Pad>
      }
    >
      Another tab works the pots and sounds the calls. This one follows it.
    </Strip>
  )
}

function Jump({ kitchen }: Props): preact.JSX.Element | null {
  const jump = kitchen.jump.value
  if (!jump) return null
  const minutes = Math.max(1, Math.round(Math.abs(jump.byMs) / 60_000))
  const say = jump.byMs > 0 ? 'forward' : 'back'
  return (
    <Strip
      tone="warn"
      urgent
      actions={
        <>
          <Pad kind="lesser" onPress={() => kitchen.declareClockSet()}>
            The clock was set
          </Pad>
          <Pad kind="lesser" onPress={() => kitchen.dismissJump()}>
            The time passed
          </Pad>
        </>
      }
    >
      The clock went {say} {minutes} min. Did that time pass at the stove?
    </Strip>
  )
}

function Update({ kitchen }: Props): preact.JSX.Element | null {
  const update = kitchen.update.value
  if (!update) return null
  return (
    <Strip
      tone="info"
      actions={
        <Pad kind="lesser" onPress={() => update.apply()}>
          Open it
        </Pad>
      }
    >
      A newer version is ready.
    </Strip>
  )
}

/** Protocols that came by themselves: nobody is taken away from a pot for them, and no call gives up its room. */
function Arrived({ kitchen }: Props): preact.JSX.Element {
  return (
    <>
      {kitchen.arrived.value.map((one) => (
        <Strip
          key={one.ok ? one.draftId : one.problem.what}
          tone={one.ok ? 'info' : 'warn'}
          actions={<ArrivedPads kitchen={kitchen} one={one} />}
        >
          {one.ok
            ? `${one.name} lies among the drafts${one.runs ? '' : ', with problems to mend'}.`
            : `${one.problem.what} ${one.problem.instead}`}
        </Strip>
      ))}
    </>
  )
}

function ArrivedPads({ kitchen, one }: Props & { one: BroughtIn }): preact.JSX.Element {
  const look = one.ok ? routeOf(one) : null
  const close = (): void => kitchen.dismissArrived(one)
  return (
    <>
      {look === null ? null : (
        <Pad
          kind="lesser"
          label={`Look at ${one.name}`}
          onPress={() => {
            close()
            kitchen.go(look)
          }}
        >
          Look at it
        </Pad>
      )}
      <Pad kind="lesser" label={`Not now: ${one.name}`} onPress={close}>
        {look === null ? 'Close' : 'Not now'}
      </Pad>
    </>
  )
}

/** On another screen a call is a line across the top that leads to the Stove. */
function Calls({ kitchen }: Props): preact.JSX.Element {
  return (
    <>
      {callingIn(kitchen).map(({ potId, pot, late }) => (
        <Strip
          key={potId}
          tone="bath"
          urgent
          style={{ '--bath': bathColour(pot.colour) }}
          actions={
            <Pad
              kind="lesser"
              look="bath"
              label={`To the Stove for ${pot.colourway}`}
              onPress={() => kitchen.go('#/stove')}
            >
              To the Stove
            </Pad>
          }
        >
          {pot.colourway || pot.letter} wants hands{late ? ', late' : ''}
        </Strip>
      ))}
    </>
  )
}

function callingIn(kitchen: Kitchen): { potId: string; pot: PotIdentity; late: boolean }[] {
  return kitchen.pots.value.flatMap(({ potId, state, alerts }) => {
    const loud = alerts.find((a) => a.kind !== 'headsUp')
    return loud && state.status !== 'idle' ? [{ potId, pot: state.pot, late: loud.urgency === 'late' }] : []
  })
}
