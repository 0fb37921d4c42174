import { trunkOf } from '../core/pot/branches.ts'
import type { CommandHeader } from '../core/pot/commands.ts'
import { ENTRY_VERSION } from '../core/pot/entry.ts'
import type { PotEvent } from '../core/pot/events.ts'
import { evolve } from '../core/pot/evolve.ts'
import { fold } from '../core/pot/fold.ts'
import type { PotState } from '../core/pot/state.ts'
import { sealEntry } from '../core/pot/write-entry.ts'
import type { LivePot } from './live-pot.ts'
import type { ClockPort, IdPort, PotEntry } from './ports.ts'

/** Carries a pot on by decided events, in memory, and gives the sealed entries that are still to be stored. */
export function writeAhead(
  pot: LivePot,
  events: readonly PotEvent[],
  header: CommandHeader,
  from: { clock: ClockPort; ids: IdPort; recordedAtMs: number }
): PotEntry[] {
  const { clock, ids, recordedAtMs } = from
  const { writerId } = ids
  let seq = lastSeqOf(pot.aheadEntries, writerId)
  const last = trunkOf(pot.aheadEntries).head
  let after = last === undefined ? null : { writerId: last.writerId, seq: last.seq }
  const entries = events.map((event): PotEntry => {
    seq += 1
    const entry = sealEntry<PotEvent>({
      v: ENTRY_VERSION,
      streamId: pot.streamId,
      writerId,
      seq,
      after,
      commandId: header.commandId,
      atMs: header.atMs,
      recordedAtMs,
      bootId: clock.bootId,
      monoMs: clock.monoMs(),
      tzOffsetMin: clock.tzOffsetMin(recordedAtMs),
      by: header.by,
      event
    })
    after = { writerId, seq }
    return entry
  })
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

function lastSeqOf(entries: readonly PotEntry[], writerId: string): number {
  for (let at = entries.length - 1; at >= 0; at--) {
    const entry = entries[at]
    if (entry?.writerId === writerId) return entry.seq
  }
  return 0
}
