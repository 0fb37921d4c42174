// Amounts worked out for a pot against sums from textbooks and bottle labels.
import { describe, expect, it } from 'vitest'
import { withSteps } from '../core/protocol/broken-files.ts'
import { programmeFrom } from '../core/protocol/made.ts'

type Bottle = { percent: number; basis: 'w/v' | 'w/w'; densityGPerML: number | null }

const doseML = (amount: string, massG: number, bottle: Bottle): number | undefined => {
  const text = withSteps(`- add: ${amount} of it`, 'materials:\n  it: {kind: stock, strength: 9 %}\n')
  const materials = { it: { name: 'it', ...bottle } }
  return programmeFrom(text, { skeins: [{ tag: 'S', massG }], materials }).setOut[0]?.amount.value
}

const wv = (percent: number): Bottle => ({ percent, basis: 'w/v', densityGPerML: null })
const ww = (percent: number, densityGPerML: number): Bottle => ({ percent, basis: 'w/w', densityGPerML })

describe('depth of shade', () => {
  // Stock mL = goods g × % owf ÷ % w/v: the usual formula of laboratory dyeing texts.
  it('takes 40 mL of a 1 % stock for 0.8 % on 50 g', () => {
    expect(doseML('0.8 % owf', 50, wv(1))).toBe(40)
  })

  it('halves down a dilution series on 10 g tabs', () => {
    // Common practice, no source: 2, 1, 0.5, 0.25 % of a 1 % stock; 0.125 and 0.0625 % of one at 0.1 %.
    expect(['2', '1', '0.5', '0.25'].map((p) => doseML(`${p} % owf`, 10, wv(1)))).toEqual([20, 10, 5, 2.5])
    expect(['0.125', '0.0625'].map((p) => doseML(`${p} % owf`, 10, wv(0.1)))).toEqual([13, 6.3])
  })
})

describe('acid on the weight of the goods', () => {
  // 2 % owf on 50 g is 1.00 g of acetic acid. Densities of acetic acid at 20 °C: 56 % w/w 1.063, 80 % w/w 1.070 g/mL
  // (handbook values, from memory).
  it.each([
    ['vinegar of 5 % w/v', wv(5), 20],
    ['vinegar of 6 % w/v', wv(6), 17],
    ['acid of 56 % w/w', ww(56, 1.063), 1.7],
    ['acid of 80 % w/w', ww(80, 1.07), 1.2]
  ])('is worked out from %s', (_, bottle, mL) => {
    expect(doseML('2 % owf', 50, bottle as Bottle)).toBe(mL)
  })
})

describe('liquor', () => {
  it('is the liquor ratio times the goods, and grams for a litre go by it', () => {
    // 10 % owf at 30:1 is 3.3 g/L: g/L = % × 10 ÷ ratio.
    const text = (amount: string): string =>
      withSteps(`- fill\n- add: ${amount} of salt`, 'liquor: 30:1\nmaterials:\n  salt: powder\n')
    const salt = (amount: string) =>
      programmeFrom(text(amount), { skeins: [{ tag: 'S', massG: 50 }] }).setOut[1]?.amount
    expect(salt('10 % owf')).toMatchObject({ value: 5, unit: 'g' })
    expect(salt('3.3333 g/L')).toMatchObject({ value: 5, unit: 'g' })
  })

  it('is read from kitchen measures at their exact size', () => {
    // US cup 236.5882365 mL (NIST SP 811, 2008, App. B.8); metric cup 250 mL.
    const cup = (header: string): number | undefined =>
      programmeFrom(withSteps('- fill: 4 cups', header)).setOut[0]?.amount.value
    expect(cup('kitchen: us\n')).toBe(946)
    expect(cup('kitchen: metric\n')).toBe(1000)
  })
})
