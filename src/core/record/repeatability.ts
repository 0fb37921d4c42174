// How well a set of batches repeats: how far times, amounts and lateness lie apart, step by step, and where the dyer is
// usually late.
import type { BatchRecord } from './record.ts'
import { metSteps, sameProtocol, stepKeys } from './same-step.ts'
import { type Spread, spreadOf } from './spread.ts'

export type StepSpread = {
  key: string
  label: string
  /** In how many batches it was done. */
  done: number
  /** How long it took. */
  tookMs: Spread | null
  /** How late it came, those on time counted as 0. */
  lateMs: Spread | null
  lateIn: number
  usuallyLate: boolean
  /** What went in, in one unit; null: it is no dose, or its batches measured in several units. */
  added: (Spread & { unit: 'mL' | 'g' | 'count'; of: string }) | null
}

export type Repeatability = {
  batches: number
  /** Do all of them run by the very same text? */
  sameText: boolean
  steps: StepSpread[]
  tookMs: Spread | null
}

/** Late in more than half of at least this many batches is usually late. Common practice, no source. */
const USUAL_LEAST = 3

export function repeatability(records: readonly BatchRecord[]): Repeatability {
  const sameText = sameProtocol(records)
  const met = records.map((record) => metSteps(record, sameText))
  const steps = stepKeys(met).map(({ key, label }): StepSpread => {
    const own = met.map((each) => each.find((one) => one.key === key)?.step)
    const done = own.flatMap((step) => (step && step.endMs !== null && step.how !== 'skipped' ? [step] : []))
    const lateIn = done.filter((step) => step.lateMs > 0).length
    const doses = records.flatMap((record, i) =>
      record.amounts.flatMap(({ path, fate, added, of }) =>
        added && fate === 'added' && path === own[i]?.path ? [{ ...added, of }] : []
      )
    )
    return {
      key,
      label,
      done: done.length,
      tookMs: spreadOf(done.map((step) => (step.endMs as number) - step.startMs)),
      lateMs: spreadOf(done.map((step) => step.lateMs)),
      lateIn,
      usuallyLate: done.length >= USUAL_LEAST && lateIn * 2 > done.length,
      added: spreadOfDoses(doses)
    }
  })
  const whole = records.flatMap(({ identity: { startedAtMs, endedAtMs } }) =>
    endedAtMs === null ? [] : [endedAtMs - startedAtMs]
  )
  return { batches: records.length, sameText, steps, tookMs: spreadOf(whole) }
}

function spreadOfDoses(
  doses: readonly { value: number; unit: 'mL' | 'g' | 'count'; of: string }[]
): StepSpread['added'] {
  const [first] = doses
  const spread = spreadOf(doses.map((dose) => dose.value))
  if (!first || !spread || doses.some((dose) => dose.unit !== first.unit)) return null
  return { ...spread, unit: first.unit, of: first.of }
}
