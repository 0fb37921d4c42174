import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  boilingPointC,
  conditionedG,
  contentOfRegain,
  depthOf,
  dilute,
  dilutionSeries,
  dryG,
  exhaustionFromLadder,
  mixParts,
  rampPowerKW,
  rampRate,
  regainOfContent,
  scaleRecipe,
  smallDose,
  stockFor,
  usualLadder,
  waterFor
} from '../../../src/core/chemistry/index.ts'
import { answered } from './answered.ts'

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })
const goods = between(0.05, 100_000)
/** A drop, as drops from a pipette are counted: 20 to a mL. Common practice, no source. */
const dropML = 0.05

describe('scaling', () => {
  const portions = fc.array(
    fc.record({
      name: fc.constant('stock'),
      amount: between(0, 10_000),
      goesBy: fc.constantFrom('goods' as const, 'liquor' as const)
    }),
    { maxLength: 6 }
  )

  it('there and back is exact to a drop', () => {
    fc.assert(
      fc.property(goods, goods, between(10, 500), portions, (fromGoodsG, toGoodsG, ratio, recipe) => {
        const fromLiquorML = Math.min(1e6, fromGoodsG * ratio)
        const there = scaleRecipe({ fromGoodsG, toGoodsG, fromLiquorML, portions: recipe })
        fc.pre(!('refused' in there) && there.liquorML <= 1e6 && there.portions.every(({ amount }) => amount <= 1e6))
        const { liquorML, portions: scaled } = answered(there)
        const back = { fromGoodsG: toGoodsG, toGoodsG: fromGoodsG, fromLiquorML: liquorML, portions: scaled }
        const again = answered(scaleRecipe(back))
        expect(Math.abs(again.liquorML - fromLiquorML)).toBeLessThan(dropML)
        for (const [i, { amount }] of again.portions.entries()) {
          expect(Math.abs(amount - (recipe[i]?.amount ?? Number.NaN))).toBeLessThan(dropML)
        }
      })
    )
  })

  it('keeps the ratio in a pot that is large enough, and flags it in one that is not', () => {
    const recipe = { fromGoodsG: 100, toGoodsG: 200, fromLiquorML: 3000, portions: [] }
    expect(answered(scaleRecipe({ ...recipe, potHoldsML: 6000 })).ratioChanged).toBe(false)
    expect(answered(scaleRecipe({ ...recipe, potHoldsML: 5999 }))).toMatchObject({
      ratioChanged: true,
      liquorML: 5999
    })
  })
})

describe('units there and back', () => {
  it('depth to stock and stock to depth', () => {
    fc.assert(
      fc.property(goods, between(0, 10), between(0.01, 100), (goodsG, percentOwf, stockPercentWV) => {
        const { stockML } = answered(stockFor({ goodsG, percentOwf, stockPercentWV }))
        fc.pre(stockML <= 1e6)
        expect(answered(depthOf({ goodsG, stockML, stockPercentWV })).percentOwf).toBeCloseTo(percentOwf, 9)
      })
    )
  })

  it('weight to dry weight, regain to content', () => {
    fc.assert(
      fc.property(between(0.1, 50_000), between(0, 100), (massG, regain) => {
        const goodsG = answered(dryG({ massG, regainPercent: regain }))
        expect(answered(conditionedG({ goodsG, regainPercent: regain })) / massG).toBeCloseTo(1, 12)
        expect(answered(regainOfContent(answered(contentOfRegain(regain))))).toBeCloseTo(regain, 9)
      })
    )
  })

  it('rate to power', () => {
    fc.assert(
      fc.property(
        between(0.001, 100),
        between(0, 10),
        between(0, 10),
        between(0.01, 10),
        (liquorL, goodsKg, potKJPerK, rate) => {
          const pot = { liquorL, goodsKg, potKJPerK }
          const powerKW = answered(rampPowerKW({ ...pot, rateCPerMin: rate }))
          expect(answered(rampRate({ ...pot, powerKW }))).toBeCloseTo(rate, 9)
        }
      )
    )
  })
})

