import type { By } from '../core/pot/events.ts'
import { enact } from './enact.ts'
import { brokenPot, checkSums, type LivePot } from './live-pot.ts'
import type { Room } from './room.ts'

/** Moves the open deadlines of the pots by what `byMsOf` says for each. Stamped with what the clock would have
 * shown without the jump: by the new time, a pot set back far enough would not have been started yet. */
export function shiftClock(room: Room, byMsOf: (pot: LivePot) => number, by: By): void {
  const commandId = room.options.ids.newId()
  for (const [potId, pot] of room.pots) {
    checkSums(pot)
    const { ahead } = pot
    if (pot.readOnly !== null || (ahead.status !== 'running' && ahead.status !== 'held')) continue
    const byMs = byMsOf(pot)
    if (byMs === 0) continue
    const atMs = room.options.clock.nowMs() - byMs
    try {
      enact(room, [{ potId, command: { type: 'ShiftClock', byMs } }], { commandId, atMs, by })
    } catch (error) {
      pot.readOnly = brokenPot(error)
    }
  }
}
