import { describe, expect, test } from 'vitest'
import { readDepth } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

describe('depths and lengths', () => {
  test.each([
    ['12 cm', 12],
    ['120 mm', 12],
    ['1 m', 100],
    ['5 in', 12.7],
    ['5"', 12.7],
    ['2½ inches', 6.35]
  ])('%j is a length', (text, cm) => {
    const read = valueIn(readDepth(text))
    expect(read).toMatchObject({ kind: 'length', asEntered: text })
    expect(read.kind === 'length' && read.cm).toBeCloseTo(cm, 10)
  })

  test.each([
    ['1/4 of the skein', 0.25],
    ['25 % of the skein', 0.25],
    ['0,25 of skein', 0.25],
    ['half the skein', 0.5],
    ['half of the skein', 0.5],
    ['two thirds of the skein', 2 / 3],
    ['all of the skein', 1],
    ['the whole skein', 1],
    ['1 of the skein', 1]
  ])('%j is a part of the skein', (text, value) => {
    expect(valueIn(readDepth(text))).toEqual({ kind: 'fraction', value, approx: false, asEntered: text })
  })

  test.each([
    ['12', 'unit-missing'],
    ['1/4', 'unit-missing'],
    ['12 mL', 'unit-unknown'],
    ['deep', 'not-a-depth'],
    ['-1 cm', 'out-of-range'],
    ['501 cm', 'out-of-range'],
    ['3/2 of the skein', 'out-of-range'],
    ['120 % of the skein', 'out-of-range']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readDepth(text)).code).toBe(code)
  })
})
