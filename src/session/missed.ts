import type { Due } from '../core/pot/due.ts'
import type { PotState } from '../core/pot/state.ts'
import { lateRuleOf } from '../core/pot/timing.ts'
import type { LateRule } from '../core/protocol/model.ts'
import { stepAt } from '../core/protocol/tree.ts'
import type { Missed } from './types.ts'

/** A moment that passed while nobody looked, in words; null for one that asked for nobody. */
export function missedOf(potId: string, state: PotState, due: Due, nowMs: number): Missed | null {
  if (state.status === 'idle' || due.kind === 'close' || due.kind === 'headsUp') return null
  const step = due.path === null ? null : stepAt(state.programme, due.path)
  const active = state.active.find(({ path }) => path === due.path)
  const isLate = typeof active?.lateAfterMs === 'number' && nowMs > active.lateAfterMs
  return {
    potId,
    colourway: state.pot.colourway,
    path: due.path,
    what: due.kind === 'call' && step !== null ? step.call : words[due.kind],
    dueAtMs: due.atMs,
    byMs: nowMs - due.atMs,
    late: due.kind === 'call' && step !== null && isLate ? lateWords[lateRuleOf(state.programme, step)] : ''
  }
}

const words: Record<Exclude<Due['kind'], 'close' | 'headsUp'>, string> = {
  call: 'Hands wanted',
  outOfBath: 'The yarn was out of the bath too long',
  gap: 'Two acts that belong together drew apart',
  look: 'Look at the water level',
  heat: 'The hold at heat reached its end',
  finish: 'All steps are done'
}

const lateWords: Record<LateRule, string> = {
  shift: 'What follows moves by the lateness.',
  absorb: 'The next wait shrinks, never under its least.',
  'off-protocol': 'Late marks this batch off-protocol.'
}
