// What must be standing now, worked out from a state and the programme alone, without the engine's own list of moments.
import type { LiveState, PotState } from '../../../src/core/pot/state.ts'
import type { Step } from '../../../src/core/protocol/model.ts'
import { stepAt } from '../../../src/core/protocol/tree.ts'

export type Moment = {
  kind: 'call' | 'look' | 'heat' | 'outOfBath' | 'gap' | 'finish' | 'close'
  path: string | null
  atMs: number
}

/** Every moment that a live pot has coming or standing, heads-ups aside. */
export function momentsOf(state: PotState): Moment[] {
  if (state.status !== 'running' && state.status !== 'held') return []
  const stopped = state.status === 'held' || state.trouble !== null
  const moments: Moment[] = []
  for (const active of state.active) {
    const { path, dueAtMs, lookedAtMs, met } = active
    const step = stepAt(state.programme, path)
    if (!step) continue
    const lookAtMs = step.lookEveryMs === null ? null : lookedAtMs + step.lookEveryMs
    if (lookAtMs !== null && (dueAtMs === null || lookAtMs < dueAtMs))
      moments.push({ kind: 'look', path, atMs: lookAtMs })
    if (dueAtMs === null) continue
    if (active.remainingMs !== null || wantsPerson(state, step, met))
      moments.push({ kind: 'call', path, atMs: dueAtMs })
    else if (!stopped) moments.push({ kind: 'close', path, atMs: dueAtMs })
    else if (state.heatOn) moments.push({ kind: 'heat', path, atMs: dueAtMs })
  }
  return [...moments, ...limitsOf(state)]
}

function limitsOf(state: LiveState): Moment[] {
  const moments: Moment[] = []
  for (const { from, to, atMostMs } of state.programme.gaps) {
    const [begun, over] = [state.moments[from], state.moments[to]]
    if (atMostMs === null || begun === undefined || (over !== undefined && over >= begun)) continue
    moments.push({ kind: 'gap', path: null, atMs: Math.round(begun + atMostMs - Math.min(300_000, atMostMs / 5)) })
  }
  if (state.outLimitAtMs !== null && state.outSinceMs !== null) {
    const lead = Math.min(30_000, (state.outLimitAtMs - state.outSinceMs) / 3)
    moments.push({ kind: 'outOfBath', path: null, atMs: Math.round(state.outLimitAtMs - lead) })
  }
  if (state.stepsDone && state.active.length === 0) {
    const atMs = Math.max(state.startedAtMs, ...Object.values(state.ended))
    moments.push({ kind: 'finish', path: null, atMs })
  }
  return moments
}

/** Only a person can end it now: an act, a question, or a wait that lacks a condition. */
function wantsPerson(state: LiveState, step: Step, met: number[]): boolean {
  if (!step.wait) return true
  return step.wait.until.some((until, index) =>
    until.kind === 'moment' ? state.moments[until.name] === undefined : !met.includes(index)
  )
}
