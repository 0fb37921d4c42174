import { trunkOf } from '../core/pot/branches.ts'
import type { CommandHeader } from '../core/pot/commands.ts'
import type { PotEvent } from '../core/pot/events.ts'
import { evolve } from '../core/pot/evolve.ts'
import { fold } from '../core/pot/fold.ts'
import type { PotState } from '../core/pot/state.ts'
import type { LivePot } from './live-pot.ts'
import type { PotEntry } from './ports.ts'
import { sealAll, type Writing } from './seal-all.ts'

/** Carries a pot on by decided events, in memory, and gives the sealed entries that are still to be stored. */
export function writeAhead(
  pot: LivePot,
  events: readonly PotEvent[],
  header: CommandHeader,
  from: Writing
): PotEntry[] {
  const entries = sealAll(pot.streamId, pot.aheadEntries, events, header, from, trunkOf(pot.aheadEntries).head)
  carryOn(pot, entries)
  return entries
}

/** State and entries change together or, if the engine breaks over one of them, not at all: a count must have no gap. */
function carryOn(pot: LivePot, entries: readonly PotEntry[]): void {
  const all = [...pot.aheadEntries, ...entries]
  pot.ahead = stateAfter(pot.ahead, entries, all)
  pot.aheadEntries = all
}

function stateAfter(state: PotState, entries: readonly PotEntry[], all: readonly PotEntry[]): PotState {
  // An undo is the fold without what was withdrawn: it can't be had from the state alone.
  if (entries.some(({ event }) => event.type === 'Withdrawn')) return fold(all)
  let next = state
  for (const { event, atMs, commandId, by, writerId, seq } of entries) {
    next = evolve(next, event, { atMs, commandId, by, ref: { writerId, seq } })
  }
  return next
}
