// When a bath is expected at a temperature. An expectation moves what is drawn and said, never what is due.
import type { CannotTellCode } from '../../chemistry/heating/answer.ts'

/** What an expected time rests on. */
export type Grounds =
  /** `sinceMs`: the first of the readings that count. */
  | { by: 'readings'; count: number; sinceMs: number }
  /** `pot`: they were of the same pot too, not only of the same burner. */
  | { by: 'batches'; count: number; pot: boolean }
  | { by: 'rate' }

/** Why the readings alone tell no time. `leastMs`: not before that, if at all. */
export type Doubt = { code: CannotTellCode; leastMs: number | null }

/** `mostMs` null: it may also be that it is never reached. */
export type ExpectedAt = {
  kind: 'at'
  atMs: number
  leastMs: number
  mostMs: number | null
  grounds: Grounds
  /** How many readings count so far, and why they tell nothing yet; null: they tell, or there are none. */
  readings: number
  doubt: Doubt | null
}

/** never: every way that the readings leave plausible levels off before. */
export type Outcome = ExpectedAt | { kind: 'never'; readings: number }

export type Expectation = Outcome & { targetC: number; going: 'up' | 'down' }

/** By the path of an open step. */
export type Expectations = Readonly<Record<string, Expectation>>
