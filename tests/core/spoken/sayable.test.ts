import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Units } from '../../../src/core/quantity/index.ts'
import { metricUnits } from '../../../src/core/quantity/index.ts'
import { amountWords, degreesWords } from '../../../src/core/spoken/amount-words.ts'
import { lengthWords } from '../../../src/core/spoken/length-words.ts'
import { sayable } from '../../../src/core/spoken/sayable.ts'
import { onlyWords } from './only-words.ts'

const us: Units = { temperature: 'F', volume: 'us', mass: 'us' }
const comma: Units = { ...metricUnits, decimal: 'comma' }

describe('an amount in words', () => {
  it.each<[number, 'mL' | 'g' | 'count', Units, string]>([
    [30, 'mL', metricUnits, 'thirty millilitres'],
    [1, 'mL', metricUnits, 'one millilitre'],
    [0.5, 'mL', metricUnits, 'half a millilitre'],
    [2_000, 'mL', metricUnits, 'two litres'],
    [2_500, 'mL', metricUnits, 'two and a half litres'],
    [0.003, 'mL', metricUnits, 'less than zero point zero one millilitres'],
    [1.5, 'g', metricUnits, 'one and a half grams'],
    [0.125, 'g', metricUnits, 'zero point one two five grams'],
    [0.125, 'g', comma, 'zero point one two five grams'],
    [12.25, 'g', comma, 'twelve point three grams'],
    [1_234, 'g', metricUnits, 'one thousand two hundred and thirty-four grams'],
    [3, 'count', metricUnits, 'three'],
    // Sizes of the US measures: NIST SP 811 App. B.
    [2 * 14.78676478125, 'mL', us, 'two US tablespoons'],
    [1.5 * 4.92892159375, 'mL', us, 'one and a half US teaspoons'],
    [0.75 * 236.5882365, 'mL', us, 'three quarters of a US cup'],
    [28.349523125, 'g', us, 'one ounce'],
    [453.59237 + 3.5 * 28.349523125, 'g', us, 'one pound three and a half ounces']
  ])('%d %s', (value, unit, units, words) => {
    expect(amountWords({ value, unit }, units)).toBe(words)
  })

  it('a temperature is said in the dyer’s scale', () => {
    expect(degreesWords(82, metricUnits)).toBe('eighty-two degrees')
    expect(degreesWords(1, metricUnits)).toBe('one degree')
    expect(degreesWords(82, us)).toBe('one hundred and eighty degrees')
  })

  it('a length of time is rounded for the ear', () => {
    expect([4_000, 38_000, 94_000, 96_000, 180_000, 3_600_000, 4_800_000, 3 * 86_400_000].map(lengthWords)).toEqual([
      ...['ten seconds', 'forty seconds', 'ninety seconds', 'two minutes', 'three minutes', 'one hour'],
      ...['one hour twenty minutes', 'three days']
    ])
  })
})

describe('a text as it is said', () => {
  it.each([
    ['Acid 2 in', 'Acid two in'],
    ['Heat up to 80–85 °C', 'Heat up to eighty to eighty-five degrees'],
    ['Hold at 80..85 °C', 'Hold at eighty to eighty-five degrees'],
    ['Wash, 10 min at 40°C', 'Wash, ten minutes at forty degrees'],
    ['1 °C/min', 'one degree per minute'],
    ['0.5 to 1 g/L of a non-ionic detergent', 'zero point five to one gram per litre of a non-ionic detergent'],
    ['1/3 of acid, then 2/3', 'a third of acid, then two thirds'],
    ['1½ g', 'one and a half grams'],
    ['What % of it?', 'What percent of it?'],
    ['1.5 % owf', 'one point five percent of the weight of the goods'],
    ['20:1', 'twenty to one'],
    ['−5 °C', 'minus five degrees'],
    ['J1 & J2', 'J one and J two'],
    ['2031-06-14', 'two zero three one, zero six, one four'],
    ['the 1st and the 22nd', 'the first and the twenty-second'],
    ['1,234 mL', 'one thousand two hundred and thirty-four millilitres'],
    ['1,5 g', 'one and a half grams'],
    ['skein/tab (wet)', 'skein or tab wet'],
    ['Pull the fringe, slowly!', 'Pull the fringe, slowly!'],
    ['Färben', 'Färben']
  ])('%s', (text, words) => {
    expect(sayable(text, metricUnits)).toBe(words)
  })

  it('names the scale of a temperature that is not the dyer’s own', () => {
    expect(sayable('Heat up to 80 °C', us)).toBe('Heat up to eighty degrees Celsius')
    expect(sayable('180 °F', metricUnits)).toBe('one hundred and eighty degrees Fahrenheit')
  })

  it('holds no figure and no sign, whatever was typed', () => {
    const pieces = fc.constantFrom(
      '1',
      '2.5',
      '1/3',
      '%',
      '°C',
      ' g',
      'mL',
      '–',
      '..',
      '/',
      ':',
      '#',
      '½',
      '²',
      '٣',
      '€',
      '🧶',
      '\n',
      'a',
      'é',
      '('
    )
    const typed = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 60 }),
      fc.array(pieces).map((all) => all.join(''))
    )
    fc.assert(
      fc.property(typed, fc.constantFrom(metricUnits, us, comma), (text, units) => {
        expect(sayable(text, units)).toMatch(onlyWords)
      }),
      { seed: 20310614, numRuns: 3_000 }
    )
  })

  it('keeps a text without figures and signs as it was typed', () => {
    const plain = fc.array(fc.stringMatching(/^[a-zA-Zäöüé]{1,9}$/), { minLength: 1 }).map((words) => words.join(' '))
    fc.assert(
      fc.property(plain, (text) => sayable(text, metricUnits) === text),
      { seed: 7, numRuns: 500 }
    )
  })
})
