import { splitLimit } from './limit-words.ts'
import { separatorLength } from './range-separator.ts'
import { good, type Read, refuse } from './read.ts'
import { differenceInCelsius } from './temperature-scale.ts'
import { type ScannedTemperature, scannedInC, scanTemperature } from './temperature-term.ts'
import { startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

/** A range of temperatures, °C. null: that end is open. One temperature has both ends equal.
 * `boil`: "the boil" was asked for; both ends are null, because only the place where the pot stands gives the figure. */
export type TemperatureRange = {
  lowC: number | null
  highC: number | null
  boil: boolean
  approx: boolean
  asEntered: string
}

type Ends = { lowC: number | null; highC: number | null }

const help = 'Write a temperature or a range, for example 85..90 °C, 80 ± 2 °C or at least 85 °C.'
const boilWords = /^(?:at )?(?:the )?(?:boil|boiling|boiling point)$/i
const plusMinus = /^ ?(?:±|\+\/-|\+-|\+\/−) ?/

/** Reads a temperature or a range within -10 to 120 °C: 85..90 °C, 185–194 °F, 80 ± 2 °C, at least 85 °C, the boil. */
export function readTemperatureRange(raw: string): Read<TemperatureRange> {
  const written = tidyWritten(raw, '85..90 °C')
  if (!written.ok) return written
  const { asEntered, approx } = written.value
  if (boilWords.test(written.value.text)) return good({ lowC: null, highC: null, boil: true, approx, asEntered })
  const { limit, text } = splitLimit(written.value.text)
  if (!startsLikeNumber(text)) return refuse('not-a-temperature', asEntered, help)
  const first = scanTemperature(text)
  if (!first.ok) return first
  const ends = readEnds(text, first.value)
  if (!ends.ok) return ends
  const { lowC, highC } = ends.value
  if (limit !== 'exact' && lowC !== highC) return refuse('one-value-wanted', asEntered, help)
  const open = { lowC: limit === 'most' ? null : lowC, highC: limit === 'least' ? null : highC }
  return good({ ...open, boil: false, approx, asEntered })
}

function readEnds(text: string, first: ScannedTemperature): Read<Ends> {
  const tail = text.slice(first.length)
  const tolerance = plusMinus.exec(tail)
  if (tolerance) return readTolerance(text, first, tail.slice(tolerance[0].length))
  const between = separatorLength(tail)
  if (between > 0 && startsLikeNumber(tail.slice(between))) return readRange(text, first, tail.slice(between))
  if (tail !== '') return refuse('not-a-temperature', text, help)
  const tempC = scannedInC(first.value, first.unit, text)
  return tempC.ok ? good({ lowC: tempC.value, highC: tempC.value }) : tempC
}

function readRange(text: string, first: ScannedTemperature, rest: string): Read<Ends> {
  const second = scanTemperature(rest)
  if (!second.ok) return second
  if (second.value.length !== rest.length) return refuse('not-a-temperature', text, help)
  const low = scannedInC(first.value, first.unit ?? second.value.unit, text)
  if (!low.ok) return low
  const high = scannedInC(second.value.value, second.value.unit ?? first.unit, text)
  if (!high.ok) return high
  if (high.value < low.value) {
    return refuse('range-backwards', text, 'Write the lower temperature first, for example 85..90 °C.')
  }
  return good({ lowC: low.value, highC: high.value })
}

function readTolerance(text: string, first: ScannedTemperature, rest: string): Read<Ends> {
  if (!startsLikeNumber(rest)) return refuse('not-a-temperature', text, help)
  const second = scanTemperature(rest)
  if (!second.ok) return second
  const { value, unit } = second.value
  if (second.value.length !== rest.length) return refuse('not-a-temperature', text, help)
  const middleUnit = first.unit ?? unit
  const middle = scannedInC(first.value, middleUnit, text)
  if (!middle.ok) return middle
  if (value < 0) return refuse('out-of-range', text, 'A tolerance is 0 or more, for example 80 ± 2 °C.')
  const toleranceC = differenceInCelsius(value, unit ?? middleUnit ?? 'C')
  const low = scannedInC(middle.value - toleranceC, 'C', text)
  if (!low.ok) return low
  const high = scannedInC(middle.value + toleranceC, 'C', text)
  if (!high.ok) return high
  return good({ lowC: low.value, highC: high.value })
}
