import { trunkOf } from '../pot/branches.ts'
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'

type PotEntry = Entry<PotEvent>

export type Branch = {
  /** The whole way from the start to its end: a journal of its own. */
  entries: readonly PotEntry[]
  /** The first entry that only this branch has; null: there is but one branch, or it is the trunk. */
  own: PotEntry | null
}

/** The ways a batch went that was continued on several devices: the trunk first, then each other one. */
export function branchesOf(all: readonly PotEntry[]): Branch[] {
  const trunk = trunkOf(all)
  const found: Branch[] = [{ entries: trunk.entries, own: null }]
  for (const { from, entries: own } of trunk.sides) {
    const shared = from === null ? [] : trunk.entries.slice(0, trunk.entries.indexOf(from) + 1)
    // A branch may part again.
    for (const { entries } of branchesOf([...shared, ...own])) found.push({ entries, own: own[0] ?? null })
  }
  return found
}
