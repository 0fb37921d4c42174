import { good, type Read, refuse } from './read.ts'
import { celsiusFromFahrenheit, inCelsius, type TemperatureUnit } from './temperature-scale.ts'
import { scanNumber } from './written-number.ts'

/** Below: frozen baths are no baths. Above: no open pot, and no steamer without pressure, gets there. */
export const coldestC = -10
export const hottestC = 120

/** A temperature at the start of a text; `unit` null: none stood there. */
export type ScannedTemperature = { value: number; unit: TemperatureUnit | null; length: number }

// º is the ordinal sign that some keyboards give for the degree sign.
const degrees = '(?:[°º]|degrees?|degs?\\.?)'
const unitWord = new RegExp(`^ ?(?:${degrees}? ?(celsius|centigrade|fahrenheit|c|f)(?![a-z])|(℃|℉))`, 'i')
const onlyDegrees = new RegExp(`^ ?${degrees}(?![a-z])`, 'i')

export function scanTemperature(text: string): Read<ScannedTemperature> {
  const number = scanNumber(text)
  if (!number.ok) return number
  const { value, length } = number.value
  const after = text.slice(length)
  const unit = unitWord.exec(after)
  if (unit) {
    const word = (unit[1] ?? unit[2] ?? '').toLowerCase()
    return good({ value, unit: word.startsWith('f') || word === '℉' ? 'F' : 'C', length: length + unit[0].length })
  }
  return good({ value, unit: null, length: length + (onlyDegrees.exec(after)?.[0].length ?? 0) })
}

/** °C of a scanned temperature. Refuses a missing unit and anything outside -10..120 °C. */
export function scannedInC(value: number, unit: TemperatureUnit | null, text: string): Read<number> {
  if (unit === null) return refuse('unit-missing', text, `Write ${value} °C or ${value} °F.`)
  const tempC = inCelsius(value, unit)
  const slack = 1e-9
  if (tempC >= coldestC - slack && tempC <= hottestC + slack) return good(tempC)
  const asF = celsiusFromFahrenheit(value)
  if (unit === 'C' && asF > 0 && asF <= hottestC) {
    return refuse('out-of-range', text, `Write −10 to 120 °C; ${value} °F is ${Math.round(asF)} °C.`)
  }
  return refuse('out-of-range', text, 'Write a temperature from −10 to 120 °C (14 to 248 °F), for example 82 °C.')
}
