import { type Answer, refuse } from '../answer.ts'
import { type Limit, outside } from '../limits.ts'
import { standardPressurePa } from './atmosphere.ts'
import { boilingK } from './saturation.ts'

/** Where the pot stands: its height above the sea, as a map gives it; or what a barometer beside it reads. */
export type Place = { altitudeM: number } | { stationPressureHPa: number }

const altitude: Limit = { field: 'altitudeM', name: 'the altitude', unit: 'm', least: -430, most: 5500 }
const pressure: Limit = {
  field: 'stationPressureHPa',
  name: 'the pressure',
  unit: 'hPa, as the barometer beside the pot reads and not as the weather report gives it for sea level',
  least: 450,
  most: 1100
}

/** The temperature in °C at which water boils there: 99.97 at sea level, not 100.
 *
 * Altitude in m, -430 (the lowest shore) to 5500 (the highest villages); pressure in hPa, 450 to 1100. Refuses what lies
 * outside, is missing or is no number, and altitude and pressure both at once. A pressure corrected to sea level (QNH, the
 * weather report) gives a wrong answer and can't be told apart: ask for the reading beside the pot. Weather moves the
 * boiling point of an altitude by up to 0.8 °C; what is dissolved in a dye bath raises it by less than 0.2 °C.
 *
 * Source: US Standard Atmosphere 1976 at geometric altitude; IAPWS-IF97 region 4. */
export function boilingPointC(place: Place): Answer<number> {
  const given = place as { altitudeM?: unknown; stationPressureHPa?: unknown }
  const hasAltitude = given.altitudeM !== undefined
  if (hasAltitude && given.stationPressureHPa !== undefined) {
    const what = 'Both an altitude and a pressure are given.'
    const instead = 'Give one: the pressure where there is a barometer, else the altitude.'
    return refuse({ code: 'contradiction', field: 'altitudeM', what, instead })
  }
  const { stationPressureHPa } = given
  const problem =
    hasAltitude || stationPressureHPa === undefined
      ? outside(given.altitudeM, altitude)
      : outside(stationPressureHPa, pressure)
  if (problem) return refuse(problem)
  const pressurePa = hasAltitude ? standardPressurePa(Number(given.altitudeM)) : Number(stationPressureHPa) * 100
  return boilingK(pressurePa) - 273.15
}
