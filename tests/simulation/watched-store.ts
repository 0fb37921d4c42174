// The store of a day with somebody looking on: every entry that lands is seen, and none may be written over.
import type { PotEntry } from '../../src/session/ports.ts'
import { type MemoryStore, memoryStore } from '../../src/shell/journal/memory-journal.ts'

/** The checksum stands for the entry: that it fits is read with every journal. */
type Confirmed = { commandId: string; key: string; crc: string }

export class WatchedStore {
  readonly store: MemoryStore
  overwritten: string[] = []
  readonly confirmed: Confirmed[] = []
  /** What landed, in order, by stream. */
  #streams = new Map<string, PotEntry[]>()
  #landed = 0

  constructor() {
    const seen = this
    class Watched extends Map<string, unknown> {
      override set(key: string, value: unknown): this {
        if (this.has(key)) seen.overwritten.push(key)
        seen.#land(value as PotEntry)
        return super.set(key, value)
      }
    }
    this.store = { ...memoryStore(), entries: new Watched() }
  }

  get landed(): number {
    return this.#landed
  }

  #land(entry: PotEntry): void {
    this.#landed += 1
    const stream = this.#streams.get(entry.streamId)
    if (stream === undefined) this.#streams.set(entry.streamId, [entry])
    else stream.push(entry)
  }

  copyFrom(other: WatchedStore): void {
    for (const [key, entry] of other.store.entries) this.store.entries.set(key, entry)
    for (const [key, summary] of other.store.summaries) this.store.summaries.set(key, summary)
    for (const [key, media] of other.store.media) this.store.media.set(key, media)
  }

  /** As it landed, in the order of writing. */
  stream(streamId: string): PotEntry[] {
    return this.#streams.get(streamId) ?? []
  }

  streamIds(): string[] {
    return [...this.#streams.keys()]
  }

  lengths(): Map<string, number> {
    return new Map([...this.#streams].map(([id, entries]) => [id, entries.length]))
  }

  /** Somebody was told that these are stored: they must be, now and for ever. */
  confirm(commandId: string, potIds: string[], entries: PotEntry[], complain: (what: string) => void): void {
    if (entries.length === 0) complain(`${commandId} was confirmed with nothing to show for it`)
    for (const potId of potIds) {
      if (entries.some(({ streamId }) => streamId === `pot/${potId}`)) continue
      complain(`${commandId} was confirmed for ${potId} with nothing to show for it`)
    }
    for (const entry of entries) {
      const key = JSON.stringify([entry.streamId, entry.writerId, entry.seq])
      this.confirmed.push({ commandId, key, crc: entry.crc })
      if (!this.store.entries.has(key)) complain(`${commandId} was confirmed before ${key} was stored`)
      const { event } = entry
      const named = event.type === 'PhotoNoted' || event.type === 'VoiceNoted' ? event.media : null
      if (named && !this.#holds(named.sha256, entry.streamId)) complain(`${commandId} was confirmed without its bytes`)
    }
  }

  #holds(sha256: string, streamId: string): boolean {
    const gone = ({ event }: PotEntry): boolean => event.type === 'MediaTrimmed' && event.sha256 === sha256
    return this.store.media.get(sha256)?.streamIds.includes(streamId) || this.stream(streamId).some(gone)
  }

  /** What was confirmed and is not there, or not as it was. */
  lost(): string[] {
    const lost: string[] = []
    for (const { commandId, key, crc } of this.confirmed) {
      const stored = this.store.entries.get(key)
      if (stored === undefined) lost.push(`${commandId} was confirmed and ${key} is lost`)
      else if ((stored as PotEntry).crc !== crc) lost.push(`${commandId} was confirmed and ${key} is another now`)
    }
    return lost
  }
}
