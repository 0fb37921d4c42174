// US Standard Atmosphere 1976 (NOAA/NASA/USAF), its lowest layer, as in ICAO Doc 7488; constants from memory.
const SEA_LEVEL_PA = 101_325
const SEA_LEVEL_K = 288.15
const LAPSE_K_PER_M = 0.0065
const EARTH_M = 6_356_766
/** g0 M / (R* L). */
const EXPONENT = (9.80665 * 0.0289644) / (8.31432 * LAPSE_K_PER_M)

/** Geopotential altitude of a geometric one, in m: gravity weakens with height. */
export function geopotentialM(altitudeM: number): number {
  return (EARTH_M * altitudeM) / (EARTH_M + altitudeM)
}

/** Pressure of the standard atmosphere in Pa at a geometric altitude in m, up to the 11 km of its lowest layer. */
export function standardPressurePa(altitudeM: number): number {
  return SEA_LEVEL_PA * (1 - (LAPSE_K_PER_M * geopotentialM(altitudeM)) / SEA_LEVEL_K) ** EXPONENT
}
