// The course of a pot as a whole: start, hold and resume, trouble, a clock that was set, the end.
import type { Step } from '../../protocol/model.ts'
import { stepAt } from '../../protocol/tree.ts'
import { startSequence } from '../advance.ts'
import type { PotCommand, Refusal } from '../commands.ts'
import type { BathFate } from '../events.ts'
import type { ActiveStep, LiveState, PotState } from '../state.ts'
import { refuse, type Telling } from '../tell.ts'

type Of<T extends PotCommand['type']> = Extract<PotCommand, { type: T }>

export function start(t: Telling, state: PotState, command: Of<'Start'>): Refusal | null {
  if (state.status !== 'idle') {
    if (state.heard.includes(t.header.commandId)) return null
    return refuse('already-started', 'This pot runs already.').refusal
  }
  const { pot, protocol, programme, checks, cautionsShown, numbers } = command
  const known = { pot, protocol, programme, checks, cautionsShown }
  t.tell({ type: 'PotStarted', ...known, ...(numbers && { numbers }) })
  if (!startSequence(t, programme.steps)) t.tell({ type: 'StepsDone' })
  return null
}

export function hold(t: Telling, state: LiveState, reason: string | null): Refusal | null {
  if (state.status === 'held') return refuse('already-held', 'The procedure is stopped already.').refusal
  t.tell({ type: 'Held', reason })
  return null
}

/** Deadlines stood while the procedure was stopped. Where the held time does not count, what was still counting then
 * moves by it; limits of the chemistry (out of the bath, gaps) never do. */
export function resume(t: Telling, state: LiveState, heldTimeCounts: boolean): Refusal | null {
  if (state.status !== 'held') return refuse('not-held', 'The procedure is not stopped.').refusal
  const heldMs = Math.max(0, t.atMs - state.heldSinceMs)
  t.tell({ type: 'Resumed', heldTimeCounts, heldMs })
  if (heldTimeCounts) return null
  for (const active of state.active) {
    const step = stepAt(state.programme, active.path)
    if (step?.wait || step?.ramp) leaveOut(t, active, state.heldSinceMs, heldMs)
  }
  return null
}

/** What was still counting at `fromMs` counts on after `forMs`. */
function leaveOut(t: Telling, active: ActiveStep, fromMs: number, forMs: number): void {
  const later = (at: number | null): number | null => (at !== null && at > fromMs ? at + forMs : at)
  const dueAtMs = later(active.dueAtMs)
  const timeDueAtMs = later(active.timeDueAtMs)
  if (dueAtMs === active.dueAtMs && timeDueAtMs === active.timeDueAtMs) return
  const { path, remainingMs } = active
  const lateAfterMs = dueAtMs === active.dueAtMs ? active.lateAfterMs : later(active.lateAfterMs)
  t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, lateAfterMs, remainingMs, why: 'held', reason: null })
}

export function settleTrouble(t: Telling, state: LiveState, command: Of<'SettleTrouble'>): Refusal | null {
  if (!state.trouble) return refuse('not-in-trouble', 'No trouble is open for this pot.').refusal
  const { beganAtMs, tempC, outcome } = command
  if (beganAtMs > t.atMs) return refuse('in-the-future', 'It cannot have begun later than now.').refusal
  t.tell({ type: 'TroubleEnded', beganAtMs, tempC, outcome })
  if (tempC !== null) t.tell({ type: 'TemperatureRead', path: null, tempC, inRange: null })
  if (outcome === 'off-protocol') t.tell({ type: 'WentOffProtocol', path: null, why: `trouble: ${state.trouble.kind}` })
  if (outcome !== 'restart-step') return null
  for (const active of state.active) {
    const step = stepAt(state.programme, active.path)
    if (step) restart(t, active, step)
  }
  return null
}

/** A wait counts its whole time again from now, a ramp its whole heating; one whose moment has not come has not begun. */
function restart(t: Telling, active: ActiveStep, step: Step): void {
  const { path, absorbedMs, timeDueAtMs: was, dueAtMs: due, startedAtMs } = active
  const counts = was !== null || active.remainingMs !== null
  if (!step.ramp && !(step.wait && (counts || due !== null))) return
  const timeDueAtMs = counts && step.wait?.forMs ? t.atMs + step.wait.forMs - absorbedMs : null
  const dueAtMs = due === null ? null : (timeDueAtMs ?? t.atMs + Math.max(0, due - startedAtMs))
  const more = { lateAfterMs: null, remainingMs: null, why: 'trouble', reason: null } as const
  t.tell({ type: 'DueMoved', path, dueAtMs, timeDueAtMs, ...more })
}

export function finish(t: Telling, state: LiveState, bath: BathFate): Refusal | null {
  if (!state.stepsDone) return refuse('steps-left', 'Steps are left. End the batch early if it stops here.').refusal
  t.tell({ type: 'Finished', bath })
  return null
}

export function shiftClock(t: Telling, byMs: number): Refusal | null {
  if (!Number.isFinite(byMs) || byMs === 0) return refuse('out-of-range', 'The clock moved by nothing.').refusal
  t.tell({ type: 'ClockShifted', byMs })
  return null
}
