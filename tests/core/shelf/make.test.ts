import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stockCautions } from '../../../src/core/safety/stock-making.ts'
import { actsOf, planStock, type StockWish } from '../../../src/core/shelf/make.ts'

const bottle = (itemId: string, percentWV: number) => ({
  itemId,
  name: `stock ${itemId}`,
  lot: 'L',
  percentWV,
  madeOn: null
})
const plan = (wish: StockWish) => {
  const made = planStock(wish)
  if (!made.ok) throw new Error(made.problems.map(({ what }) => what).join(' '))
  return made.plan
}
const fields = (wish: StockWish) => {
  const made = planStock(wish)
  return made.ok ? [] : made.problems.map(({ field }) => field)
}
const powder = { how: 'powder', percentWV: 1, volumeML: 250, powderLot: 'P1', water: 'tap' } as const
const thin = { how: 'dilution', from: bottle('Y', 1), percentWV: 0.1, volumeML: 250, water: 'tap' } as const
const mix = (...parts: [number, number][]): StockWish => ({
  how: 'mix',
  volumeML: 100,
  from: parts.map(([part, percentWV], i) => ({ source: bottle(`${i}`, percentWV), parts: part }))
})

describe('the amounts of a stock', () => {
  // 1 % w/v is 1 g in 100 mL: the definition.
  it('from powder: 250 mL of 1 % w/v take 2.5 g', () => {
    expect(plan(powder).making).toMatchObject({ powderG: 2.5, volumeML: 250, powderLot: 'P1' })
  })

  // C1 V1 = C2 V2, worked example: 250 mL of 0.1 % from 1 % take 25 mL.
  it('by thinning: 250 mL of 0.1 % take 25 mL of 1 %', () => {
    expect(plan(thin).making.from).toMatchObject([{ itemId: 'Y', volumeML: 25 }])
  })

  it('of a mix go by parts of dye: 3:1 of two stocks of 1 % are 75 and 25 mL, and stay 1 %', () => {
    const made = plan(mix([3, 1], [1, 1]))
    expect(made.making.from.map(({ volumeML }) => volumeML)).toEqual([75, 25])
    expect(made.percentWV).toBeCloseTo(1, 12)
    expect(made.parts).toEqual([
      { name: 'stock 0', parts: 3, itemId: '0' },
      { name: 'stock 1', parts: 1, itemId: '1' }
    ])
  })

  it('of any mix fill the bottle and hold the dye in its parts (seed 3)', () => {
    const part = fc.tuple(
      fc.integer({ min: 1, max: 50 }),
      fc.integer({ min: 1, max: 400 }).map((n) => n / 100)
    )
    fc.assert(
      fc.property(fc.array(part, { minLength: 2, maxLength: 6 }), (parts) => {
        const { making, percentWV } = plan(mix(...parts))
        const volume = making.from.reduce((sum, one) => sum + one.volumeML, 0)
        const dyes = making.from.map((one) => (one.volumeML * one.percentWV) / 100)
        const dye = dyes.reduce((sum, one) => sum + one, 0)
        expect(volume).toBeCloseTo(100, 9)
        expect((dye / volume) * 100).toBeCloseTo(percentWV, 9)
        const all = parts.reduce((sum, [one]) => sum + one, 0)
        for (const [i, one] of dyes.entries()) expect(one / dye).toBeCloseTo((parts[i]?.[0] ?? 0) / all, 9)
      }),
      { seed: 3, numRuns: 100 }
    )
  })

  it.each<[string, StockWish, string[]]>([
    ['no strength and no volume, both at once', { ...powder, percentWV: 0, volumeML: 0 }, ['percentWV', 'volumeML']],
    ['thinner than nothing chosen', { ...thin, from: null }, ['from']],
    ['stronger by water', { ...thin, percentWV: 2 }, ['percentWV']],
    ['a mix of one', mix([1, 1]), ['from']],
    ['a part of nothing', mix([1, 1], [0, 1]), ['parts.1']],
    ['a mix of no size', { ...mix([1, 1], [2, 1]), volumeML: Number.NaN } as StockWish, ['volumeML']]
  ])('are refused at the field: %s', (_, wish, wrong) => {
    expect(fields(wish)).toEqual(wrong)
  })

  it('are refused where one bottle is in a mix twice', () => {
    const from = [1, 1].map((parts) => ({ source: bottle('Y', 1), parts }))
    expect(fields({ how: 'mix', volumeML: 100, from })).toEqual(['from'])
  })
})

describe('the acts of making a stock', () => {
  it('weigh under the mask, wet, dissolve hot, cool, and only then go to the mark', () => {
    const acts = actsOf(plan(powder).making, 'C.I. Acid Yellow')
    expect(acts.map(({ id }) => id)).toEqual(['clear', 'weigh', 'paste', 'dissolve', 'cool', 'mark', 'bottle'])
    const weigh = acts.find(({ id }) => id === 'weigh')
    expect(weigh).toMatchObject({ amount: { value: 2.5, unit: 'g' }, hazards: ['powder'] })
    expect(acts.find(({ id }) => id === 'mark')?.amount).toMatchObject({ value: 250, unit: 'mL' })
  })

  it('of a mix add no water, and of a thinned one say the lot that is poured', () => {
    expect(actsOf(plan(mix([3, 1], [1, 1])).making, '').some(({ id }) => id === 'mark')).toBe(false)
    expect(actsOf(plan(thin).making, '').find(({ id }) => id === 'pour-0')?.amount?.of).toBe('stock Y, lot L')
  })

  it('have a caution with its source wherever there is a hazard, and the mask at the powder', () => {
    for (const wish of [powder, thin, mix([3, 1], [1, 1])]) {
      for (const { hazards } of actsOf(plan(wish).making, 'dye')) {
        for (const caution of hazards.flatMap(stockCautions)) expect(caution.source).not.toBe('')
        if (hazards.length > 0) expect(hazards.flatMap(stockCautions)).not.toEqual([])
      }
    }
    expect(stockCautions('powder')[0]?.say).toContain('FFP2')
  })
})
