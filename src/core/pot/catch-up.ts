import { decide } from './decide.ts'
import { evolve } from './evolve.ts'
import { nextDue } from './next-due.ts'
import type { PotState } from './state.ts'

/** More due moments than this at once is a fault, not a schedule. */
const MOMENTS_MOST = 5_000

/** The state carried on in memory to `nowMs`: every due moment passed in order, each at its own time. For alarms, which
 * never wait for a write; what is shown as done comes from the journal alone. */
export function lookAhead(state: PotState, nowMs: number): PotState {
  let ahead = state
  for (let i = 0; i < MOMENTS_MOST; i++) {
    const due = nextDue(ahead)[0]
    if (!due || due.atMs > nowMs) return ahead
    const header = { commandId: `clock:${due.key}`, atMs: due.atMs, by: { kind: 'clock' } as const }
    const decision = decide(ahead, { type: 'PassDue', key: due.key }, header)
    if (!decision.ok) return ahead
    for (const event of decision.events) {
      ahead = evolve(ahead, event, { ...header, ref: { writerId: '', seq: 0 } })
    }
  }
  return ahead
}
