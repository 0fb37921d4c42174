// A heads-up comes a minute before hands are wanted, after five quiet minutes and never else.
import type { PotState } from '../../../src/core/pot/state.ts'
import { sequenceOf, stepAt } from '../../../src/core/protocol/tree.ts'

const QUIET_MS = 5 * 60_000
const AHEAD_MS = 60_000

/** Paths of the waits that may, and of those that must have a heads-up standing now. */
export function headsUps(state: PotState, nowMs: number): { may: string[]; must: string[] } {
  const may: string[] = []
  const must: string[] = []
  if (state.status !== 'running' || state.trouble) return { may, must }
  for (const { path, dueAtMs, startedAtMs, lookedAtMs, side, met, remainingMs } of state.active) {
    const step = stepAt(state.programme, path)
    if (!step?.wait || dueAtMs === null || remainingMs !== null || side) continue
    const open = step.wait.until.some((u, i) => u.kind !== 'moment' && !met.includes(i))
    const standing = nowMs >= dueAtMs - AHEAD_MS && nowMs < dueAtMs
    if (open || !standing || dueAtMs - Math.max(startedAtMs, lookedAtMs) < QUIET_MS) continue
    may.push(path)
    const { siblings, index } = sequenceOf(state.programme, path)
    const next = siblings[index + 1]
    const waitsOn = step.wait.until.length > 0
    if (!waitsOn && next?.node === 'step' && !next.wait && !next.ramp) must.push(path)
  }
  return { may, must }
}
