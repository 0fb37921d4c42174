import { good, type Read, refuse } from './read.ts'
import type { TemperatureUnit } from './temperature-scale.ts'
import { scannedInC, scanTemperature } from './temperature-term.ts'
import { startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

export type TemperatureC = { tempC: number; approx: boolean; asEntered: string }

/** Reads one temperature, -10 to 120 °C: 82 °C, 82 C, 180 °F, 180F, 82 degrees C. A bare 82 is refused, unless
 * `bareUnit` says what a field without a unit is in. */
export function readTemperature(raw: string, options: { bareUnit?: TemperatureUnit } = {}): Read<TemperatureC> {
  const written = tidyWritten(raw, '82 °C')
  if (!written.ok) return written
  const { text, asEntered, approx } = written.value
  const help = 'Write one temperature with its unit, for example 82 °C or 180 °F.'
  if (!startsLikeNumber(text)) return refuse('not-a-temperature', asEntered, help)
  const scanned = scanTemperature(text)
  if (!scanned.ok) return scanned
  const { value, unit, length } = scanned.value
  if (length !== text.length) return refuse('not-a-temperature', asEntered, help)
  const tempC = scannedInC(value, unit ?? options.bareUnit ?? null, asEntered)
  return tempC.ok ? good({ tempC: tempC.value, approx, asEntered }) : tempC
}
