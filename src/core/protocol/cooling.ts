import { newtonMin } from '../chemistry/heating/laws.ts'

/** k per minute where nothing is known of the pot: 95 °C to 80 °C in 20 min in a room of 20 °C. Computed for an open pot
 * of a few litres, not looked up; fit it to your own pot from two readings. */
export const usualCoolingPerMin = 0.0112

/** Minutes until a bath has cooled to `toC`; 0 where it is there already, null where the room never lets it get there. */
export function coolingMin(fromC: number, toC: number, roomC: number, perMin: number): number | null {
  return fromC <= toC ? 0 : newtonMin({ fromC, towardsC: roomC, perMin }, toC)
}
