import { giveWay, mediaOf } from './carried-media.ts'
import { enactAgain } from './enact.ts'
import { openPot, settled, streamOf } from './live-pot.ts'
import type { AppendFailure, PotSummary } from './ports.ts'
import type { Room } from './room.ts'
import { summaryOf } from './summary.ts'

/** Conflicts in a row before it is called lost: with one owner there is at most one. */
const CONFLICTS_MOST = 5

/** Stores all that waits in one transaction. Only when it is complete does the state change that the screens see. */
export async function store(room: Room): Promise<AppendFailure | null> {
  for (let conflicts = 0; conflicts < CONFLICTS_MOST; conflicts++) {
    const written = room.pending
    if (written.length === 0) return done(room, [])
    room.triedAtMs = room.options.clock.nowMs()
    const potIds = touched(room)
    const answer = await room.options.journal.append(
      written.flatMap(({ entries }) => entries),
      summariesOf(room, potIds),
      mediaOf(written)
    )
    if (answer.ok) {
      room.pending = []
      return done(room, potIds)
    }
    const takeBack = answer.why === 'full' ? giveWay(room) : null
    if (answer.why !== 'conflict' && takeBack === null) return failed(room, answer)
    const unread = await reread(room, potIds)
    if (unread !== null) {
      takeBack?.()
      return failed(room, unread)
    }
  }
  return failed(room, { ok: false, why: 'lost', say: 'Another tab keeps writing to the same pot. Close it.' })
}

/** Reads pots from the journal again, with every pot that something waits for, and decides what waits once more. */
export async function reread(room: Room, potIds: string[]): Promise<AppendFailure | null> {
  const all = [...new Set([...potIds, ...touched(room)])]
  try {
    const streams = await Promise.all(all.map((potId) => room.options.journal.read(streamOf(potId))))
    all.forEach((potId, at) => {
      room.pots.set(potId, openPot(potId, streams[at] ?? []))
    })
  } catch (error) {
    return unreadable(error)
  }
  enactAgain(room)
  return null
}

export function unreadable(error: unknown): AppendFailure {
  const why = error instanceof Error ? error.message : String(error)
  return { ok: false, why: 'lost', say: `The journal can't be read (${why}).` }
}

export function failed(room: Room, failure: AppendFailure): AppendFailure {
  room.failure = failure
  room.changed()
  return failure
}

function done(room: Room, potIds: string[]): null {
  for (const potId of potIds) {
    const pot = room.pots.get(potId)
    if (pot !== undefined) settled(pot)
  }
  room.failure = null
  room.changed()
  if (potIds.length > 0) room.options.onStored?.(potIds)
  return null
}

function touched(room: Room): string[] {
  return [...new Set(room.pending.flatMap(({ parts }) => parts.map(({ potId }) => potId)))]
}

function summariesOf(room: Room, potIds: string[]): PotSummary[] {
  const summaries: PotSummary[] = []
  for (const potId of potIds) {
    const pot = room.pots.get(potId)
    const summary = pot === undefined ? null : summaryOf(pot.streamId, pot.ahead, pot.aheadEntries)
    if (summary !== null) summaries.push(summary)
  }
  return summaries
}
