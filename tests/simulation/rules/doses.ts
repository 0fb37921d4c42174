// No acid is counted twice: one dose for one tap, one for each dose step done, and the state counts the same.
import type { PotState } from '../../../src/core/pot/state.ts'
import { stepAt } from '../../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../../src/session/ports.ts'

/** `held`: the entries that hold; `state`: the state shown for them. */
export function dosesBroken(held: readonly PotEntry[], state: PotState): string[] {
  if (state.status === 'idle') return []
  const broken: string[] = []
  const taps = new Set<string>()
  const dosed = new Map<string, number>()
  const closed = new Map<string, number>()
  let count = 0
  for (const { event, commandId } of held) {
    if (event.type === 'Dosed') {
      count += 1
      if (taps.has(commandId)) broken.push(`the tap ${commandId} put in two doses`)
      taps.add(commandId)
      if (event.path !== null) dosed.set(event.path, (dosed.get(event.path) ?? 0) + 1)
    }
    if (event.type === 'StepClosed' && event.how === 'done' && stepAt(state.programme, event.path)?.dose) {
      closed.set(event.path, (closed.get(event.path) ?? 0) + 1)
    }
  }
  for (const path of new Set([...dosed.keys(), ...closed.keys()])) {
    const [doses, times] = [dosed.get(path) ?? 0, closed.get(path) ?? 0]
    if (doses !== times) broken.push(`${path} was done ${times} times and dosed ${doses} times`)
  }
  if (state.doses.length !== count) broken.push(`the pot counts ${state.doses.length} doses, the journal ${count}`)
  return broken
}
