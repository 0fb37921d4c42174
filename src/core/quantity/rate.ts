import { good, type Read, refuse } from './read.ts'
import { differenceInCelsius } from './temperature-scale.ts'
import { scanTemperature } from './temperature-term.ts'
import { startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

/** How fast a bath warms or cools, °C per minute, above 0 and at most 50. */
export type Rate = { cPerMin: number; approx: boolean; asEntered: string }

const perTime = /^ ?(?:\/|per|an?) ?(?:(min|minute|m)|(h|hr|hour))$/i

/** Reads a rate of heating or cooling: 1 °C/min, 2 °F per min, 60 °C/h. The step says whether it goes up or down. */
export function readRate(raw: string): Read<Rate> {
  const written = tidyWritten(raw, '1 °C/min')
  if (!written.ok) return written
  const { text, asEntered, approx } = written.value
  const help = 'Write degrees for each minute or hour, for example 1 °C/min, 2 °F/min or 60 °C/h.'
  if (!startsLikeNumber(text)) return refuse('not-a-rate', asEntered, help)
  const scanned = scanTemperature(text)
  if (!scanned.ok) return scanned
  const { value, unit, length } = scanned.value
  const per = perTime.exec(text.slice(length))
  if (!per) return refuse('not-a-rate', asEntered, help)
  if (unit === null) return refuse('unit-missing', asEntered, `Write ${value} °C/min or ${value} °F/min.`)
  const cPerMin = differenceInCelsius(value, unit) / (per[1] === undefined ? 60 : 1)
  if (!(cPerMin > 0 && cPerMin <= 50)) {
    return refuse('out-of-range', asEntered, 'Write a rate above 0 and up to 50 °C/min, for example 1 °C/min.')
  }
  return good({ cPerMin, approx, asEntered })
}
