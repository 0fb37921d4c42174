// What a dyer marks in a photograph.
import type { Patch } from './patch.ts'

/** Where a skein was under the liquor, or drew it up by itself: what wicked separates dyes as a strip of paper does. */
export type Zone = 'dyed' | 'wicking'

export type SkeinMark = {
  patch: Patch
  /** Along the skein, 0 at one end and 1 at the other. */
  at: number
  /** Counted from the same end, from 1. */
  band: number
  zone: Zone
}

export type Marks = {
  grey: Patch
  /** How much light the card gives back, 0 to 1; the usual card where left out. */
  cardShare?: number
  /** The same undyed yarn in one or several places. Two, at both ends of the skein, show whether the light is even. */
  undyed: Patch[]
  /** The swatches of the dilution series, in any order, the same in each photo. */
  series: Patch[]
  skein: SkeinMark[]
}

/** The undyed places that lie furthest from one another; null where there are not two. */
export function furthestUndyed({ undyed }: Pick<Marks, 'undyed'>): [number, number] | null {
  let best: [number, number] | null = null
  let far = 0
  for (const [i, one] of undyed.entries()) {
    for (const [j, other] of undyed.entries()) {
      const distance = Math.hypot(one.x - other.x, one.y - other.y)
      if (j > i && distance > far) [best, far] = [[i, j], distance]
    }
  }
  return best
}
