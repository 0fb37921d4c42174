// Looks journals through for what the Dye book finds by, and keeps what they say.
import { readEntries } from '../core/pot/read-entry.ts'
import { type Found, foundIn } from '../core/record/find.ts'
import type { JournalPort } from '../session/ports.ts'
import { type FoundStore, foundStore } from '../shell/found/found-store.ts'
import type { KitchenFound } from '../ui/found.ts'

/** Journals that are read at once: few, so that a tap meanwhile waits for nothing. */
const HANDFUL = 8

export function foundInBook(
  journal: Pick<JournalPort, 'read'>,
  database: string,
  store: FoundStore = foundStore(database)
): KitchenFound {
  return {
    async kept() {
      // What can't be read is looked through anew: it is derived only.
      const all = await store.all().catch((): Found[] => [])
      return new Map(all.map((each) => [each.potId, each]))
    },
    async lookThrough(lines, each) {
      for (let from = 0; from < lines.length; from += HANDFUL) {
        const found = await Promise.all(
          lines.slice(from, from + HANDFUL).map(async ({ streamId, potId, entries }) => {
            const raw = await journal.read(streamId)
            return foundIn(potId, readEntries(raw, false).entries, entries)
          })
        )
        await store.put(found).catch(() => undefined)
        if (!each(found)) return
        await new Promise((resolve) => setTimeout(resolve, 0))
      }
    }
  }
}
