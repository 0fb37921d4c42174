import type { CommandHeader, PotCommand, Refusal } from '../core/pot/commands.ts'
import { decide } from '../core/pot/decide.ts'
import type { Due } from '../core/pot/due.ts'
import type { PotEvent } from '../core/pot/events.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import { nextDue } from '../core/pot/next-due.ts'
import { brokenPot, checkSums, type LivePot, newPot } from './live-pot.ts'
import { missedOf } from './missed.ts'
import { passMoments } from './pass-moments.ts'
import type { PotEntry } from './ports.ts'
import type { Part, Pending, Room } from './room.ts'
import type { Missed } from './types.ts'
import { writeAhead } from './write-ahead.ts'

/** The drift and the rounding of two clocks. */
const AHEAD_MS = 2_000

/** What came of a command in memory. `pending` null: it was heard before, nothing is to be stored. */
export type Enacted = { ok: true; pending: Pending | null } | { ok: false; refusal: Refusal }

/** Decides a command on all its pots, and only if none refuses carries them on; what is to be stored waits in the room. */
export function enact(room: Room, parts: Part[], header: CommandHeader, media: MediaBytes[] = []): Enacted {
  const recordedAtMs = room.options.clock.nowMs()
  const known = room.pots.get(parts[0]?.potId ?? '')?.entries.length ?? 0
  const tried = attempt(room, parts, header, recordedAtMs)
  if (!tried.ok) return tried
  if (tried.entries.length === 0) return { ok: true, pending: null }
  const pending: Pending = { parts, header, recordedAtMs, entries: tried.entries, known, media, refusal: null }
  room.pending.push(pending)
  return { ok: true, pending }
}

/** Decides what is not stored yet again, after its pots were read anew. What is stored already is left out; what is now
 * refused says so and is left out: another writer's entries have made it untrue. */
export function enactAgain(room: Room): void {
  const waiting = room.pending
  room.pending = []
  for (const pending of waiting) {
    const parts = pending.parts.filter(
      (part) => !isStored(room, part, pending.header.commandId) && !wasShifted(room, part, pending)
    )
    restamp(room, pending)
    setBack(room, pending)
    const tried = attempt(room, parts, pending.header, pending.recordedAtMs)
    pending.entries = tried.ok ? tried.entries : []
    pending.refusal = tried.ok ? null : tried.refusal
    if (pending.entries.length > 0) room.pending.push(pending)
  }
}

/** A due moment carries its own time, which another writer's entries may have moved. */
function restamp(room: Room, pending: Pending): void {
  const [part] = pending.parts
  const command = part?.command
  if (part === undefined || command?.type !== 'PassDue') return
  const due = nextDue(potOf(room, part.potId).ahead).find(({ key }) => key === command.key)
  const nowMs = room.options.clock.nowMs()
  if (due === undefined || due.atMs > nowMs || due.atMs === pending.header.atMs) return
  pending.header = { ...pending.header, atMs: due.atMs }
  pending.recordedAtMs = nowMs
}

/** What was tapped by the hours before the clock was set back, and is stored after another tab has moved its pot, moves
 * with the pot: else its steps would begin hours ahead. */
function setBack(room: Room, pending: Pending): void {
  const [part] = pending.parts
  if (part === undefined || part.command.type === 'PassDue' || part.command.type === 'ShiftClock') return
  const { clock } = room.options
  // Nothing is told ahead of the clock: where it seems to be, it bears the hours of before.
  if (pending.recordedAtMs <= clock.nowMs() + AHEAD_MS) return
  let byMs = 0
  for (const { event, bootId: by } of room.pots.get(part.potId)?.entries.slice(pending.known) ?? []) {
    if (event.type === 'ClockShifted' && event.byMs < 0 && by !== clock.bootId) byMs += event.byMs
  }
  pending.header = { ...pending.header, atMs: pending.header.atMs + byMs }
  pending.recordedAtMs += byMs
}

/** Passes the due moments of the given pots up to now, in memory. */
export function passAll(room: Room, pots: Iterable<LivePot>, nowMs: number): void {
  const { missedLeastMs = 5_000, told } = room.options
  // What came while the page was away was told by nothing.
  const toldOf = ({ atMs }: Due): readonly string[] | undefined =>
    nowMs - atMs < missedLeastMs ? told?.() : told && []
  const missed: Missed[] = []
  for (const pot of pots) {
    if (pot.readOnly !== null) continue
    try {
      if (pot.unchecked !== null && nextDue(pot.ahead).some(({ atMs }) => atMs <= nowMs)) checkSums(pot)
      if (pot.readOnly !== null) continue
      passMoments(
        pot,
        nowMs,
        toldOf,
        (command, header, events) => waitToStore(room, pot, command, header, events),
        (due) => {
          if (nowMs - due.atMs < missedLeastMs) return
          const one = missedOf(pot.potId, pot.ahead, due, nowMs)
          if (one !== null) missed.push(one)
        }
      )
    } catch (error) {
      pot.readOnly = brokenPot(error)
    }
  }
  // A new list each time: one that is only added to looks unchanged to whoever holds it.
  if (missed.length > 0) room.missed = [...room.missed, ...missed].sort((a, b) => a.dueAtMs - b.dueAtMs)
}

function waitToStore(room: Room, pot: LivePot, command: PotCommand, header: CommandHeader, events: PotEvent[]): void {
  const recordedAtMs = room.options.clock.nowMs()
  const entries = write(room, pot, events, header, recordedAtMs)
  const known = pot.entries.length
  const parts = [{ potId: pot.potId, command }]
  room.pending.push({ parts, header, recordedAtMs, entries, known, media: [], refusal: null })
}

/** The pot of that id; a new idle one where there is none. */
export function potOf(room: Room, potId: string): LivePot {
  const known = room.pots.get(potId)
  if (known !== undefined) return known
  const fresh = newPot(potId)
  room.pots.set(potId, fresh)
  return fresh
}

type Attempt = { ok: true; entries: PotEntry[] } | { ok: false; refusal: Refusal }

function attempt(room: Room, parts: Part[], header: CommandHeader, recordedAtMs: number): Attempt {
  const decided: { pot: LivePot; events: PotEvent[] }[] = []
  for (const { potId, command } of parts) {
    const pot = potOf(room, potId)
    const decision = decide(pot.ahead, command, header)
    if (!decision.ok) return decision
    decided.push({ pot, events: decision.events })
  }
  const entries = decided.flatMap(({ pot, events }) => write(room, pot, events, header, recordedAtMs))
  return { ok: true, entries }
}

function write(room: Room, pot: LivePot, events: PotEvent[], header: CommandHeader, recordedAtMs: number): PotEntry[] {
  if (events.length === 0) return []
  const { clock, ids } = room.options
  return writeAhead(pot, events, header, { clock, ids, recordedAtMs })
}

/** A clock set back is answered once: by this tab, or by the person who was asked in another one before this could store
 * its own answer. What was shifted before this was decided answered for another time. */
function wasShifted(room: Room, { potId, command }: Part, { known }: Pending): boolean {
  if (command.type !== 'ShiftClock' || command.byMs > 0) return false
  const since = room.pots.get(potId)?.entries.slice(known) ?? []
  return since.some(({ bootId, event }) => bootId !== room.options.clock.bootId && event.type === 'ClockShifted')
}

/** A due moment names itself: undone and come again it has the name of before, and once passed it is due no more. */
function isStored(room: Room, { potId, command }: Part, commandId: string): boolean {
  if (command.type === 'PassDue') return false
  return room.pots.get(potId)?.entries.some((entry) => entry.commandId === commandId) ?? false
}
