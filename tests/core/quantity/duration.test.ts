import { describe, expect, test } from 'vitest'
import { readDuration } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

const s = 1000
const min = 60 * s
const h = 60 * min
const day = 24 * h

describe('lengths of time', () => {
  test.each([
    ['30 s', 30 * s],
    ['6 min', 6 * min],
    ['6min', 6 * min],
    ['6 min.', 6 * min],
    ['6 minutes', 6 * min],
    ['1 h 20 min', 80 * min],
    ['1h20min', 80 * min],
    ['1h 20m', 80 * min],
    ['1 hour and 20 minutes', 80 * min],
    ['1 h, 20 min, 30 s', 80 * min + 30 * s],
    ['1 h ½ min', h + 30 * s],
    ['90 min', 90 * min],
    ['2 h', 2 * h],
    ['1,5 h', 90 * min],
    ['1 1/2 h', 90 * min],
    ['1½ h', 90 * min],
    ['12 hours', 12 * h],
    ['1 day', day],
    ['2 days', 2 * day],
    ['2 days 3 h', 51 * h],
    ['1 week', 7 * day],
    ['60 days', 60 * day],
    ['1:30 h', 90 * min],
    ['1:30 min', 90 * s],
    ['1:02:07', h + 2 * min + 7 * s],
    ['half an hour', 30 * min],
    ['Half an hour', 30 * min],
    ['a half hour', 30 * min],
    ['an hour', h],
    ['an hour and a half', 90 * min],
    ['a quarter of an hour', 15 * min],
    ['three quarters of an hour', 45 * min],
    ['half a minute', 30 * s],
    ['a minute', min],
    ['a day', day],
    ['0 s', 0]
  ])('%j is one length of time', (text, ms) => {
    expect(valueIn(readDuration(text))).toEqual({ lowMs: ms, highMs: ms, approx: false, asEntered: text })
  })

  test.each([
    ['25..30 min', 25 * min, 30 * min],
    ['25...30 min', 25 * min, 30 * min],
    ['25…30 min', 25 * min, 30 * min],
    ['25-30 min', 25 * min, 30 * min],
    ['25 - 30 min', 25 * min, 30 * min],
    ['25–30 min', 25 * min, 30 * min],
    ['25 to 30 min', 25 * min, 30 * min],
    ['25 min to 30 min', 25 * min, 30 * min],
    ['1 to 1½ h', h, 90 * min],
    ['30 min..12 h', 30 * min, 12 * h],
    ['50 min – 1 h 20 min', 50 * min, 80 * min],
    ['1 h 10 min to 1 h 20 min', 70 * min, 80 * min],
    ['half an hour to an hour', 30 * min, h],
    ['1.5..2 h', 90 * min, 2 * h],
    ['at least 20 min', 20 * min, null],
    ['≥ 20 min', 20 * min, null],
    ['At least half an hour', 30 * min, null],
    ['at most 3 min', 0, 3 * min],
    ['up to 3 min', 0, 3 * min],
    ['no more than 3 min', 0, 3 * min]
  ])('%j has two ends', (text, lowMs, highMs) => {
    expect(valueIn(readDuration(text))).toEqual({ lowMs, highMs, approx: false, asEntered: text })
  })

  test('"about" is kept as a mark beside the same time', () => {
    expect(valueIn(readDuration('about 10 min'))).toEqual({
      lowMs: 10 * min,
      highMs: 10 * min,
      approx: true,
      asEntered: 'about 10 min'
    })
  })

  test('A field that shows its unit takes a number alone', () => {
    expect(valueIn(readDuration('6', { bareUnit: 'min' }))).toMatchObject({ lowMs: 6 * min, highMs: 6 * min })
    expect(valueIn(readDuration('25 to 30', { bareUnit: 'min' }))).toMatchObject({ lowMs: 25 * min, highMs: 30 * min })
    expect(valueIn(readDuration('30 s', { bareUnit: 'min' }))).toMatchObject({ lowMs: 30 * s })
  })

  test('A lone 1:30 is refused with both choices named', () => {
    expect(problemIn(readDuration('1:30'))).toEqual({
      code: 'clock-unclear',
      found: '1:30',
      instead: 'Write 1 h 30 min or 1 min 30 s: 1:30 could mean either.'
    })
  })

  test.each([
    ['', 'empty'],
    ['overnight', 'not-a-length-of-time'],
    ['until clear', 'not-a-length-of-time'],
    ['30', 'unit-missing'],
    ['25 to 30', 'unit-missing'],
    ['1 h 20', 'unit-missing'],
    ['1h20', 'unit-missing'],
    ['1 to 1 h 30 min', 'unit-missing'],
    ['30 mL', 'unit-unknown'],
    ['30 moons', 'unit-unknown'],
    ['6 minx', 'unit-unknown'],
    ['30 °C', 'not-a-length-of-time'],
    ['20 min 1 h', 'not-a-length-of-time'],
    ['20 min 30 min', 'not-a-length-of-time'],
    ['20 min after all in', 'not-a-length-of-time'],
    ['1:75 h', 'not-a-length-of-time'],
    ['30..25 min', 'range-backwards'],
    ['1-1/2 h', 'range-backwards'],
    ['at least 20 to 30 min', 'one-value-wanted'],
    ['-5 min', 'out-of-range'],
    ['61 days', 'out-of-range'],
    ['1..61 days', 'out-of-range'],
    ['99999999999999999999 h', 'out-of-range'],
    ['1,500 s', 'comma-ambiguous'],
    ['1e3 s', 'not-a-number'],
    ['1.2.3 min', 'not-a-number']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readDuration(text)).code).toBe(code)
  })
})
