// Where water boils in this kitchen, from whatever the dyer knows: the altitude, the barometer, or the boil itself.
import { isRefused } from '../../chemistry/answer.ts'
import { boilingPointC, type Place } from '../../chemistry/boiling/boiling-point.ts'
import { type Read, readNumber, readTemperature, type Units } from '../../quantity/index.ts'
import { good, refuse } from '../../quantity/read.ts'

export type BoilHere = { boilC: number; from: 'altitude' | 'pressure' | 'boil' }

const metresPerFoot = 0.3048
const measured = /^(.*?)\s*(m|metres?|meters?|ft|feet|hpa|mbar)\.?$/i

/** "1200 m", "4000 ft", "905 hPa", or "96 °C". A bare number is a temperature, in the dyer's own scale. */
export function readBoilHere(text: string, units: Pick<Units, 'temperature'>): Read<BoilHere> {
  const place = measured.exec(text.trim())
  if (place) return fromPlace(text, place[1] ?? '', (place[2] ?? '').toLowerCase())
  const read = readTemperature(text, { bareUnit: units.temperature })
  if (!read.ok) return read
  const { tempC } = read.value
  if (tempC >= 70 && tempC <= 105) return good({ boilC: tempC, from: 'boil' })
  return refuse('out-of-range', text.trim(), 'Write the altitude with m or ft, the pressure with hPa, or 70 to 105 °C.')
}

function fromPlace(text: string, figure: string, unit: string): Read<BoilHere> {
  const read = readNumber(figure)
  if (!read.ok) return read
  const pressure = unit === 'hpa' || unit === 'mbar'
  const metres = unit.startsWith('f') ? read.value * metresPerFoot : read.value
  const place: Place = pressure ? { stationPressureHPa: read.value } : { altitudeM: metres }
  const boilC = boilingPointC(place)
  if (isRefused(boilC))
    return refuse('out-of-range', text.trim(), boilC.problems.map(({ instead }) => instead).join(' '))
  return good({ boilC, from: pressure ? 'pressure' : 'altitude' })
}
