// Alerts are a level, not an edge: asked on every tick, wake and opening, so that an unanswered one sounds again.
import type { Step } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'
import type { Alert } from './due.ts'
import type { AlertKind } from './events.ts'
import { gapLimit, nextDue } from './next-due.ts'
import type { LiveState, PotState } from './state.ts'

/** A look at the water level, or heat left on with nothing to do, is late after this. Common practice, no source. */
const LOOK_LATE_MS = 2 * 60_000
const HEAT_LEFT_LATE_MS = 5 * 60_000
/** Heat on and a call that nobody answers for so long: whatever the call was, now the heat is at stake. Common practice,
 * no source. */
const HEAT_UNANSWERED_MS = 10 * 60_000

/** What wants a person now, most urgent first: it has come and is not answered. */
export function alertsDue(state: PotState, nowMs: number): Alert[] {
  if (state.status !== 'running' && state.status !== 'held') return []
  // Journalled or not makes no difference to the level: moments already raised are looked at as if they were not.
  const alerts: Alert[] = []
  for (const due of nextDue({ ...state, raised: {} })) {
    if (due.kind === 'close' || due.atMs > nowMs) continue
    const step = due.path === null ? null : stepAt(state.programme, due.path)
    const lateAfter = lateAfterOf(state, due.kind, due.path, due.atMs)
    if (due.kind === 'headsUp' && nowMs >= (dueOf(state, due.path) ?? due.atMs)) continue
    const lateMs = lateAfter !== null && nowMs > lateAfter ? nowMs - due.atMs : 0
    const urgency = due.kind === 'headsUp' ? 'soon' : lateMs > 0 ? 'late' : 'now'
    const unanswered = state.heatOn && nowMs - due.atMs >= HEAT_UNANSWERED_MS && !step?.soft
    const escalates = atStake(state, due.kind, step) || (unanswered && due.kind !== 'headsUp')
    alerts.push({
      key: due.key,
      kind: due.kind,
      path: due.path,
      atMs: due.atMs,
      urgency,
      lateMs,
      escalates,
      soft: step?.soft ?? false
    })
  }
  return alerts.sort((a, b) => rank(a) - rank(b) || a.atMs - b.atMs)
}

function rank(alert: Alert): number {
  if (alert.kind === 'outOfBath') return 0
  if (alert.urgency === 'late') return alert.escalates ? 1 : 2
  if (alert.urgency === 'now') return alert.soft ? 4 : 3
  return 5
}

function dueOf(state: LiveState, path: string | null): number | null {
  return state.active.find((a) => a.path === path)?.dueAtMs ?? null
}

function lateAfterOf(state: LiveState, kind: AlertKind, path: string | null, atMs: number): number | null {
  switch (kind) {
    case 'call':
      return state.active.find((a) => a.path === path)?.lateAfterMs ?? null
    case 'outOfBath':
      return state.outLimitAtMs
    case 'gap':
      return firstGapLimit(state)
    case 'look':
      return atMs + LOOK_LATE_MS
    case 'heat':
      return atMs
    case 'finish':
      return state.heatOn ? atMs + HEAT_LEFT_LATE_MS : null
    case 'headsUp':
      return null
  }
}

function firstGapLimit(state: LiveState): number | null {
  const limits = state.programme.gaps.map((g) => gapLimit(state, g)).filter((at) => at !== null)
  return limits.length > 0 ? Math.min(...limits) : null
}

/** What gets worse while nobody answers: an acid addition, yarn out of the bath, a dry-out hazard, heat left on. */
function atStake(state: LiveState, kind: AlertKind, step: Step | null): boolean {
  switch (kind) {
    case 'outOfBath':
    case 'look':
    case 'gap':
    case 'heat':
      return true
    case 'finish':
      return state.heatOn
    case 'headsUp':
      return false
    case 'call': {
      if (!step || step.soft) return false
      const setOut = state.programme.setOut.find((s) => s.id === step.dose?.setOutId)
      return setOut?.kind === 'acid' || step.heat === 'off'
    }
  }
}
