// Swatches for the screens: photos read beside the page, and what is found kept. Loaded when they are first opened.
import { comparisonsOf, judgementsOf } from '../core/record/swatch.ts'
import { readingsOf } from '../core/record/swatch-readings.ts'
import { keepSwatch, readSwatches } from '../session/swatches.ts'
import { photoDesk } from '../shell/swatch-photo/photo-desk.ts'
import type { KitchenSwatches } from '../ui/swatches.ts'
import { sayOf } from './commands.ts'
import { type KitchenParts, personOf, type ShelfHere } from './kitchen.ts'

type Around = Pick<KitchenParts, 'clock' | 'journal' | 'newId' | 'settings'>
const made = new WeakMap<Around, KitchenSwatches>()

/** Made once for a kitchen: the pictures that are open stay so while another screen is looked at. */
export function swatchesOf(around: Around, here: Pick<ShelfHere, 'writerId'>): KitchenSwatches {
  const swatches = made.get(around) ?? makeSwatches(around, here)
  made.set(around, swatches)
  return swatches
}

function makeSwatches({ clock, journal, newId, settings }: Around, { writerId }: Pick<ShelfHere, 'writerId'>) {
  const ids = { newId, writerId }
  return {
    photos: photoDesk(),
    async keep(batchId, events, media, commandId) {
      const header = { commandId, atMs: clock.nowMs(), by: personOf(settings) }
      // Of no batch: the deed's own id, so that a second try of it goes to the same place.
      const kept = await keepSwatch({ clock, journal, ids }, batchId ?? commandId, events, media, header)
      return kept.ok ? kept : { ok: false, refusal: null, say: `Not saved. ${sayOf(kept)}` }
    },
    async kept(batchId) {
      try {
        const read = await readSwatches(journal, batchId)
        const { entries, damaged, unknown } = read
        const problem =
          damaged.length > 0
            ? `${damaged.length} entries are damaged (${damaged[0]?.why}). The rest is shown.`
            : unknown
              ? 'A newer Strandline wrote some of this. The rest is shown.'
              : null
        return {
          judgements: judgementsOf(entries),
          comparisons: comparisonsOf(entries),
          readings: readingsOf(entries),
          read,
          problem
        }
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error)
        const nothing = { judgements: [], comparisons: [], readings: [], read: null }
        return { ...nothing, problem: `What was found before can’t be read (${why}).` }
      }
    }
  } satisfies KitchenSwatches
}
