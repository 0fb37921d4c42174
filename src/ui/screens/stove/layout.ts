// How the Stove is laid out: one bath large on a phone, each bath whole where there is room for it.
import type { Box } from '../../parts/box.ts'

export type Layout = 'one' | 'side' | 'whole'

/** A bath narrower than this can't hold an act that is read from across the kitchen. */
const BATH_LEAST_PX = 250
const TALL_LEAST_PX = 560

/** `alone`: one pot is to be large whatever room there is. */
export function layoutFor({ width, height }: Box, pots: number, alone = false): Layout {
  if (height < TALL_LEAST_PX && width > height) return 'side'
  return !alone && width >= 700 && width / Math.max(1, pots) >= BATH_LEAST_PX ? 'whole' : 'one'
}
