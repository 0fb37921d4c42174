// What was found in journals, in a database of its own: derived only, so that losing it loses nothing, and nothing here
// can ever touch the journal.
import { createStore, setMany, values } from 'idb-keyval'
import type { Found } from '../../core/record/find.ts'

export type FoundStore = { all(): Promise<Found[]>; put(found: readonly Found[]): Promise<void> }

export function foundStore(database: string): FoundStore {
  const store = createStore(database, 'found')
  return {
    all: () => values<Found>(store),
    put: (found) =>
      setMany(
        found.map((each) => [each.potId, each]),
        store
      )
  }
}
