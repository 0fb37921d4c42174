// Runs pots: takes commands, asks core, appends, publishes. Knows core and its own ports only.
import type { CommandHeader } from '../core/pot/commands.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import { mediaOf, notCarried } from './carried-media.ts'
import { enact, passAll } from './enact.ts'
import { jumpOf, sumFor, unanswered, withJump } from './jumps.ts'
import { checkSums } from './live-pot.ts'
import { openPots } from './open-pots.ts'
import type { AppendFailure, PotEntry } from './ports.ts'
import { type Queue, queue } from './queue.ts'
import { ring } from './ring.ts'
import { newRoom, owns, type Part, type Room, type SessionOptions } from './room.ts'
import { shiftClock } from './shift-clock.ts'
import { reread, store } from './store.ts'
import type { Outcome, PotView, SendOptions, Session } from './types.ts'

export type { SessionOptions } from './room.ts'

/** A failed write is tried again this often without anybody asking. */
const RETRY_MS = 5_000

export function createSession(options: SessionOptions): Session {
  const listeners = new Set<() => void>()
  const changed = (): void => {
    for (const listener of listeners) listener()
  }
  const room = newRoom(options, changed)
  const run = queue()
  const { open, wake, retry } = watchOf(room, run)
  const send = (parts: Part[], sent: SendOptions): Promise<Outcome> => take(room, run, parts, sent)
  let stopTicks: (() => void) | null = null
  return {
    pots: () => viewsOf(room),
    entriesOf: (potId) => room.pots.get(potId)?.entries ?? [],
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async open() {
      stopTicks ??= options.clock.onTick(() => void wake())
      await open()
      return room.missed
    },
    send: (potId, command, sent) => send([{ potId, command }], sent),
    sendBoth: (first, second, sent) => send([first, second], sent),
    wake,
    refresh: (potIds) => run(() => refresh(room, potIds)),
    missed: () => room.missed,
    dismissMissed() {
      room.missed = []
      changed()
    },
    notSaved: () => notSaved(room),
    retry,
    jump: () => jumpOf(room),
    declareClockSet: () => declareClockSet(room, run),
    dismissJump() {
      room.jumps = []
      changed()
    },
    close() {
      stopTicks?.()
      stopTicks = null
      listeners.clear()
    }
  }
}

/** Opening the pots and looking at the clock. */
function watchOf(room: Room, run: Queue): Pick<Session, 'wake' | 'retry'> & { open(): Promise<void> } {
  let waking: Promise<void> | null = null
  const open = async (): Promise<void> => {
    // A tab that was frozen while another owned the pots has not seen what that one shifted: the journal tells.
    room.watch.look()
    await run(() => openPots(room))
    ring(room)
    room.changed()
  }
  return {
    open,
    wake() {
      observe(room, run)
      checkNext(room)
      ring(room)
      if (!owns(room) && room.unread === null) return Promise.resolve()
      waking ??= run(() => tend(room)).finally(() => {
        waking = null
      })
      return waking
    },
    async retry() {
      if (room.unread !== null) await open()
      else if (owns(room)) await run(() => store(room))
    }
  }
}

function take(room: Room, run: Queue, parts: Part[], sent: SendOptions): Promise<Outcome> {
  observe(room, run)
  // The time of the tap, not of its turn in the queue.
  const nowMs = room.options.clock.nowMs()
  const commandId = sent.commandId ?? room.options.ids.newId()
  const header = { commandId, atMs: nowMs - (sent.agoMs ?? 0), by: sent.by }
  return run(() => perform(room, parts, header, { nowMs, media: sent.media ?? [] }))
}

/** One pot a look: all at once would hold up the first drawing. */
function checkNext(room: Room): void {
  for (const pot of room.pots.values()) {
    if (pot.unchecked === null) continue
    if (checkSums(pot)) room.changed()
    return
  }
}

/** Looks for a jump of the clock. Back: it was set, and open deadlines move with it. Forward: presume that the time
 * passed, alert, and let a person say that the clock was set. */
function observe(room: Room, run: Queue): void {
  const byMs = room.watch.look()
  if (byMs === 0) return
  const atMs = room.options.clock.nowMs()
  room.jumps = withJump(room.jumps, { byMs, atMs })
  // Of a journal that is not read yet only some pots are known: the question at its opening is for all of them.
  if (byMs < 0 && owns(room) && room.unread === null) {
    room.unshiftedMs += byMs
    void run(async () => {
      shiftClock(room, () => byMs, { kind: 'clock' })
      room.unshiftedMs -= byMs
      await store(room)
    })
  }
  room.changed()
}

