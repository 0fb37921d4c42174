import type { Knot } from '../knot.ts'
import type { LiveState } from '../state.ts'
import type { Expectations } from './expectation.ts'

/** A knot at the time when a person is called to it: an open step calls when it is due, whatever is expected of it. */
export function asCalled(state: LiveState, knot: Knot, expected?: Expectations): Knot {
  const dueAtMs = state.active.find(({ path }) => path === knot.path)?.dueAtMs ?? null
  if (!knot.active || dueAtMs === null || !expected?.[knot.path]) return knot
  return { ...knot, atMs: dueAtMs, leastMs: dueAtMs, mostMs: dueAtMs }
}
