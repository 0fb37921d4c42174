// Keeps what was found of skeins: appends to the journal, reads it back. Loaded with the Swatches, never with the Stove.
import type { CommandHeader } from '../core/pot/commands.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import { type Damaged, readEntries } from '../core/pot/read-entry.ts'
import { isKnownSwatchEvent, type SwatchEvent } from '../core/record/swatch.ts'
import type { AppendFailure, ClockPort, IdPort, JournalPort, SwatchEntry } from './ports.ts'
import { sealAll } from './seal-all.ts'
import { unreadable } from './unreadable.ts'

/** Conflicts in a row before it is called lost: another tab writes to one skein now and then, never on and on. */
const CONFLICTS_MOST = 5
const PREFIX = 'swatch/'

export const swatchStream = (id: string): string => `${PREFIX}${id}`

/** Null: the stream is of no skein. */
export const swatchIdOf = (streamId: string): string | null =>
  streamId.startsWith(PREFIX) ? streamId.slice(PREFIX.length) : null

export type SwatchPorts = { clock: ClockPort; journal: JournalPort; ids: IdPort }

type ReadSwatches = { entries: SwatchEntry[]; damaged: Damaged[]; unknown: boolean }

/** Of one batch, or of all there are. Throws where the journal can't be read. */
export async function readSwatches(journal: JournalPort, id: string | null): Promise<ReadSwatches> {
  if (id !== null) return read(await journal.read(swatchStream(id)))
  const streams = new Map<string, unknown[]>()
  for (const entry of await journal.readAll(PREFIX)) {
    const { streamId } = entry as SwatchEntry
    streams.set(streamId, [...(streams.get(streamId) ?? []), entry])
  }
  const all = [...streams.values()].map(read)
  return {
    entries: all.flatMap(({ entries }) => entries),
    damaged: all.flatMap(({ damaged }) => damaged),
    unknown: all.some(({ unknown }) => unknown)
  }
}

/** Stores events and the pictures they name in one transaction, after what is there by now. */
export async function keepSwatch(
  { clock, journal, ids }: SwatchPorts,
  id: string,
  events: readonly SwatchEvent[],
  media: MediaBytes[],
  header: CommandHeader
): Promise<{ ok: true } | AppendFailure> {
  const streamId = swatchStream(id)
  for (let conflicts = 0; conflicts < CONFLICTS_MOST; conflicts++) {
    let before: SwatchEntry[]
    try {
      before = read(await journal.read(streamId)).entries
    } catch (error) {
      return unreadable(error)
    }
    // A second tap of the same deed.
    if (before.some(({ commandId }) => commandId === header.commandId)) return { ok: true }
    const entries = sealAll(streamId, before, events, header, { clock, ids, recordedAtMs: clock.nowMs() })
    const answer = await journal.append(entries, [], media)
    if (answer.ok || answer.why !== 'conflict') return answer
  }
  return { ok: false, why: 'lost', say: 'Another tab keeps writing of the same skein. Close it.' }
}

const read = (raw: readonly unknown[]): ReadSwatches => readEntries<SwatchEvent>(raw, true, isKnownSwatchEvent)
