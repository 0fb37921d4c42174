import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readNumber } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

describe('numbers as people write them', () => {
  test.each([
    ['3', 3],
    ['1.5', 1.5],
    ['1,5', 1.5],
    ['1,50', 1.5],
    ['0,125', 0.125],
    ['1234,567', 1234.567],
    ['.5', 0.5],
    ['1/2', 0.5],
    ['1⁄2', 0.5],
    ['3/2', 1.5],
    ['1 1/2', 1.5],
    ['1½', 1.5],
    ['1 ½', 1.5],
    ['⅔', 2 / 3],
    ['1 500', 1500],
    ['1\u2009500', 1500],
    ['1\u202f500\u202f000,5', 1500000.5],
    ['12\u00a0345.25', 12345.25],
    ['+5', 5],
    ['-5', -5],
    ['−5', -5],
    ['–5', -5],
    ['- 1/2', -0.5],
    ['about 30', 30],
    ['~30', 30],
    ['≈ 30', 30],
    ['approx. 30', 30],
    ['approximately 30', 30],
    ['ca. 30', 30],
    ['  30\t', 30],
    ['-0', 0]
  ])('%j is read as %d', (text, value) => {
    expect(valueIn(readNumber(text))).toBe(value)
  })

  test.each([
    ['1,500', 'comma-ambiguous'],
    ['12,345', 'comma-ambiguous'],
    ['1,500.5', 'digits-grouped'],
    ['1.500,5', 'digits-grouped'],
    ['1,500,000', 'digits-grouped'],
    ['1.500.000', 'not-a-number'],
    ['1e3', 'not-a-number'],
    ['1E+3', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['-', 'not-a-number'],
    ['.', 'not-a-number'],
    ['0x10', 'not-a-number'],
    ['1/0', 'not-a-number'],
    ['1/2/3', 'not-a-number'],
    ['1,5/2', 'not-a-number'],
    ['1 3/2', 'not-a-number'],
    ['1.5.', 'one-value-wanted'],
    ['5 6', 'one-value-wanted'],
    ['5-6', 'one-value-wanted'],
    ['٣', 'not-a-number'],
    ['1\u200b5', 'not-a-number'],
    ['5 mL', 'not-a-number'],
    ['1'.repeat(12), 'out-of-range'],
    ['1'.repeat(65), 'too-long']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readNumber(text)).code).toBe(code)
  })

  test('A comma that could part thousands is refused with both choices named', () => {
    expect(problemIn(readNumber('1,500'))).toEqual({
      code: 'comma-ambiguous',
      found: '1,500',
      instead: 'Write 1.5 or 1500: this comma could mean either.'
    })
  })

  test('A decimal comma never reads as a thousand: with a comma a number is either the same as with a point, or refused', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99999 }), fc.stringMatching(/^\d{1,5}$/), (whole, decimals) => {
        const read = readNumber(`${whole},${decimals}`)
        if (read.ok) expect(read.value).toBe(Number(`${whole}.${decimals}`))
        else expect(read.problem.code).toBe('comma-ambiguous')
        const couldBeThousands = decimals.length === 3 && whole > 0 && whole < 1000
        expect(read.ok).toBe(!couldBeThousands)
      })
    )
  })

  test('A number outside the limits of its field is refused with the limits named', () => {
    expect(valueIn(readNumber('14', { least: 0, most: 14 }))).toBe(14)
    expect(problemIn(readNumber('15', { least: 0, most: 14 }))).toMatchObject({
      code: 'out-of-range',
      instead: 'Write a number between 0 and 14.'
    })
  })
})
