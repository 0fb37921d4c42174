// The dyer's own words for skein cards lie among the small kept things, not in the journal: they are no happening of the
// batch, and may be changed with each printing.
import type { SkeinCardText } from '../core/record/skein-card.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { KitchenCards } from '../ui/skein-cards.ts'

export function storedCards(kept: Kept): KitchenCards {
  return {
    read: async (potId) => textIn(await kept.get(keyOf(potId))),
    async keep(potId, text) {
      try {
        await kept.set(keyOf(potId), text)
        return { ok: true }
      } catch {
        return {
          ok: false,
          refusal: null,
          say: 'Not kept: the browser could not store it. It prints as it stands, and is gone when this page closes.'
        }
      }
    }
  }
}

const keyOf = (potId: string): string => `card/${potId}`

/** An older version, or a hand, may have left something else. */
function textIn(stored: unknown): SkeinCardText | null {
  if (typeof stored !== 'object' || stored === null) return null
  const said = stored as { [field in keyof SkeinCardText]?: unknown }
  const words = (value: unknown): string => (typeof value === 'string' ? value : '')
  return { fibre: words(said.fibre), metres: words(said.metres), care: words(said.care), bleed: words(said.bleed) }
}
