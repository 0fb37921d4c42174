// An alert in one line, and the moment it speaks of.
import type { Alert } from '../../../core/pot/due.ts'
import { gapLimit } from '../../../core/pot/next-due.ts'
import type { LiveState } from '../../../core/pot/state.ts'
import type { Gap } from '../../../core/protocol/model.ts'
import { stepAt, stepsOf } from '../../../core/protocol/tree.ts'
import { calledBy } from './asks.ts'
import { stepAfter } from './live.ts'

/** One line for a strip: the act. */
export function alertSay(state: LiveState, alert: Alert): string {
  switch (alert.kind) {
    case 'call':
    case 'look':
    case 'outOfBath':
    case 'finish':
      return calledBy(state, alert).act
    case 'headsUp':
      return `Soon: ${soonSay(state, alert.path)}`
    case 'gap': {
      const gap = gapOf(state, alert)
      return gap ? `${knotFor(state, gap.to)}: its limit runs out` : 'A limit runs out'
    }
    case 'heat':
      return 'Its time at heat is over. Stopped, still dyeing'
  }
}

/** When the act is due or the limit runs out; some alerts come ahead of it. */
export function alertMomentMs(state: LiveState, alert: Alert): number {
  switch (alert.kind) {
    case 'call':
    case 'look':
    case 'heat':
    case 'finish':
      return alert.atMs
    case 'headsUp':
      return state.active.find((a) => a.path === alert.path)?.dueAtMs ?? alert.atMs
    case 'outOfBath':
      return state.outLimitAtMs ?? alert.atMs
    case 'gap': {
      const gap = gapOf(state, alert)
      return (gap && gapLimit(state, gap)) ?? alert.atMs
    }
  }
}

function soonSay(state: LiveState, path: string | null): string {
  const active = state.active.find((a) => a.path === path)
  const step = path === null ? null : stepAt(state.programme, path)
  const after = active && step ? stepAfter(state, active, step) : null
  return after?.call ?? 'hands wanted'
}

/** The key of a gap's alert names both its moments: next-due.ts. */
function gapOf(state: LiveState, alert: Alert): Gap | null {
  return state.programme.gaps.find((gap) => alert.key.startsWith(`gap ${gap.from} > ${gap.to} `)) ?? null
}

function knotFor(state: LiveState, moment: string): string {
  return stepsOf(state.programme).find((s) => s.id === moment || s.marks.includes(moment))?.knot ?? moment
}
