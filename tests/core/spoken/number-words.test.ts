import { describe, expect, it } from 'vitest'
import { figureWords, numberWords, ordinalWords } from '../../../src/core/spoken/number-words.ts'

// Written by hand in British usage ("and" before tens and ones, hyphens from twenty-one to ninety-nine), from memory.
const byHand: [number, string][] = [
  [0, 'zero'],
  [1, 'one'],
  [9, 'nine'],
  [10, 'ten'],
  [11, 'eleven'],
  [12, 'twelve'],
  [13, 'thirteen'],
  [14, 'fourteen'],
  [15, 'fifteen'],
  [18, 'eighteen'],
  [19, 'nineteen'],
  [20, 'twenty'],
  [21, 'twenty-one'],
  [30, 'thirty'],
  [40, 'forty'],
  [44, 'forty-four'],
  [55, 'fifty-five'],
  [80, 'eighty'],
  [99, 'ninety-nine'],
  [100, 'one hundred'],
  [101, 'one hundred and one'],
  [110, 'one hundred and ten'],
  [115, 'one hundred and fifteen'],
  [342, 'three hundred and forty-two'],
  [999, 'nine hundred and ninety-nine'],
  [1_000, 'one thousand'],
  [1_001, 'one thousand and one'],
  [1_099, 'one thousand and ninety-nine'],
  [1_100, 'one thousand one hundred'],
  [1_234, 'one thousand two hundred and thirty-four'],
  [10_000, 'ten thousand'],
  [12_012, 'twelve thousand and twelve'],
  [100_000, 'one hundred thousand'],
  [500_050, 'five hundred thousand and fifty'],
  [999_999, 'nine hundred and ninety-nine thousand nine hundred and ninety-nine'],
  [1.5, 'one point five'],
  [0.25, 'zero point two five'],
  [10.05, 'ten point zero five'],
  [2.0004, 'two'],
  [-3, 'minus three'],
  [-0.0001, 'zero'],
  [1_000_000, 'one zero zero zero zero zero zero'],
  [Number.NaN, 'not known']
]

/** The other way round, by its own rules: words are added up. */
function summed(words: string): number {
  const ones = 'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen'
  const list = `${ones} sixteen seventeen eighteen nineteen`.split(' ')
  const tens = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')
  let total = 0
  let part = 0
  for (const word of words.split(/[ -]/)) {
    if (word === 'and') continue
    if (word === 'thousand') {
      total += part * 1_000
      part = 0
    } else if (word === 'hundred') part *= 100
    else if (tens.includes(word)) part += (tens.indexOf(word) + 2) * 10
    else if (list.includes(word)) part += list.indexOf(word)
    else throw new Error(`"${word}" is no number`)
  }
  return total + part
}

describe('numbers in words', () => {
  it.each(byHand)('%d is "%s"', (value, words) => {
    expect(numberWords(value)).toBe(words)
  })

  it('say what they are: all below 20 000, and every 37th up to 999 999', () => {
    for (let value = 0; value <= 999_999; value += value < 20_000 ? 1 : 37) {
      const words = numberWords(value)
      if (summed(words) !== value) expect(words).toBe(value)
    }
  })

  it('of figures as written keep a zero in front, and ordinals are as in a calendar', () => {
    expect(figureWords('06')).toBe('zero six')
    expect([1, 2, 3, 4, 5, 8, 9, 12, 13, 20, 21, 30, 101].map(ordinalWords)).toEqual([
      ...['first', 'second', 'third', 'fourth', 'fifth', 'eighth', 'ninth', 'twelfth', 'thirteenth', 'twentieth'],
      ...['twenty-first', 'thirtieth', 'one hundred and first']
    ])
  })
})
