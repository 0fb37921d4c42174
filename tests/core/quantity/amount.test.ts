import { describe, expect, test } from 'vitest'
import { readAmount } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

const noName = { of: null }

describe('amounts of the protocol language', () => {
  test.each([
    ['30 mL', { kind: 'volume', value: 30, unit: 'mL', ...noName }],
    ['30ml', { kind: 'volume', value: 30, unit: 'mL', ...noName }],
    ['30 cc', { kind: 'volume', value: 30, unit: 'mL', ...noName }],
    ['1,5 L', { kind: 'volume', value: 1500, unit: 'mL', ...noName }],
    ['2 litres', { kind: 'volume', value: 2000, unit: 'mL', ...noName }],
    ['3 cL', { kind: 'volume', value: 30, unit: 'mL', ...noName }],
    ['½ dL', { kind: 'volume', value: 50, unit: 'mL', ...noName }],
    ['30 mL of vinegar', { kind: 'volume', value: 30, unit: 'mL', of: 'vinegar' }],
    ['30 mL of the White Vinegar', { kind: 'volume', value: 30, unit: 'mL', of: 'White Vinegar' }],
    ['1 US cup', { kind: 'volume', value: 236.5882365, unit: 'mL', ...noName }],
    ['2 U.S. cups of water', { kind: 'volume', value: 473.176473, unit: 'mL', of: 'water' }],
    ['1 1/2 metric cups', { kind: 'volume', value: 375, unit: 'mL', ...noName }],
    ['2 US tbsp', { kind: 'volume', value: 29.5735295625, unit: 'mL', ...noName }],
    ['1 Australian tablespoon', { kind: 'volume', value: 20, unit: 'mL', ...noName }],
    ['1 imperial pint', { kind: 'volume', value: 568.26125, unit: 'mL', ...noName }],
    ['1 UK pint', { kind: 'volume', value: 568.26125, unit: 'mL', ...noName }],
    ['1 imp. fl. oz.', { kind: 'volume', value: 28.4130625, unit: 'mL', ...noName }],
    ['8 US fluid ounces', { kind: 'volume', value: 236.5882365, unit: 'mL', ...noName }],
    ['5 g', { kind: 'mass', value: 5, unit: 'g', ...noName }],
    ['250 mg of dye', { kind: 'mass', value: 0.25, unit: 'g', of: 'dye' }],
    ['1.2 kg', { kind: 'mass', value: 1200, unit: 'g', ...noName }],
    ['2 oz', { kind: 'mass', value: 56.69904625, unit: 'g', ...noName }],
    ['1 lb', { kind: 'mass', value: 453.59237, unit: 'g', ...noName }],
    ['1.5 % owf', { kind: 'owf', percent: 1.5, ...noName }],
    ['1.5% owf', { kind: 'owf', percent: 1.5, ...noName }],
    ['2 % WOF', { kind: 'owf', percent: 2, ...noName }],
    ['2 % o.w.f. of stock no.3', { kind: 'owf', percent: 2, of: 'stock no.3' }],
    ['2 percent on weight of fibre', { kind: 'owf', percent: 2, ...noName }],
    ['1 % owf of vinegar', { kind: 'owf', percent: 1, of: 'vinegar' }],
    ['0 % owf', { kind: 'owf', percent: 0, ...noName }],
    ['5 g/L', { kind: 'gPerL', value: 5, ...noName }],
    ['5 g per litre of salt', { kind: 'gPerL', value: 5, of: 'salt' }],
    ['500 mg/l', { kind: 'gPerL', value: 0.5, ...noName }],
    ['20:1', { kind: 'liquor', ratio: 20 }],
    ['1:20', { kind: 'liquor', ratio: 20 }],
    ['20 to 1', { kind: 'liquor', ratio: 20 }],
    ['1 : 12.5', { kind: 'liquor', ratio: 12.5 }],
    ['1/2 of acid', { kind: 'share', share: 0.5, of: 'acid' }],
    ['0.25 of acid', { kind: 'share', share: 0.25, of: 'acid' }],
    ['half of the acid', { kind: 'share', share: 0.5, of: 'acid' }],
    ['half the acid', { kind: 'share', share: 0.5, of: 'acid' }],
    ['a third of acid', { kind: 'share', share: 1 / 3, of: 'acid' }],
    ['two thirds of the acid', { kind: 'share', share: 2 / 3, of: 'acid' }],
    ['three quarters of acid', { kind: 'share', share: 0.75, of: 'acid' }],
    ['50 % of acid', { kind: 'share', share: 0.5, of: 'acid' }],
    ['100 % of acid', { kind: 'share', share: 1, of: 'acid' }],
    ['all of the acid', { kind: 'share', share: 1, of: 'acid' }],
    ['all the acid', { kind: 'share', share: 1, of: 'acid' }],
    ['the rest of acid', { kind: 'rest', of: 'acid' }],
    ['the rest of the acid', { kind: 'rest', of: 'acid' }],
    ['3 drops', { kind: 'count', value: 3, unit: 'drops', ...noName }],
    ['1 drop of soap', { kind: 'count', value: 1, unit: 'drops', of: 'soap' }]
  ])('%j', (text, amount) => {
    expect(valueIn(readAmount(text))).toEqual({ ...amount, asEntered: text, approx: false })
  })

  test('Pounds and ounces together are one mass', () => {
    const amount = valueIn(readAmount('1 lb 4 oz of wool'))
    expect(amount).toMatchObject({ kind: 'mass', of: 'wool' })
    expect(amount.kind === 'mass' && amount.value).toBeCloseTo(453.59237 + 4 * 28.349523125, 9)
  })

  test('"about" is kept as a mark beside the same value, and the words of the writer are kept', () => {
    expect(valueIn(readAmount('  about 30 mL '))).toEqual({
      kind: 'volume',
      value: 30,
      unit: 'mL',
      of: null,
      approx: true,
      asEntered: 'about 30 mL'
    })
  })

  test.each([
    ['us', '1 cup', 236.5882365],
    ['us', '1 tbsp', 14.78676478125],
    ['us', '1 tsp', 4.92892159375],
    ['us', '1 gal', 3785.411784],
    ['us', '1 pint', 473.176473],
    ['metric', '1 cup', 250],
    ['metric', '1 tablespoon', 15],
    ['metric', '1 teaspoon', 5],
    ['imperial', '1 cup', 284.130625],
    ['imperial', '1 fl oz', 28.4130625],
    ['imperial', '1 quart', 1136.5225]
  ] as const)('In a %s kitchen %j is %d mL', (kitchen, text, valueML) => {
    expect(valueIn(readAmount(text, { kitchen }))).toMatchObject({ kind: 'volume', value: valueML })
  })

  test.each([
    ['metric', '1 fl oz', 'fluid-ounce-without-country'],
    ['metric', '1 pint', 'pint-without-country'],
    ['imperial', '1 tbsp', 'tablespoon-without-country'],
    ['imperial', '1 tsp', 'teaspoon-without-country']
  ] as const)('In a %s kitchen %j stays refused: nobody agrees on its size', (kitchen, text, code) => {
    expect(problemIn(readAmount(text, { kitchen })).code).toBe(code)
  })

  test('A country written out beats the kitchen of the protocol', () => {
    expect(valueIn(readAmount('1 metric cup', { kitchen: 'us' }))).toMatchObject({ value: 250 })
  })

  test('A cup without a country is refused with every choice and its size named', () => {
    expect(problemIn(readAmount('2 cups of water'))).toEqual({
      code: 'cup-without-country',
      found: 'cups',
      instead: 'Say which: US cup (236.6 mL) or metric cup (250 mL) or imperial cup (284.1 mL).'
    })
  })

  test('Grain is refused with both its meanings named, for it is a strength on a vinegar bottle', () => {
    const problem = problemIn(readAmount('50 grain vinegar'))
    expect(problem.code).toBe('grain-unclear')
    expect(problem.instead).toContain('5 %')
    expect(problem.instead).toContain('0.0648 g')
  })

  test.each([
    ['', 'empty'],
    ['some vinegar', 'not-a-number'],
    ['cup', 'not-a-number'],
    ['-5 mL', 'out-of-range'],
    ['1001 L', 'out-of-range'],
    ['1001 kg', 'out-of-range'],
    ['1001 % owf', 'out-of-range'],
    ['1001 g/L', 'out-of-range'],
    ['1:2000', 'out-of-range'],
    ['0:1', 'out-of-range'],
    ['150 % of acid', 'out-of-range'],
    ['0 of acid', 'out-of-range'],
    ['1 lb 20 oz', 'out-of-range'],
    ['30..40 mL', 'one-value-wanted'],
    ['30-40 mL', 'one-value-wanted'],
    ['30 to 40 mL', 'one-value-wanted'],
    ['2 US cups 3 US tbsp', 'two-amounts'],
    ['1 lb 300 g', 'two-amounts'],
    ['3 5 mL', 'not-a-number'],
    ['1,500 mL', 'comma-ambiguous'],
    ['30 mL vinegar', 'of-missing'],
    ['2 % acid', 'of-missing'],
    ['2 % owf acid', 'of-missing'],
    ['1/2 of', 'of-missing'],
    ['the rest', 'of-missing'],
    ['half', 'of-missing'],
    ['30 mL of', 'of-missing'],
    ['30 mL of <b>', 'name-unclear'],
    ['1 lb of 4', 'name-unclear'],
    ['30 mL of {a}', 'name-unclear'],
    ['2 %', 'percent-of-what'],
    ['2 % of the fibre', 'percent-of-what'],
    ['5 % w/v', 'percent-of-what'],
    ['2:3', 'ratio-unclear'],
    ['20:1 of acid', 'ratio-unclear'],
    ['3', 'unit-missing'],
    ['about 1.5', 'unit-missing'],
    ['1 of acid', 'unit-missing'],
    ['3 of acid', 'unit-missing'],
    ['30 millilitrs', 'unit-unknown'],
    ['2 T', 'unit-unknown'],
    ['2 UK cups', 'unit-unknown'],
    ['2 imperial tbsp', 'unit-unknown'],
    ['2 spoons', 'unit-unknown'],
    ['2 pinch of salt', 'unit-unknown'],
    ['5 gr', 'grain-unclear'],
    ['2 tbsp', 'tablespoon-without-country'],
    ['2 constructor', 'unit-unknown'],
    ['2 __proto__', 'unit-unknown']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readAmount(text)).code).toBe(code)
  })

  test('A negative amount is told that amounts begin at 0', () => {
    expect(problemIn(readAmount('-5 mL')).instead).toBe('An amount is 0 or more, for example 30 mL.')
  })

  test('Text far too long is refused by its length before anything in it is looked at', () => {
    expect(problemIn(readAmount(' '.repeat(1000))).code).toBe('too-long')
  })

  test('A problem quotes the unit as it was written', () => {
    expect(problemIn(readAmount('2 UK Cups')).found).toBe('UK Cups')
    expect(problemIn(readAmount('1/2 acid')).instead).toContain('1/2 of acid')
  })

  test('A number without a unit is asked for one, and a part of one also for its material', () => {
    expect(problemIn(readAmount('2'))).toMatchObject({ found: '2', instead: 'Write 2 % owf, 2 g or 2 mL.' })
    expect(problemIn(readAmount('1/2')).instead).toBe(
      'Write 1/2 % owf, 1/2 g or 1/2 mL, or a share such as 1/2 of acid.'
    )
  })

  test.each([
    ['2 % ofw', 'ofw', 'Write 2 % owf.'],
    ['2% OFW', 'OFW', 'Write 2 % owf.'],
    ['2 % of', 'of', 'Write 2 % owf.'],
    ['2 % pwf', 'pwf', 'Write 2 % owf.'],
    ['2 % owwf', 'owwf', 'Write 2 % owf.'],
    ['2 % ofw of plum dye', 'ofw', 'Write 2 % owf of plum dye.'],
    ['2 % ofw plum dye', 'ofw', 'Write 2 % owf of plum dye.']
  ])('A slip of the finger in %j is taken for owf, not for a material', (text, found, instead) => {
    expect(problemIn(readAmount(text))).toEqual({ code: 'unit-unknown', found, instead })
  })

  test('A short name after a percentage stays a name', () => {
    expect(problemIn(readAmount('2 % oak')).instead).toBe('Write 2 % of oak, or 2 % owf of oak.')
  })

  test('A name left without "of" is shown how to be written', () => {
    expect(problemIn(readAmount('30 mL vinegar'))).toMatchObject({
      found: 'vinegar',
      instead: 'Write "of" before the name: 30 mL of vinegar.'
    })
  })
})