describe('nothing is lost', () => {
  it('in a dilution: what is dissolved stays', () => {
    fc.assert(
      fc.property(between(0.01, 100), between(0.01, 1), between(1, 1e6), (fromPercentWV, share, toML) => {
        const toPercentWV = fromPercentWV * share
        const { takeML } = answered(dilute({ fromPercentWV, toPercentWV, toML }))
        expect((takeML * fromPercentWV) / (toML * toPercentWV)).toBeCloseTo(1, 12)
        expect(takeML).toBeLessThanOrEqual(toML)
      })
    )
  })

  it('in no dilution: all of it is all of it, to the last digit', () => {
    const all = { fromPercentWV: 0.01, toPercentWV: 0.01, toML: 6875.668039808573 }
    expect(answered(dilute(all)).takeML).toBe(all.toML)
  })

  it('in a mixture: the dyes come to the depth, and the stocks poured together hold them', () => {
    const dye = fc.record({ name: fc.constant('dye'), parts: between(0.01, 100), stockPercentWV: between(0.01, 100) })
    fc.assert(
      fc.property(
        goods,
        between(0.01, 10),
        fc.array(dye, { minLength: 1, maxLength: 20 }),
        (goodsG, percentOwf, dyes) => {
          const { doses, mixedPercentWV } = answered(mixParts({ goodsG, percentOwf, dyes }))
          const dyeG = doses.reduce((sum, dose) => sum + dose.dyeG, 0)
          const stockML = doses.reduce((sum, dose) => sum + dose.stockML, 0)
          expect(doses.reduce((sum, dose) => sum + dose.percentOwf, 0) / percentOwf).toBeCloseTo(1, 9)
          expect((stockML * mixedPercentWV) / 100 / dyeG).toBeCloseTo(1, 9)
        }
      )
    )
  })

  it('in a pot: all that is poured and carried comes to the ratio', () => {
    fc.assert(
      fc.property(
        between(1, 1000),
        between(10, 100),
        between(0, 4),
        between(0, 4),
        between(0, 2),
        (goodsG, ratio, stock, acid, carried) => {
          const pot = { goodsG, ratio, stockML: stock * goodsG, acidML: acid * goodsG, carriedML: carried * goodsG }
          const counted = answered(waterFor({ ...pot, countCarried: true }))
          expect(counted.trueRatio).toBeCloseTo(ratio, 9)
          expect(answered(waterFor({ ...pot, countCarried: false })).trueRatio).toBeCloseTo(ratio + carried, 9)
        }
      )
    )
  })
})

describe('small doses', () => {
  it('come from the strongest stock from which they can be measured', () => {
    fc.assert(
      fc.property(between(1, 200), between(0.001, 4), (goodsG, percentOwf) => {
        const stocksPercentWV = [0.1, 1, 0.01]
        const dose = answered(smallDose({ goodsG, percentOwf, stocksPercentWV }))
        const stronger = stocksPercentWV.filter((percent) => percent > dose.stockPercentWV)
        for (const stockPercentWV of stronger) {
          const { stockML } = answered(stockFor({ goodsG, percentOwf, stockPercentWV }))
          expect(stockML).toBeLessThan(2)
        }
        if (dose.measurable) expect(dose.stockML).toBeGreaterThanOrEqual(2)
        else expect(dose.stockPercentWV).toBe(0.01)
      })
    )
  })

  it('go by the syringe at hand', () => {
    const dose = { goodsG: 10, percentOwf: 0.125, stocksPercentWV: [1, 0.1] }
    expect(answered(smallDose({ ...dose, doubtML: 0.02 })).stockPercentWV).toBe(1)
    expect(answered(smallDose({ ...dose, errorMostPercent: 10 })).stockPercentWV).toBe(1)
    expect(answered(smallDose(dose)).stockPercentWV).toBe(0.1)
  })

  it('fall by another factor where one is given', () => {
    const series = { goodsG: 10, topPercentOwf: 3, steps: 3, factor: 10, stocksPercentWV: [1] }
    const depths = answered(dilutionSeries(series)).map(({ percentOwf }) => percentOwf)
    for (const [i, percent] of [3, 0.3, 0.03].entries()) expect(depths[i]).toBeCloseTo(percent, 12)
  })
})

describe('the boiling point', () => {
  it('falls with altitude and rises with pressure', () => {
    fc.assert(
      fc.property(between(-430, 5490), between(1, 10), (altitudeM, higherM) => {
        const [here, above] = [altitudeM, altitudeM + higherM].map((m) => answered(boilingPointC({ altitudeM: m })))
        expect(above).toBeLessThan(here as number)
      })
    )
    fc.assert(
      fc.property(between(450, 1090), between(0.1, 10), (hPa, more) => {
        const at = (stationPressureHPa: number): number => answered(boilingPointC({ stationPressureHPa }))
        expect(at(hPa + more)).toBeGreaterThan(at(hPa))
      })
    )
  })
})

describe('a ladder', () => {
  it('never claims to be more exact than a rung', () => {
    for (const like of usualLadder) {
      const { percent, lowPercent, highPercent } = answered(exhaustionFromLadder({ like }))
      expect(lowPercent).toBeLessThanOrEqual(percent)
      expect(highPercent).toBeGreaterThanOrEqual(percent)
      expect(highPercent - lowPercent).toBeGreaterThanOrEqual(3)
    }
  })

  it('may be one of the dyer, in any order', () => {
    const ladder = [0, 10, 100]
    expect(answered(exhaustionFromLadder({ like: [0, 10], ladder }))).toEqual({
      percent: 95,
      lowPercent: 90,
      highPercent: 100
    })
  })
})
