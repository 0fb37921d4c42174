// What a batch asks of its dyer through the day, in time: as planned from its real start, and what is done of it.
import type { Amount, Step } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'
import { planOf } from './plan.ts'
import type { BatchRecord } from './record.ts'

export type DayAct = {
  path: string
  /** When it is to begin. */
  atMs: number
  /** The act in a call: "Lower band 5". */
  call: string
  /** Its name on the strand: "Band 5". */
  label: string
  amount: Amount | null
  /** Null: not done yet, or passed over. */
  doneAtMs: number | null
}

/** Every act of the likely way that wants a person, in the order of its time. A step that was passed over is none, and
 * once a batch has ended neither is what it did not come to. */
export function dayActs(record: BatchRecord): DayAct[] {
  const { programme, identity, steps } = record
  const ended = identity.endedAtMs !== null
  const met = new Map(steps.filter((step) => !step.side).map((step) => [step.path, step]))
  return [...planOf(programme, identity.startedAtMs)]
    .flatMap(([path, { startMs }]): DayAct[] => {
      const step = stepAt(programme, path)
      const done = met.get(path)
      if (!step || !isAct(step) || done?.how === 'skipped' || (ended && !done)) return []
      const { call, knot: label, dose } = step
      return [{ path, atMs: startMs, call, label, amount: dose?.amount ?? null, doneAtMs: done?.endMs ?? null }]
    })
    .sort((a, b) => a.atMs - b.atMs)
}

/** A wait is none, whatever ends it; turning the heat up is one. */
function isAct({ behaviour }: Step): boolean {
  return behaviour !== 'wait'
}
