// The single values that form fields ask for: a volume, a mass, a percentage, a plain number.
import type { KitchenCountry } from './kitchen-unit.ts'
import { massUnits } from './mass-units.ts'
import { type Measured, measure } from './measured.ts'
import { good, type QuantityProblemCode, type Read, refuse, within } from './read.ts'
import type { VolumeUnit } from './volume-units.ts'
import { scanNumber, startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

export type Split = { value: number; unitText: string; text: string }

/** Reads a volume as mL, 0 to 1,000,000. `bareUnit` is taken where no unit stands (a field that shows its unit). */
export function readVolume(
  raw: string,
  options: { kitchen?: KitchenCountry | null; bareUnit?: VolumeUnit } = {}
): Read<number> {
  return readMeasured(raw, 'volume', 'not-a-volume', '30 mL', options.kitchen, options.bareUnit)
}

/** Reads a mass as g, 0 to 1,000,000. `bareUnit` is taken where no unit stands (a field that shows its unit). */
export function readMass(raw: string, options: { bareUnit?: 'g' | 'kg' | 'oz' | 'lb' } = {}): Read<number> {
  return readMeasured(raw, 'mass', 'not-a-mass', '50 g', null, options.bareUnit)
}

/** Reads a percentage as a number of percent, 0 to 1000. `bare`: a number without the sign will do. */
export function readPercent(raw: string, options: { bare?: boolean } = {}): Read<number> {
  const split = splitNumber(raw, '1.5 %')
  if (!split.ok) return split
  const { value, unitText, text } = split.value
  if (unitText === '' && !options.bare) return refuse('unit-missing', text, `Write ${value} %.`)
  if (unitText !== '' && !/^(?:%|percent|per cent)$/i.test(unitText)) {
    return refuse('not-a-percent', text, `Write a percentage only, for example ${value} %.`)
  }
  return within(value, 0, 1000, text, 'Write a percentage between 0 % and 1000 %, for example 1.5 %.')
}

/** Reads a plain number, by default between -1e9 and 1e9. A unit after it is refused. */
export function readNumber(raw: string, limits: { least?: number; most?: number } = {}): Read<number> {
  const least = limits.least ?? -1e9
  const most = limits.most ?? 1e9
  const split = splitNumber(raw, '1.5')
  if (!split.ok) return split
  const { value, unitText, text } = split.value
  if (unitText !== '') return refuse('not-a-number', text, `Write the number only, for example ${value}.`)
  return within(value, least, most, text, `Write a number between ${least} and ${most}.`)
}

function readMeasured(
  raw: string,
  kind: Measured['kind'],
  code: QuantityProblemCode,
  example: string,
  kitchen: KitchenCountry | null | undefined,
  bareUnit: string | undefined
): Read<number> {
  const split = splitNumber(raw, example)
  if (!split.ok) return split
  const { value, unitText, text } = split.value
  if (unitText === '' && bareUnit === undefined)
    return refuse('unit-missing', text, `Add the unit, for example ${example}.`)
  if (value < 0) return refuse('out-of-range', text, `Write 0 or more, for example ${example}.`)
  const bare = unitText === '' && bareUnit !== undefined
  const measured = measure(value, bare ? bareUnit : unitText, kitchen ?? undefined)
  if (!measured.ok) return measured
  if (measured.value.kind !== kind) return refuse(code, text, otherKindHelp(kind, unitText, example))
  return within(measured.value.value, 0, 1e6, text, `Write at most ${kind === 'volume' ? '1000 L' : '1000 kg'}.`)
}

function otherKindHelp(kind: Measured['kind'], unitText: string, example: string): string {
  if (kind === 'volume' && /^(?:oz|ounces?)$/i.test(unitText)) {
    return 'An oz is a mass; a volume is written 3 US fl oz or 30 mL.'
  }
  const units =
    kind === 'volume' ? 'mL, L or a kitchen measure' : massUnits.filter((unit) => unit !== 'grain').join(', ')
  return `Write it in ${units}, for example ${example}.`
}

/** A number and what stands behind it. */
export function splitNumber(raw: string, example: string): Read<Split> {
  const written = tidyWritten(raw, example)
  if (!written.ok) return written
  const { text } = written.value
  if (!startsLikeNumber(text)) return refuse('not-a-number', text, `Begin with a number, for example ${example}.`)
  const number = scanNumber(text)
  if (!number.ok) return number
  const tail = text.slice(number.value.length)
  if (startsLikeNumber(tail.trim())) return refuse('one-value-wanted', text, `Write one value, for example ${example}.`)
  return good({ value: number.value.value, unitText: tail.trim(), text })
}
