// A pot in memory, twice: as it is stored, and carried on by what is not stored yet. Only the first is shown as done;
// alarms and the next decision go by the second.

import { fold } from '../core/pot/fold.ts'
import { readEntries } from '../core/pot/read-entry.ts'
import type { PotState } from '../core/pot/state.ts'
import type { PotEntry } from './ports.ts'

export type LivePot = {
  potId: string
  streamId: string
  entries: PotEntry[]
  state: PotState
  aheadEntries: PotEntry[]
  ahead: PotState
  readOnly: string | null
  /** As they came from the store, while their checksums are still to be looked at; null: they were. */
  unchecked: readonly unknown[] | null
}

export function streamOf(potId: string): string {
  return `pot/${potId}`
}

export function newPot(potId: string): LivePot {
  const idle: PotState = { status: 'idle' }
  return {
    potId,
    streamId: streamOf(potId),
    entries: [],
    state: idle,
    aheadEntries: [],
    ahead: idle,
    readOnly: null,
    unchecked: null
  }
}

/** Opens a pot from its stored journal. What can't be read makes it read-only; what can be read still calls. `sums` false:
 * its checksums are looked at later, for calls come before that; nothing is written to it until they were. */
export function openPot(potId: string, raw: readonly unknown[], sums = true): LivePot {
  const { entries, damaged, unknown } = readEntries(raw, sums)
  let readOnly: string | null = null
  if (unknown) readOnly = 'A newer Strandline wrote in this record. It can be read here, not changed.'
  const first = damaged[0]
  if (first !== undefined) {
    const more = damaged.length > 1 ? ` and ${damaged.length - 1} more` : ''
    readOnly = `Entry ${first.index + 1} of this record is damaged (${first.why})${more}. It can be read, not changed.`
  }
  try {
    const state = fold(entries)
    const unchecked = sums ? null : raw
    return {
      potId,
      streamId: streamOf(potId),
      entries,
      state,
      aheadEntries: entries,
      ahead: state,
      readOnly,
      unchecked
    }
  } catch (error) {
    // One record that can't be folded must not keep the other pots from opening.
    return { ...newPot(potId), entries, aheadEntries: entries, readOnly: brokenPot(error) }
  }
}

/** Looks at the checksums that were left out at the opening; true: something is damaged, and the pot is as far as it can
 * be read. */
export function checkSums(pot: LivePot): boolean {
  const { potId, unchecked } = pot
  if (unchecked === null) return false
  pot.unchecked = null
  if (readEntries(unchecked).damaged.length === readEntries(unchecked, false).damaged.length) return false
  Object.assign(pot, openPot(potId, unchecked))
  return true
}

export function brokenPot(error: unknown): string {
  const why = error instanceof Error ? error.message : String(error)
  return `This pot can't be worked out (${why}). Time it by hand.`
}

/** What was carried on ahead is stored now. */
export function settled(pot: LivePot): void {
  pot.entries = pot.aheadEntries
  pot.state = pot.ahead
}
