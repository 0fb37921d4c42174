// Lines over the Stove: what was missed, other pots' calls, what was refused, what can still be undone.
import { useEffect } from 'preact/hooks'
import type { Kitchen } from '../../kitchen.ts'
import { bathColour } from '../../parts/bath-colour.ts'
import { Pad } from '../../parts/pad.tsx'
import { Strip } from '../../parts/strip.tsx'
import { alertMomentMs, alertSay } from './alert-words.ts'
import { type Call, fills, keyOf } from './calls.ts'
import { livePots, nameOf } from './live.ts'
import { type Stage, showPot } from './stage.ts'
import { Left } from './time-leaf.tsx'
import { undoDone } from './undo-say.ts'
import './stove-strips.css'

type Props = { kitchen: Kitchen; stage: Stage }

/** Calls that may not fill the screen now. `shown`: the pot that is in sight already. */
export function CallStrips({
  kitchen,
  stage,
  calls,
  shown
}: Props & { calls: Call[]; shown: string | null }): preact.JSX.Element {
  const others = calls.filter(({ pot }) => pot.potId !== calls[0]?.pot.potId).map((call) => nameOf(call.pot))
  return (
    <>
      {calls.slice(0, 1).map((call) => (
        <Strip
          key={keyOf(call)}
          tone="bath"
          urgent={call.alert.urgency === 'late'}
          style={{ '--bath': bathColour(call.pot.state.pot.colour) }}
          actions={
            call.pot.potId === shown && !fills(call) ? null : (
              <Pad
                kind="lesser"
                look="bath"
                label={`Show ${nameOf(call.pot)}`}
                onPress={() => showPot(kitchen, stage, call.pot)}
              >
                Show
              </Pad>
            )
          }
        >
          <span class="strip-call">
            <strong>{nameOf(call.pot)}:</strong> {alertSay(call.pot.state, call.alert)},{' '}
            <Left kitchen={kitchen} atMs={alertMomentMs(call.pot.state, call.alert)} />
            {others.length > 0 ? <small>, then {[...new Set(others)].join(', ')}</small> : null}
          </span>
        </Strip>
      ))}
    </>
  )
}

export function SaidStrip({ kitchen, stage }: Props): preact.JSX.Element | null {
  const said = stage.said.value
  if (!said || stage.open.value !== null) return null
  const pot = livePots(kitchen.pots.value).find((p) => p.potId === said.potId)
  return (
    <Strip
      tone="warn"
      urgent
      actions={
        <Pad kind="lesser" onPress={() => (stage.said.value = null)}>
          Close
        </Pad>
      }
    >
      {pot ? `${nameOf(pot)}: ` : ''}
      {said.say}
    </Strip>
  )
}

/** How long the strip stands; the undo itself stands until that pot's next act. */
const UNDO_STRIP_MS = 12_000

export function UndoStrip({ kitchen, stage }: Props): preact.JSX.Element | null {
  const { answered } = stage
  const last = answered.value
  useEffect(() => {
    if (!last) return
    const timer = setTimeout(() => (answered.value = null), UNDO_STRIP_MS)
    return () => clearTimeout(timer)
  }, [last, answered])
  const pot = last ? livePots(kitchen.pots.value).find((p) => p.potId === last.potId) : undefined
  if (!last || !pot?.state.undo) return null
  return (
    <Strip
      tone="info"
      actions={
        <Pad
          kind="lesser"
          layoutKey={`${last.potId} ${last.commandAtMs}`}
          label={`Undo for ${nameOf(pot)}`}
          onPress={() => void stage.send(last.potId, { type: 'Undo' })}
        >
          Undo
        </Pad>
      }
    >
      {nameOf(pot)}: {undoDone(pot.state)}. Written down.
    </Strip>
  )
}
