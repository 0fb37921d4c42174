// Several batches laid along one another at a moment that all of them have.
import type { BatchRecord } from './record.ts'
import { type MetStep, metSteps, sameProtocol, stepKeys } from './same-step.ts'

/** `key` '': the start of the batch. */
export type Moment = { key: string; label: string }

export const startMoment: Moment = { key: '', label: 'the start' }

/** The moments that all batches have: the start, and each step that was done in all of them. */
export function commonMoments(records: readonly BatchRecord[]): Moment[] {
  const met = doneIn(records)
  const common = stepKeys(met).filter(({ key }) => met.every((each) => each.some((one) => one.key === key)))
  return [startMoment, ...common]
}

/** When that moment was in each batch; null where a batch does not have it. */
export function momentTimes(records: readonly BatchRecord[], key: string): (number | null)[] {
  if (key === startMoment.key) return records.map(({ identity }) => identity.startedAtMs)
  return doneIn(records).map((met) => met.find((one) => one.key === key)?.step.endMs ?? null)
}

/** The steps that were done, with the key under which the other batches have theirs. */
export function doneIn(records: readonly BatchRecord[]): MetStep[][] {
  const byPath = sameProtocol(records)
  return records.map((record) =>
    metSteps(record, byPath).filter(({ step }) => step.endMs !== null && step.how !== 'skipped')
  )
}
