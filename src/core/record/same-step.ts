// Which steps of several batches are the same step. Of one protocol: the same path. Of different ones: the same label,
// counted, for paths mean nothing across protocols.
import type { BatchRecord, StepRecord } from './record.ts'

export type MetStep = { key: string; step: StepRecord }

export function sameProtocol(records: readonly BatchRecord[]): boolean {
  return records.every(({ protocol }) => protocol.text === records[0]?.protocol.text)
}

/** The steps of one record with the key under which the others have theirs. What was done once more counts as more of
 * the same. */
export function metSteps(record: BatchRecord, byPath: boolean): MetStep[] {
  const counts = new Map<string, number>()
  return record.steps.map((step) => {
    const name = byPath ? step.path : step.label
    const count = (counts.get(name) ?? 0) + 1
    counts.set(name, count)
    return { key: count === 1 ? name : `${name} #${count}`, step }
  })
}

/** All keys, in the order in which the steps came where batches agree on it. */
export function stepKeys(all: readonly MetStep[][]): { key: string; label: string }[] {
  const keys: { key: string; label: string }[] = []
  for (const met of all) {
    let at = 0
    for (const { key, step } of met) {
      const known = keys.findIndex((each) => each.key === key)
      if (known >= 0) at = known + 1
      else {
        const again = / #(\d+)$/.exec(key)?.[1]
        keys.splice(at, 0, { key, label: again === undefined ? step.label : `${step.label}, ${again}` })
        at += 1
      }
    }
  }
  return keys
}
