import type { Units } from '../../core/quantity/index.ts'
import type { Settings } from '../kitchen.ts'

/** The units a dyer reads in. */
export function unitsOf({ temperature, volume, mass }: Settings): Units {
  return { temperature, volume, mass }
}
