// The moment of an act is not the moment of the tap. What was counted down was done at the count: an answer soon after it,
// by a hand that had to come out of the bath first, takes the time of the count. A foot answers in the act: its press is
// the moment.
import type { LiveState } from '../../../core/pot/state.ts'
import { stepAt } from '../../../core/protocol/tree.ts'
import { BEAT_MS, isClockWait } from './live.ts'
import type { Via } from './stage.ts'

/** So long after the act's own hands-time an answer still means the count. Common practice, no source. */
const SOON_MS = 20_000

/** When the cue of that open act was, wall clock ms; null: it had none, or it is too long ago to be meant. `guided`: a
 * voice counts down to every act that the clock calls, not the beats alone. */
export function cueAtMs(state: LiveState, path: string, nowMs: number, guided: boolean): number | null {
  if (state.status !== 'running' || state.trouble !== null) return null
  const active = state.active.find((open) => open.path === path)
  const step = active && stepAt(state.programme, path)
  if (!active || !step || step.behaviour !== 'act' || step.soft) return null
  const atMs = active.startedAtMs
  if (nowMs < atMs || nowMs - atMs > step.hands.mostMs + SOON_MS) return null
  // What a hand ended early was not counted down to.
  const early = state.undo?.type === 'StepClosed' ? state.undo.path : null
  const counted = Object.entries(state.ended).some(([ended, endedAtMs]) => {
    const wait = endedAtMs === atMs && ended !== early ? stepAt(state.programme, ended) : null
    return wait !== null && isClockWait(wait) && (guided || (wait.wait?.forMs ?? BEAT_MS + 1) <= BEAT_MS)
  })
  return counted ? atMs : null
}

/** A pedal under the foot and a key under the elbow are pressed while the hands do it. */
export function pressesInTheAct(via: Via): boolean {
  return via === 'pedal' || via === 'key'
}
