import type { SkeinCardText } from '../core/record/skein-card.ts'
import type { Sent } from './kitchen.ts'

/** What the dyer wrote for the skein cards of a batch. */
export type KitchenCards = {
  /** Null: nothing was written yet. */
  read(potId: string): Promise<SkeinCardText | null>
  keep(potId: string, text: SkeinCardText): Promise<Sent>
}
