import { dayMs, hourMs, minuteMs, type ScannedTime, scanTime, secondMs } from './duration-term.ts'
import { durationInFigures } from './duration-words.ts'
import { type Limit, splitLimit } from './limit-words.ts'
import { separatorLength } from './range-separator.ts'
import { good, type Read, refuse, within } from './read.ts'
import { startsLikeNumber } from './written-number.ts'
import { tidyWritten } from './written-text.ts'

/** A length of time, ms. Given as one value both ends are equal. `highMs` null: no upper end ("at least 20 min"). */
export type Duration = { lowMs: number; highMs: number | null; approx: boolean; asEntered: string }

const example = '6 min, 1 h 20 min or 25 to 30 min'
export const longestDays = 60
const bareUnitMs = { s: secondMs, min: minuteMs, h: hourMs } as const

/** Reads a length of time of 0 to 60 days: 30 s, 1 h 20 min, 25..30 min, at least 20 min, half an hour.
 * Refused: 1:30 alone (hours or minutes?), a number without a unit unless `bareUnit` is given, ranges that go back. */
export function readDuration(raw: string, options: { bareUnit?: 's' | 'min' | 'h' } = {}): Read<Duration> {
  const written = tidyWritten(raw, example)
  if (!written.ok) return written
  const { asEntered, approx } = written.value
  const { limit, text } = splitLimit(durationInFigures(written.value.text))
  if (!startsLikeNumber(text)) return refuse('not-a-length-of-time', asEntered, `Write a length of time: ${example}.`)
  const ends = readEnds(text, limit, options.bareUnit ? bareUnitMs[options.bareUnit] : null)
  return ends.ok ? good({ ...ends.value, approx, asEntered }) : ends
}

type Ends = { lowMs: number; highMs: number | null }

function readEnds(text: string, limit: Limit, bareMs: number | null): Read<Ends> {
  const first = scanTime(text)
  if (!first.ok) return first
  const tail = text.slice(first.value.length)
  const between = separatorLength(tail)
  if (between > 0 && startsLikeNumber(tail.slice(between))) {
    return readRange(text, limit, first.value, tail.slice(between), bareMs)
  }
  if (tail !== '') return refuse('not-a-length-of-time', text, `Write a length of time only: ${example}.`)
  const ms = inMs(first.value, bareMs, text)
  if (!ms.ok) return ms
  switch (limit) {
    case 'exact':
      return good({ lowMs: ms.value, highMs: ms.value })
    case 'least':
      return good({ lowMs: ms.value, highMs: null })
    case 'most':
      return good({ lowMs: 0, highMs: ms.value })
  }
}

function readRange(text: string, limit: Limit, first: ScannedTime, rest: string, bareMs: number | null): Read<Ends> {
  if (limit !== 'exact')
    return refuse('one-value-wanted', text, 'Give one limit or a range, for example at least 20 min.')
  const second = scanTime(rest)
  if (!second.ok) return second
  if (second.value.length !== rest.length) {
    return refuse('not-a-length-of-time', text, `Write a length of time only: ${example}.`)
  }
  const sharedMs = first.unitMs === null && second.value.unitMs !== null ? sharedUnitMs(rest) : bareMs
  if (sharedMs === null && first.unitMs === null) {
    return refuse('unit-missing', text, 'Give both ends their units, for example 50 min to 1 h 20 min.')
  }
  const low = inMs(first, sharedMs, text)
  if (!low.ok) return low
  const high = inMs(second.value, bareMs, text)
  if (!high.ok) return high
  if (high.value < low.value) return refuse('range-backwards', text, 'Write the shorter time first: 25 to 30 min.')
  return good({ lowMs: low.value, highMs: high.value })
}

/** "25 to 30 min": the 25 takes the unit of the 30. "1 to 1 h 30 min" has no one unit to take. */
function sharedUnitMs(rest: string): number | null {
  const units = rest.match(/\p{L}+/gu) ?? []
  const unit = units.length === 1 && !rest.includes(':') ? scanTime(`1 ${units[0]}`) : null
  return unit?.ok ? unit.value.value : null
}

function inMs(time: ScannedTime, bareMs: number | null, text: string): Read<number> {
  const unitMs = time.unitMs ?? bareMs
  if (unitMs === null) {
    return refuse('unit-missing', text, `Add the unit: ${time.value} s, ${time.value} min or ${time.value} h.`)
  }
  return within(time.value * unitMs, 0, longestDays * dayMs, text, `Write 0 to ${longestDays} days, for example 12 h.`)
}
