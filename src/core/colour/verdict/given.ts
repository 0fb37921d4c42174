// What the verdict is given.
import type { Covariance } from '../covariance.ts'
import type { Lab } from '../lab.ts'
import type { Fault } from '../photo/faults.ts'
import type { Zone } from '../photo/marks.ts'

/** A swatch of the dilution series, dyed in the same ratio on the same yarn, or the undyed yarn itself: its average over
 * the photos. */
export type Point = {
  lab: Lab
  /** How sure the patch's average is by how its pieces stray; nothing for an instrument's single figure. */
  doubt: Covariance
  /** Where it lay in the light, 0 to 1 between the undyed places; null where that is not known. */
  lightAt: number | null
}

export type Position = Point & { at: number; band: number; zone: Zone }

export type Skein = { positions: Position[]; dry: boolean; fibres: number }

export type Noise = {
  /** Of one reading, from photos of the same thing. */
  repeat: Covariance
  /** On so many degrees of freedom. */
  freedom: number
  /** So many photos stand behind each average. */
  photos: number
  /** How the same undyed yarn differs from one end of the light to the other; null where nobody looked. An instrument
   * brings its own light, the same for all: nothing (0, 0, 0). */
  light: Lab | null
}

export type Given = {
  series: Point[]
  /** The undyed yarn is the series' point of no dye. */
  undyed: Point | null
  skein: Skein
  noise: Noise
  faults?: Fault[]
  /** A split smaller than this need not be seen for the word "only lighter"; see `usualSmallest`. */
  smallestWanted?: number
}

/** Grade 3 of the grey scale for change in colour (ISO 105-A02): a difference nobody overlooks. */
export const usualSmallest = 3.4
