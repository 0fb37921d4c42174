import { separatorLength } from './range-separator.ts'
import { good, type Read, refuse } from './read.ts'
import { scanNumber, startsUnsigned } from './written-number.ts'

export const secondMs = 1000
export const minuteMs = 60 * secondMs
export const hourMs = 60 * minuteMs
export const dayMs = 24 * hourMs

const unitWords: [RegExp, number][] = [
  [/^(?:s|secs?|seconds?)$/i, secondMs],
  [/^(?:m|mins?|minutes?)$/i, minuteMs],
  [/^(?:h|hrs?|hours?)$/i, hourMs],
  [/^(?:d|days?)$/i, dayMs],
  [/^(?:w|wks?|weeks?)$/i, 7 * dayMs]
]
const clock = /^(\d{1,3}):(\d{2})(?::(\d{2}))?(?: ?(h|hours?|min|minutes?)\b)?(?![\d:])/i
const joints = /^(?:,? and |, ?| )/i

/** One length of time at the start of a text. `unitMs` null: a lone number, as the 25 of "25 to 30 min". */
export type ScannedTime = { value: number; unitMs: number | null; length: number }

/** Reads "1 h 20 min", "90 min", "1:30 h" or a lone number at the start of a text; units must get smaller. */
export function scanTime(text: string): Read<ScannedTime> {
  const colons = clock.exec(text)
  if (colons) return readClock(colons)
  let totalMs = 0
  let at = 0
  let lastUnitMs = Number.POSITIVE_INFINITY
  while (at === 0 || startsUnsigned(text.slice(at))) {
    const number = scanNumber(text.slice(at))
    if (!number.ok) return number
    const afterNumber = at + number.value.length
    const unit = scanUnit(text.slice(afterNumber))
    if (!unit.ok) return unit
    if (unit.value === null) {
      if (at === 0) return good({ value: number.value.value, unitMs: null, length: afterNumber })
      return refuse('unit-missing', text, 'Give every number its unit, for example 1 h 20 min.')
    }
    if (unit.value.ms >= lastUnitMs) {
      return refuse('not-a-length-of-time', text, 'Write the larger unit first, for example 1 h 20 min.')
    }
    totalMs += number.value.value * unit.value.ms
    lastUnitMs = unit.value.ms
    at = afterNumber + unit.value.length
    const joint = joints.exec(text.slice(at))?.[0].length ?? 0
    if (startsUnsigned(text.slice(at + joint))) at += joint
  }
  return good({ value: totalMs, unitMs: 1, length: at })
}

function scanUnit(text: string): Read<{ ms: number; length: number } | null> {
  if (separatorLength(text) > 0) return good(null)
  // The point of "min." belongs to the word; the points of "30 min..12 h" do not.
  const word = /^ ?(\p{L}+)(?!\p{L})(?:\.(?!\.))?/u.exec(text)
  if (!word) return good(null)
  const known = unitWords.find(([pattern]) => pattern.test(word[1] ?? ''))
  if (!known) return refuse('unit-unknown', word[1] ?? '', 'Write s, min, h or days, for example 6 min.')
  return good({ ms: known[1], length: word[0].length })
}

function readClock(parts: RegExpExecArray): Read<ScannedTime> {
  const [all, first = '0', second = '0', third, unit] = parts
  const [a, b, c] = [Number(first), Number(second), Number(third ?? 0)]
  if (b > 59 || c > 59) return refuse('not-a-length-of-time', all, 'After a colon write 00 to 59, for example 1:30 h.')
  const length = all.length
  if (third !== undefined) return good({ value: a * hourMs + b * minuteMs + c * secondMs, unitMs: 1, length })
  if (unit === undefined) {
    return refuse('clock-unclear', all, `Write ${a} h ${b} min or ${a} min ${b} s: ${all} could mean either.`)
  }
  const inHours = unit.toLowerCase().startsWith('h')
  return good({ value: inHours ? a * hourMs + b * minuteMs : a * minuteMs + b * secondMs, unitMs: 1, length })
}
