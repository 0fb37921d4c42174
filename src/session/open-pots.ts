import { enactAgain, passAll } from './enact.ts'
import { shiftsBackOf, unanswered } from './jumps.ts'
import { type LivePot, openPot } from './live-pot.ts'
import type { PotEntry } from './ports.ts'
import { owns, type Room } from './room.ts'
import { store } from './store.ts'
import { unreadable } from './unreadable.ts'

/** Behind the last entry by more than this, the clock was set while nobody looked. */
const BEHIND_MS = 2_000

/** Reads the live pots, catches up, and stores what passed. Where the journal can't be read, `room.unread` says so. */
export async function openPots(room: Room): Promise<void> {
  const { journal, clock } = room.options
  const waiting = room.pending.flatMap(({ parts }) => parts.map(({ potId }) => potId))
  try {
    const live = await journal.live()
    const potIds = [...new Set([...live.map(({ potId }) => potId), ...waiting])]
    const streamIdOf = (potId: string): string =>
      live.find((summary) => summary.potId === potId)?.streamId ?? `pot/${potId}`
    // Each is worked out as it comes, while the store still fetches the next.
    const open = async (potId: string): Promise<LivePot> => openPot(potId, await journal.read(streamIdOf(potId)), false)
    const opened = await Promise.all(potIds.map(open))
    room.pots = new Map(opened.map((pot) => [pot.potId, pot]))
    room.alerts = new Map()
  } catch (error) {
    room.unread = unreadable(error)
    room.changed()
    return
  }
  room.unread = null
  room.jumps = unanswered(room)
  enactAgain(room)
  const nowMs = clock.nowMs()
  // With what this tab has still to store: its own shift answers the question.
  const lastMs = Math.max(...[...room.pots.values()].map(({ aheadEntries }) => lastHourOf(aheadEntries, clock.bootId)))
  if (nowMs < lastMs - BEHIND_MS) {
    const byMs = nowMs - lastMs
    room.jumps = [{ byMs, atMs: nowMs, shiftsBack: shiftsBackOf(room, byMs) }]
  }
  if (owns(room)) {
    passAll(room, room.pots.values(), nowMs)
    await store(room)
  }
}

/** The latest hour that a pot's entries tell of, by the clock as it was last set. Not of the last entry alone: what was
 * written by a clock that nobody said was set would hide that it was. */
function lastHourOf(entries: readonly PotEntry[], bootId: string): number {
  let lastMs = 0
  let answeredElsewhere = false
  for (const { event, atMs, recordedAtMs, bootId: writtenBy } of entries) {
    if (event.type === 'ClockShifted') {
      lastMs = recordedAtMs
      answeredElsewhere = writtenBy !== bootId
      continue
    }
    // What this tab had still to store when another one answered for the set clock bears the hours of before.
    if (answeredElsewhere && writtenBy === bootId) continue
    lastMs = Math.max(lastMs, atMs, recordedAtMs)
  }
  return lastMs
}
