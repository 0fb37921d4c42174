import type { LivePot } from './live-pot.ts'
import type { PotEntry } from './ports.ts'
import { type Jump, owns, type Room } from './room.ts'

/** The jumps with one more. One back takes away from those forward, the clock was put right again; the hours of those
 * that are left are told by the clock of afterwards. */
export function withJump(jumps: readonly Jump[], { byMs, atMs }: Jump): Jump[] {
  if (byMs > 0) return [...jumps, { byMs, atMs }]
  let backMs = -byMs
  const left: Jump[] = []
  for (const jump of [...jumps].reverse()) {
    const taken = Math.min(backMs, Math.max(0, jump.byMs))
    backMs -= taken
    if (jump.byMs !== taken) left.unshift({ ...jump, byMs: jump.byMs - taken, atMs: jump.atMs + byMs })
  }
  return left
}

/** Leaves out the jumps that a person has answered for in another tab: one answer moves a pot once. */
export function unanswered(room: Room): Jump[] {
  let answeredAtMs = Number.NEGATIVE_INFINITY
  for (const { entries } of room.pots.values()) {
    for (const { event, by, recordedAtMs } of entries) {
      if (event.type === 'ClockShifted' && by.kind === 'person') answeredAtMs = Math.max(answeredAtMs, recordedAtMs)
    }
  }
  return room.jumps.filter((jump) => jump.atMs > answeredAtMs && !wasShifted(room, jump))
}

/** A tab that saw the clock being set back may store its shift only after another one was opened and asks. */
function wasShifted(room: Room, { byMs, shiftsBack }: Jump): boolean {
  return shiftsBack !== undefined && shiftsBackOf(room, byMs) > shiftsBack
}

/** How many shifts back by so much or more the journals hold, those still to be stored among them. */
export function shiftsBackOf(room: Room, byMs: number): number {
  let shifts = 0
  for (const { aheadEntries } of room.pots.values()) {
    for (const { event } of aheadEntries) if (event.type === 'ClockShifted' && event.byMs <= byMs) shifts += 1
  }
  return shifts
}

/** What a person is asked about: all that stands together, and when the latest of it was. Asked where it can be
 * carried out, and while there is a pot that it would move. */
export function jumpOf(room: Room): Jump | null {
  if (!owns(room)) return null
  const pots = [...room.pots.values()]
  const jumps = room.jumps.filter((jump) => pots.some((pot) => moves(pot, jump)))
  const last = jumps.at(-1)
  return last === undefined ? null : { byMs: jumps.reduce((sum, { byMs }) => sum + byMs, 0), atMs: last.atMs }
}

/** How far a pot is to be moved when the clock is said to have been set. */
export function sumFor(pot: LivePot, jumps: readonly Jump[]): number {
  return jumps.filter((jump) => moves(pot, jump)).reduce((sum, { byMs }) => sum + byMs, 0)
}

/** A jump back was found at a start of the app, and moves every pot. One forward moves those that were started before it
 * and on which nobody has acted since: who acts takes it that the time passed, and what they set goes by the new clock. */
function moves({ ahead, aheadEntries }: LivePot, { byMs, atMs }: Jump): boolean {
  if (ahead.status !== 'running' && ahead.status !== 'held') return false
  return byMs < 0 || (ahead.startedAtMs < atMs && !aheadEntries.some((entry) => isAct(entry, atMs)))
}

function isAct({ by, event, recordedAtMs }: PotEntry, sinceMs: number): boolean {
  if (by.kind === 'clock' || event.type === 'ClockShifted' || event.type === 'CautionShown') return false
  return recordedAtMs >= sinceMs
}