/** The clock's part: due moments are passed and stored; what could not be stored or read is tried again now and then. */
async function tend(room: Room): Promise<void> {
  const nowMs = room.options.clock.nowMs()
  if (room.unread !== null && Math.abs(nowMs - room.triedAtMs) >= RETRY_MS) {
    room.triedAtMs = nowMs
    await openPots(room)
    ring(room)
  }
  if (!owns(room)) return
  const before = room.pending.length
  passAll(room, room.pots.values(), nowMs)
  if (room.pending.length === 0) return
  const tryNow = room.failure === null || room.pending.length > before || Math.abs(nowMs - room.triedAtMs) >= RETRY_MS
  if (!tryNow) return
  await store(room)
  ring(room)
}

type Brought = { nowMs: number; media: MediaBytes[] }

async function perform(room: Room, parts: Part[], header: CommandHeader, brought: Brought): Promise<Outcome> {
  const { nowMs, media } = brought
  if (!owns(room)) return { ok: false, why: 'not-owner' }
  const lacking = notCarried(parts, media)
  if (lacking !== null) return { ok: false, why: 'refused', refusal: lacking }
  const unread = await readMissing(room, parts)
  if (unread !== null) return { ok: false, why: 'not-saved', failure: unread }
  const pots = parts.map(({ potId }) => room.pots.get(potId)).filter((pot) => pot !== undefined)
  for (const pot of pots) checkSums(pot)
  const locked = pots.find(({ readOnly }) => readOnly !== null)
  if (locked !== undefined) return { ok: false, why: 'read-only', say: locked.readOnly ?? '' }
  // A moment that came before the tap comes before it in the journal too, whoever was quicker.
  passAll(room, pots, nowMs)
  const enacted = enact(room, parts, header, media)
  // A tap that is repeated while the first one waits shares its fate.
  const waiting = room.pending.find((pending) => pending.header.commandId === header.commandId)
  const failure = await store(room)
  ring(room)
  if (failure !== null) return { ok: false, why: 'not-saved', failure }
  if (!enacted.ok) return { ok: false, why: 'refused', refusal: enacted.refusal }
  const refusal = waiting?.refusal ?? null
  if (refusal !== null) return { ok: false, why: 'refused', refusal }
  return { ok: true, entries: entriesOf(room, parts, header.commandId) }
}

/** A command may be for a pot that ended long ago: a note, a correction, a start that is sent once more. */
async function readMissing(room: Room, parts: Part[]): Promise<AppendFailure | null> {
  const missing = parts.map(({ potId }) => potId).filter((potId) => !room.pots.has(potId))
  return missing.length === 0 ? null : reread(room, missing)
}

async function refresh(room: Room, potIds: string[]): Promise<void> {
  // What another tab wrote and can't be read is asked for until it can: calls of old would go on.
  room.unread = (await reread(room, potIds)) ?? room.unread
  room.jumps = unanswered(room)
  ring(room)
  room.changed()
  // An owner of before may store late what is due by now: it is passed at once, not at the next look at the clock.
  await tend(room)
}

async function declareClockSet(room: Room, run: Queue): Promise<void> {
  const { jumps } = room
  if (jumps.length === 0 || !owns(room)) return
  room.jumps = []
  await run(async () => {
    shiftClock(room, (pot) => sumFor(pot, jumps), { kind: 'person', name: null, via: 'tap' })
    await store(room)
  })
  ring(room)
}

function entriesOf(room: Room, parts: Part[], commandId: string): PotEntry[] {
  const entries = parts.flatMap(({ potId }) => room.pots.get(potId)?.entries ?? [])
  return entries.filter((entry) => entry.commandId === commandId)
}

function notSaved(room: Room): ReturnType<Session['notSaved']> {
  const failure = room.failure ?? room.unread
  return failure === null
    ? null
    : { failure, entries: room.pending.flatMap(({ entries }) => entries), media: mediaOf(room.pending) }
}

function viewsOf(room: Room): PotView[] {
  const startOf = ({ state }: PotView): number => (state.status === 'idle' ? 0 : state.startedAtMs)
  return [...room.pots.values()]
    .filter(({ state, readOnly }) => state.status !== 'idle' || readOnly !== null)
    .map(({ potId, streamId, state, readOnly }) => ({
      potId,
      streamId,
      state,
      readOnly,
      alerts: room.alerts.get(potId) ?? []
    }))
    .sort((a, b) => startOf(a) - startOf(b) || (a.potId < b.potId ? -1 : 1))
}
