// A session on a table: a clock moved by hand, a journal in memory, a short programme.
import type { PotCommand } from '../../src/core/pot/commands.ts'
import type { By, PotEvent } from '../../src/core/pot/events.ts'
import type { Programme } from '../../src/core/protocol/model.ts'
import { createSession, type SessionOptions } from '../../src/session/create-session.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import type { Outcome, PotAlert, Session } from '../../src/session/types.ts'
import { type HandClock, handClock } from '../../src/shell/clock/hand-clock.ts'
import {
  type Fault,
  type MemoryJournal,
  type MemoryStore,
  memoryJournal,
  memoryStore
} from '../../src/shell/journal/memory-journal.ts'
import { identity, PERSON, T0 } from '../core/pot/given.ts'
import { act, dose, MIN, programme, wait } from '../core/pot/programmes.ts'

export { MIN, T0 }

/** soak 10 min -> acid 1 -> hold 20 min -> acid 2 -> hold 30 min -> heat off. */
export const shortDye: Programme = programme([
  wait('soak', 10 * MIN),
  dose('acid1', 30),
  wait('hold1', 20 * MIN),
  dose('acid2', 30),
  wait('hold2', 30 * MIN),
  act('off', { heat: 'off' })
])

export type Table = {
  clock: HandClock
  store: MemoryStore
  journal: MemoryJournal
  session: Session
  alerts: PotAlert[]
  /** What is to happen to the next writes, in order; empty: they go well. */
  faults: (Fault | null)[]
}

let tables = 0

/** A fresh start of the app; on the same store and clock where they are given. */
export function table(
  from: {
    writerId?: string
    clock?: HandClock
    store?: MemoryStore
    owns?: () => boolean
    onStored?: (ids: string[]) => void
    drawsOf?: SessionOptions['drawsOf']
  } = {}
): Table {
  const name = `t${++tables}`
  const clock = from.clock ?? handClock(T0)
  const store = from.store ?? memoryStore()
  const faults: (Fault | null)[] = []
  const journal = memoryJournal({ store, fault: () => faults.shift() ?? null })
  let count = 0
  const ids = { newId: () => `${name}-${++count}`, writerId: from.writerId ?? 'w1' }
  const made: Table = { clock, store, journal, faults, alerts: [], session: undefined as unknown as Session }
  made.session = createSession({
    clock,
    journal,
    ids,
    owns: from.owns,
    onStored: from.onStored,
    drawsOf: from.drawsOf,
    onAlerts: (alerts) => {
      made.alerts = alerts
    }
  })
  return made
}

export function startCommand(potId = 'plum', colourway = 'Plum', run: Programme = shortDye): PotCommand {
  const protocol = { title: 'Test', text: 'strandline: 1', version: 'v1', from: 'file' as const }
  return { type: 'Start', pot: identity(potId, colourway), protocol, programme: run, checks: [], cautionsShown: [] }
}

/** A table with one pot started and opened. */
export async function started(run: Programme = shortDye): Promise<Table> {
  const made = table()
  await made.session.open()
  await send(made, startCommand('plum', 'Plum', run))
  return made
}

export function send(
  at: Table,
  command: PotCommand,
  options: { commandId?: string; agoMs?: number; by?: By } = {}
): Promise<Outcome> {
  const potId = command.type === 'Start' ? command.pot.potId : 'plum'
  return at.session.send(potId, command, { by: PERSON, ...options })
}

/** Lets time pass awake, a tick a second, and the journal keep up. */
export async function pass(at: Table, ms: number): Promise<void> {
  for (let left = ms; left > 0; left -= 1000) {
    at.clock.advance(Math.min(1000, left))
    await at.session.wake()
  }
}

export function stored(at: Table, potId = 'plum'): PotEntry[] {
  return [...at.store.entries.values()].filter((entry) => (entry as PotEntry).streamId === `pot/${potId}`) as PotEntry[]
}

export function events<T extends PotEvent['type']>(at: Table, type: T): Extract<PotEvent, { type: T }>[] {
  return stored(at)
    .map(({ event }) => event)
    .filter((event): event is Extract<PotEvent, { type: T }> => event.type === type)
}

/** The open steps as the screens see them. */
export function open(at: Table, potId = 'plum'): string[] {
  const view = at.session.pots().find((pot) => pot.potId === potId)
  return view === undefined || view.state.status === 'idle' ? [] : view.state.active.map(({ path }) => path)
}
