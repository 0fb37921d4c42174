import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type QuantityProblemCode,
  quantityProblemCodes,
  type Read,
  readAmount,
  readDepth,
  readDuration,
  readMass,
  readNumber,
  readPercent,
  readRate,
  readTemperature,
  readTemperatureRange,
  readVolume
} from '../../../src/core/quantity/index.ts'
import { problemIn } from './reading.ts'

const readers: [string, (text: string) => Read<unknown>][] = [
  ['amount', readAmount],
  ['US amount', (text) => readAmount(text, { kitchen: 'us' })],
  ['duration', readDuration],
  ['temperature', readTemperature],
  ['temperature range', readTemperatureRange],
  ['rate', readRate],
  ['depth', readDepth],
  ['mass', readMass],
  ['volume', readVolume],
  ['percent', readPercent],
  ['number', readNumber]
]

// The compiler asks for one example of every code, so a new code can't go without a test.
const examples: Record<QuantityProblemCode, Read<unknown>> = {
  empty: readAmount('  '),
  'too-long': readAmount(`1${'0'.repeat(70)} mL`),
  'not-a-number': readAmount('lots'),
  'comma-ambiguous': readAmount('1,500 mL'),
  'digits-grouped': readAmount('1,500.5 mL'),
  'unit-missing': readTemperature('82'),
  'unit-unknown': readAmount('2 spoons'),
  'cup-without-country': readAmount('1 cup'),
  'tablespoon-without-country': readAmount('1 tbsp'),
  'teaspoon-without-country': readAmount('1 tsp'),
  'fluid-ounce-without-country': readAmount('1 fl oz'),
  'pint-without-country': readAmount('1 pint'),
  'quart-without-country': readAmount('1 quart'),
  'gallon-without-country': readAmount('1 gallon'),
  'grain-unclear': readAmount('50 grain'),
  'of-missing': readAmount('30 mL vinegar'),
  'name-unclear': readAmount('30 mL of <i>'),
  'percent-of-what': readAmount('2 %'),
  'ratio-unclear': readAmount('2:3'),
  'one-value-wanted': readAmount('30-40 mL'),
  'two-amounts': readAmount('1 L 200 mL'),
  'out-of-range': readAmount('-1 mL'),
  'range-backwards': readDuration('30..25 min'),
  'clock-unclear': readDuration('1:30'),
  'not-a-volume': readVolume('3 g'),
  'not-a-mass': readMass('3 mL'),
  'not-a-percent': readPercent('3 mL'),
  'not-a-length-of-time': readDuration('overnight'),
  'not-a-temperature': readTemperature('warm'),
  'not-a-rate': readRate('fast'),
  'not-a-depth': readDepth('deep')
}

describe('refusals', () => {
  test.each([...quantityProblemCodes])('%s is refused with what stood there and what would be right', (code) => {
    const problem = problemIn(examples[code])
    expect(problem.code).toBe(code)
    expect(code === 'empty' ? problem.found === '' : problem.found.length > 0).toBe(true)
    expect(problem.found.length).toBeLessThanOrEqual(64)
    expect(problem.instead).toMatch(/^[A-Z].*\.$/)
    expect(problem.instead).not.toMatch(/NaN|undefined|null|Infinity/)
  })

  const pieces = fc.constantFrom(
    ...'0 1 5 9 , . / : - − – + ± ~ % ° ½ ⅔ ( ) < > " \' \u00a0 \u2009 \u200b'.split(' '),
    ...[
      'of',
      'to',
      'and',
      'about',
      'at least',
      'half',
      'an hour',
      'the rest',
      'acid',
      'US',
      'cup',
      'tbsp',
      'fl oz',
      'mL'
    ],
    ...[
      'g',
      'lb',
      'oz',
      'h',
      'min',
      's',
      'days',
      '°C',
      'F',
      'owf',
      'g/L',
      '..',
      ' ',
      '1 500',
      '1/2',
      'e9',
      'NaN',
      '__proto__'
    ]
  )
  const nearMisses = fc.array(pieces, { maxLength: 16 }).map((parts) => parts.join(''))
  const anything = fc.oneof(nearMisses, fc.string({ unit: 'binary', maxLength: 80 }), fc.string({ maxLength: 80 }))

  test.each(readers)('No text makes the reading of a %s throw, and a value it gives is finite', (_, read) => {
    fc.assert(
      fc.property(anything, (text) => {
        const given = read(text)
        if (given.ok) expect(JSON.stringify(given.value)).toMatch(/\d|"rest"|"boil":true|share/)
        else expect(quantityProblemCodes).toContain(given.problem.code)
        // JSON turns NaN and Infinity into null; only the open ends of ranges may be null, and "of".
        const nulls = given.ok
          ? (JSON.stringify(given.value)
              .replace(/"(?:of|highMs|lowC|highC)":null/g, '')
              .match(/null/g) ?? [])
          : []
        expect(nulls).toEqual([])
      }),
      { numRuns: 2000 }
    )
  })

  test.each(readers)('A hostile text never holds up the reading of a %s', (_, read) => {
    const hostile = [
      '1 '.repeat(32),
      '1/'.repeat(32),
      '1,'.repeat(32),
      ' '.repeat(10_000_000),
      `${'9'.repeat(64)}`,
      'a '.repeat(32)
    ]
    for (const text of [
      ...hostile,
      `${'1 h '.repeat(16)}`,
      '.'.repeat(64),
      `about ${'about '.repeat(9)}`,
      '-'.repeat(64)
    ]) {
      read(text)
      const startMs = performance.now()
      read(text)
      // A few milliseconds at most; the bound leaves room for a machine that is busy with other work.
      expect(performance.now() - startMs).toBeLessThan(20)
    }
  })
})
