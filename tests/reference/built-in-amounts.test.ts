// What the built-in protocols set out, against what is common practice for each technique (from memory, no source). Amounts
// are of the active substance, for 100 g of dry goods and the answers as they stand.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Programme, SetOut } from '../../src/core/protocol/model.ts'
import { programmeFrom, protocolFrom } from '../core/protocol/made.ts'

const textOf = (file: string): string => readFileSync(new URL(`../../protocols/${file}`, import.meta.url), 'utf8')
const made = (file: string): Programme => programmeFrom(textOf(file))

/** Grams of a material that surely go in: those of an answer or a further round are marked "if wanted". */
function gramsOf(programme: Programme, material: string): number {
  const own = programme.setOut.filter(
    ({ id, label }) => (id === material || id.startsWith(`${material}-`)) && !label.endsWith('if wanted')
  )
  if (own.length === 0) throw new Error(`no ${material} among ${programme.setOut.map(({ id }) => id).join(', ')}`)
  return own.reduce((sum, one) => sum + activeG(one), 0)
}

const activeG = ({ amount, percent }: SetOut): number =>
  amount.unit === 'g' ? amount.value : (amount.value * (percent ?? 100)) / 100

describe('the liquor ratio', () => {
  const ranges: [file: string, least: number, most: number][] = [
    ['level-immersion.yaml', 30, 40],
    ['low-water.yaml', 3, 8],
    ['lab-dip-exhaust.yaml', 30, 30],
    ['lab-dip-boil.yaml', 30, 30],
    ['resist.yaml', 30, 40]
  ]
  it.each(ranges)('of %s lies from %d to %d', (file, least, most) => {
    const { liquorRatio } = made(file)
    expect(liquorRatio).toBeGreaterThanOrEqual(least)
    expect(liquorRatio).toBeLessThanOrEqual(most)
  })
})

describe('acid, % of the goods', () => {
  // Acid pre-soak for painted goods: 2 to 3 % owf of acetic acid.
  it.each(['hand-paint-steam.yaml', 'speckle.yaml', 'microwave.yaml'])('of the soak in %s is 2 to 3', (file) => {
    const grams = gramsOf(made(file), 'acid')
    expect(grams).toBeGreaterThanOrEqual(2)
    expect(grams).toBeLessThanOrEqual(3)
  })

  it('of an overdye is half of that of a level shade', () => {
    expect(gramsOf(made('overdye.yaml'), 'acid')).toBeCloseTo(gramsOf(made('level-immersion.yaml'), 'acid') / 2, 5)
  })
})

describe('grams for a litre', () => {
  const ranges: [file: string, material: string, litres: number, least: number, most: number][] = [
    // Litres for 100 g: the liquor ratio over ten.
    ['reactive-exhaust.yaml', 'salt', 2, 20, 50],
    ['reactive-exhaust.yaml', 'soda', 2, 10, 20],
    ['reactive-low-water.yaml', 'soda', 0.5, 10, 20],
    // The solution makes the soak larger: 1 L of water and 0.4 L of solution.
    ['reactive-batch.yaml', 'soda', 1.4, 20, 50],
    ['scour-wool.yaml', 'detergent', 3, 0.5, 2],
    ['scour-cellulose.yaml', 'detergent', 3, 0.5, 2]
  ]
  it.each(ranges)('%s: %s in %d L is %d to %d g/L', (file, material, litres, least, most) => {
    const gPerL = gramsOf(made(file), material) / litres
    expect(gPerL).toBeGreaterThanOrEqual(least)
    expect(gPerL).toBeLessThanOrEqual(most)
  })
})

describe('what may be typed', () => {
  const ranges: [file: string, input: string, least: number, most: number][] = [
    ['alum-mordant.yaml', 'alum', 10, 20],
    ['alum-mordant.yaml', 'tartar', 5, 7],
    ['natural-dye.yaml', 'stuff', 50, 200],
    ['natural-dye.yaml', 'hot', 70, 90],
    ['sun-jar.yaml', 'days', 86_400_000, 3 * 86_400_000]
  ]
  it.each(ranges)('%s: %s goes from %d to %d, and its default lies between', (file, id, least, most) => {
    const input = protocolFrom(textOf(file)).inputs.find((one) => one.id === id)
    expect([input?.least, input?.most]).toEqual([least, most])
    expect(input?.default).toBeGreaterThanOrEqual(least)
    expect(input?.default).toBeLessThanOrEqual(most)
  })

  it('and iron is 1 to 2 % of the goods, where it is wanted', () => {
    const iron = made('natural-dye.yaml').setOut.find(({ id }) => id === 'iron')
    expect(iron?.amount.value).toBeGreaterThanOrEqual(1)
    expect(iron?.amount.value).toBeLessThanOrEqual(2)
  })
})

describe('a dilution series', () => {
  it('halves from jar to jar: 2 % down to 0.0625 % of a sixth of the goods', () => {
    const { setOut } = made('dilution-series.yaml')
    const dyes = setOut.filter(({ id }) => id.startsWith('stock-') || id.startsWith('weak-')).map(activeG)
    const expected = [2, 1, 0.5, 0.25, 0.125, 0.0625].map((percent) => (percent / 100) * (100 / 6))
    expect(dyes).toHaveLength(6)
    // A syringe's 0.1 mL under 10 mL: 5 % of the smallest measured, 1 mL.
    for (const [i, grams] of dyes.entries()) expect(Math.abs(grams / (expected[i] ?? 1) - 1)).toBeLessThan(0.05)
  })
})
