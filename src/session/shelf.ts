// Keeps the shelf: takes commands, asks core, appends. Loaded when the shelf is first opened, never with the Stove.
import type { CommandHeader } from '../core/pot/commands.ts'
import { readEntries } from '../core/pot/read-entry.ts'
import type { ShelfCommand, ShelfRefusal } from '../core/shelf/commands.ts'
import { decideItem } from '../core/shelf/decide.ts'
import { isKnownShelfEvent, type ShelfEvent } from '../core/shelf/events.ts'
import { foldItem } from '../core/shelf/evolve.ts'
import type { ShelfState } from '../core/shelf/state.ts'
import type { AppendFailure, ClockPort, IdPort, JournalPort, PotSummary, ShelfEntry } from './ports.ts'
import { sealAll } from './seal-all.ts'
import { unreadable } from './store.ts'

/** Conflicts in a row before it is called lost: another tab writes to one thing now and then, never on and on. */
const CONFLICTS_MOST = 5
const PREFIX = 'stock/'

/** A thing as it was read. `readOnly`: why it can be read only; null: it can be changed. */
export type OpenedItem = { itemId: string; state: ShelfState; entries: ShelfEntry[]; readOnly: string | null }

export type ShelfOutcome =
  | { ok: true; item: OpenedItem }
  | { ok: false; why: 'refused'; refusal: ShelfRefusal }
  | { ok: false; why: 'not-saved'; failure: AppendFailure }
  | { ok: false; why: 'read-only'; say: string }

export type ShelfPorts = { clock: ClockPort; journal: JournalPort; ids: IdPort }

/** Everything that ever stood on the shelf. Throws where the journal can't be read. */
export async function readShelf(journal: JournalPort): Promise<OpenedItem[]> {
  const streams = await journal.streams(PREFIX)
  return streams.map((raw) => openItem((raw[0] as ShelfEntry).streamId.slice(PREFIX.length), raw))
}

/** What pots drew from each of these things: each pot once, with all that it drew. */
export async function readDraws(journal: JournalPort, itemIds: readonly string[]): Promise<PotSummary[]> {
  const found = await Promise.all(itemIds.map((itemId) => journal.drawnFrom(itemId)))
  return [...new Map(found.flat().map((summary) => [summary.potId, summary])).values()]
}

/** Decides a command on what is stored by now and stores what comes of it; where another tab was first, decides again. */
export async function sendToShelf(
  { clock, journal, ids }: ShelfPorts,
  itemId: string,
  command: ShelfCommand,
  header: CommandHeader
): Promise<ShelfOutcome> {
  const streamId = `${PREFIX}${itemId}`
  for (let conflicts = 0; conflicts < CONFLICTS_MOST; conflicts++) {
    let item: OpenedItem
    try {
      item = openItem(itemId, await journal.read(streamId))
    } catch (error) {
      return { ok: false, why: 'not-saved', failure: unreadable(error) }
    }
    if (item.readOnly !== null) return { ok: false, why: 'read-only', say: item.readOnly }
    const decision = decideItem(itemId, item.state, command, header)
    if (!decision.ok) return { ok: false, why: 'refused', refusal: decision.refusal }
    if (decision.events.length === 0) return { ok: true, item }
    const recordedAtMs = clock.nowMs()
    const entries = sealAll(streamId, item.entries, decision.events, header, { clock, ids, recordedAtMs })
    const answer = await journal.append(entries, [])
    if (answer.ok) {
      const all = [...item.entries, ...entries]
      return { ok: true, item: { ...item, entries: all, state: foldItem(all) } }
    }
    if (answer.why !== 'conflict') return { ok: false, why: 'not-saved', failure: answer }
  }
  const say = 'Another tab keeps writing to the same thing. Close it.'
  return { ok: false, why: 'not-saved', failure: { ok: false, why: 'lost', say } }
}

/** Opens a thing from its stored entries. What can't be read makes it read-only; the rest of it is read on. */
function openItem(itemId: string, raw: readonly unknown[]): OpenedItem {
  const { entries, damaged, unknown } = readEntries<ShelfEvent>(raw, true, isKnownShelfEvent)
  const [first] = damaged
  let readOnly: string | null = null
  if (unknown) readOnly = 'A newer Strandline wrote of this. It can be read here, not changed.'
  if (first) readOnly = `Entry ${first.index + 1} of this is damaged (${first.why}). It can be read, not changed.`
  return { itemId, state: foldItem(entries), entries, readOnly }
}
