// The arithmetic of the dyehouse against worked examples. Textbook formulas (lab-dip texts for depth and liquor ratio;
// ASTM D2118 for regain and content, from memory); the examples are common practice, no source, unless said.
import { describe, expect, test } from 'vitest'
import {
  acidDose,
  carriedML,
  citricForAcetic,
  conditionedG,
  contentOfRegain,
  depthOf,
  dilute,
  dilutionSeries,
  dryG,
  exhaustionFromLadder,
  exhaustionFromReadings,
  makeUpStock,
  mixParts,
  rampMin,
  rampPowerKW,
  rampRate,
  ratioOf,
  regainOfContent,
  regainPercent,
  type Strength,
  saltFor,
  scaleRecipe,
  smallDose,
  stockFor,
  waterFor
} from '../../src/core/chemistry/index.ts'
import { coolingMin, usualCoolingPerMin } from '../../src/core/protocol/cooling.ts'
import { answered } from '../core/chemistry/answered.ts'

describe('depth of shade', () => {
  test('50 g at 0.8 % from a 1 % stock: 40 mL, 0.40 g of dye; and back', () => {
    expect(answered(stockFor({ goodsG: 50, percentOwf: 0.8, stockPercentWV: 1 }))).toEqual({ dyeG: 0.4, stockML: 40 })
    expect(answered(depthOf({ goodsG: 50, stockML: 40, stockPercentWV: 1 }))).toEqual({ dyeG: 0.4, percentOwf: 0.8 })
  })

  test('250 mL of a 1 % stock takes 2.5 g of powder, made up to the mark', () => {
    expect(answered(makeUpStock({ stockPercentWV: 1, volumeML: 250 }))).toEqual({ powderG: 2.5, makeUpToML: 250 })
  })
})

describe('liquor', () => {
  const pot = { goodsG: 50, ratio: 30, stockML: 40, acidML: 20 }

  test('50 g at 30:1 is 1500 mL: add 1410 mL to spun yarn, 1340 mL to dripping yarn', () => {
    const spun = answered(carriedML({ goodsG: 50, wetG: 80 }))
    const dripping = answered(carriedML({ goodsG: 50, wetG: 150 }))
    expect([spun, dripping]).toEqual([30, 100])
    expect(answered(waterFor({ ...pot, carriedML: spun, countCarried: true }))).toEqual({
      totalML: 1500,
      waterML: 1410,
      trueRatio: 30
    })
    expect(answered(waterFor({ ...pot, carriedML: dripping, countCarried: true })).waterML).toBe(1340)
  })

  test('a ratio that does not count what the yarn carries is told with the true one', () => {
    const poured = answered(waterFor({ ...pot, carriedML: 100, countCarried: false }))
    expect(poured).toEqual({ totalML: 1500, waterML: 1440, trueRatio: 32 })
    expect(answered(ratioOf({ goodsG: 50, liquorML: 1600 }))).toBe(32)
  })
})

test('3:1 of two dyes at 0.8 % on 50 g is 30 and 10 mL of 1 %, kept as parts and as % owf', () => {
  const dyes = [
    { name: 'blue', parts: 3, stockPercentWV: 1 },
    { name: 'red', parts: 1, stockPercentWV: 1 }
  ]
  const { doses, mixedPercentWV } = answered(mixParts({ goodsG: 50, percentOwf: 0.8, dyes }))
  expect(doses.map(({ stockML }) => stockML)).toEqual([30, 10].map((mL) => expect.closeTo(mL, 9)))
  expect(doses.map(({ percentOwf }) => percentOwf)).toEqual([0.6, 0.2].map((percent) => expect.closeTo(percent, 12)))
  expect(mixedPercentWV).toBeCloseTo(1, 12)
  // Of unequal stocks the parts stay parts of dye: 1:1 of 1 % and 0.5 % is 2 parts of dye in 100 + 200 parts of stock.
  const unequal = [
    { name: 'blue', parts: 1, stockPercentWV: 1 },
    { name: 'red', parts: 1, stockPercentWV: 0.5 }
  ]
  expect(answered(mixParts({ goodsG: 50, percentOwf: 1, dyes: unequal })).mixedPercentWV).toBeCloseTo(2 / 3, 12)
})

test('250 mL of 0.1 % from 1 %: take 25 mL and make up to 250', () => {
  expect(answered(dilute({ fromPercentWV: 1, toPercentWV: 0.1, toML: 250 }))).toEqual({ takeML: 25, makeUpToML: 250 })
})

describe('acid', () => {
  // Densities of acetic acid at 20 °C: handbook values, from memory.
  test.each<[string, Strength, number]>([
    ['5 % w/v', { percent: 5, basis: 'w/v' }, 20],
    ['6 % w/v', { percent: 6, basis: 'w/v' }, 16.7],
    ['56 % w/w', { percent: 56, basis: 'w/w', densityGPerML: 1.063 }, 1.68],
    ['80 % w/w', { percent: 80, basis: 'w/w', densityGPerML: 1.07 }, 1.17]
  ])('2 %% owf on 50 g is 1.0 g: of %s it takes %o mL', (_, strength, mL) => {
    const { acidG, acidML } = answered(acidDose({ goodsG: 50, percentOwf: 2, strength }))
    expect(acidG).toBe(1)
    expect(Number(acidML.toFixed(mL < 2 ? 2 : 1))).toBe(mL)
  })

  // Computed with 25 °C constants and no activities.
  test.each([
    [3.5, 0.22],
    [4, 0.46],
    [4.5, 0.86],
    [5, 1.22]
  ])('at pH %d a gram of acetic acid is worth %d g of anhydrous citric acid', (ph, citricG) => {
    const anhydrous = answered(citricForAcetic({ aceticG: 1, ph, citricForm: 'anhydrous' })).citricG
    // Printed to 0.01, from constants rounded in another place.
    expect(Math.abs(anhydrous - citricG)).toBeLessThan(0.008)
    // Molar masses: 210.138 / 192.123.
    const monohydrate = answered(citricForAcetic({ aceticG: 1, ph, citricForm: 'monohydrate' })).citricG
    expect(monohydrate / anhydrous).toBeCloseTo(1.094, 3)
  })
})

test('10 % owf of salt at 30:1 is 3.3 g/L', () => {
  const { saltG, gPerL } = answered(saltFor({ goodsG: 50, percentOwf: 10, ratio: 30 }))
  expect(saltG).toBe(5)
  expect(gPerL).toBeCloseTo(3.33, 2)
})

describe('small doses', () => {
  test('0.625 mL with 0.1 mL of doubt is 16 % wrong; 6.25 mL of a tenth of the strength 1.6 %', () => {
    const dose = { goodsG: 10, percentOwf: 0.0625 }
    const floor = answered(smallDose({ ...dose, stocksPercentWV: [1] }))
    expect(floor).toMatchObject({ stockML: expect.closeTo(0.625, 9), measurable: false })
    expect(floor.errorPercent).toBeCloseTo(16, 9)
    const better = answered(smallDose({ ...dose, stocksPercentWV: [1, 0.1] }))
    expect(better).toMatchObject({ stockPercentWV: 0.1, stockML: expect.closeTo(6.25, 9), measurable: true })
    expect(better.errorPercent).toBeCloseTo(1.6, 9)
  })

  test('a series on 10 g tabs halves from 2 % and goes over to the weak stock in time', () => {
    const series = { goodsG: 10, topPercentOwf: 2, steps: 6, stocksPercentWV: [0.1, 1] }
    const doses = answered(dilutionSeries(series))
    expect(doses.map(({ percentOwf }) => percentOwf)).toEqual([2, 1, 0.5, 0.25, 0.125, 0.0625])
    expect(doses.map(({ stockML }) => Number(stockML.toFixed(4)))).toEqual([20, 10, 5, 2.5, 12.5, 6.25])
    expect(doses.map(({ stockPercentWV }) => stockPercentWV)).toEqual([1, 1, 1, 1, 0.1, 0.1])
  })
})

describe('other goods', () => {
  const recipe = {
    fromGoodsG: 50,
    toGoodsG: 120,
    fromLiquorML: 1500,
    portions: [
      { name: 'stock', amount: 40, goesBy: 'goods' as const },
      { name: 'salt', amount: 5, goesBy: 'liquor' as const }
    ]
  }

  test('% owf goes by the goods and g/L by the volume', () => {
    const { portions, ...pot } = answered(scaleRecipe(recipe))
    expect(portions.map(({ amount }) => amount)).toEqual([96, 12])
    expect(pot).toEqual({ liquorML: 3600, ratio: 30, ratioChanged: false })
  })

  test('a pot that is too small changes the ratio, and that is flagged', () => {
    const { portions, ...pot } = answered(scaleRecipe({ ...recipe, potHoldsML: 3000 }))
    expect(pot).toEqual({ liquorML: 3000, ratio: 25, ratioChanged: true })
    // The dye goes by the goods still; the salt keeps its g/L.
    expect(portions.map(({ amount }) => amount)).toEqual([96, 10])
  })
})

describe('moisture', () => {
  test.each([
    [12, 89.3, 103.6],
    [18.25, 84.6, 98.1]
  ])('100 g weighed at %d %% regain are %d g dry and %d g at 16 %%', (regain, dry, at16) => {
    const goodsG = answered(dryG({ massG: 100, regainPercent: regain }))
    expect(Number(goodsG.toFixed(1))).toBe(dry)
    expect(Number(answered(conditionedG({ goodsG, regainPercent: 16 })).toFixed(1))).toBe(at16)
    expect(answered(regainPercent({ massG: 100, goodsG }))).toBeCloseTo(regain, 9)
  })

  // ASTM D2118: scoured wool 12.0 % and dry-spun worsted yarn 13.04 % moisture content.
  test.each([
    [12, 13.6],
    [13.04, 15]
  ])('a content of %d %% is a regain of %d %%', (content, regain) => {
    expect(Number(answered(regainOfContent(content)).toFixed(1))).toBe(regain)
    expect(answered(contentOfRegain(answered(regainOfContent(content))))).toBeCloseTo(content, 9)
  })
})

describe('heat', () => {
  test('40 to 95 °C at 1 °C/min takes 55 min', () => {
    expect(answered(rampMin({ fromC: 40, toC: 95, rateCPerMin: 1 }))).toBe(55)
  })

  test('3 L, 0.1 kg of wool and a pot of 1 kJ/K at 1 °C/min take up 0.228 kW', () => {
    // (4.186 · 3 + 1.4 · 0.1 + 1) · 1 / 60, by hand.
    const pot = { liquorL: 3, goodsKg: 0.1, potKJPerK: 1 }
    expect(answered(rampPowerKW({ ...pot, rateCPerMin: 1 }))).toBeCloseTo(0.2283, 4)
    expect(answered(rampRate({ ...pot, powerKW: 0.2283 }))).toBeCloseTo(1, 4)
  })

  test('a bath that falls from 95 to 80 °C in 20 min at 20 °C is at 40 °C after 118 min', () => {
    expect(Math.log(75 / 60) / 20).toBeCloseTo(usualCoolingPerMin, 4)
    expect(Math.round(coolingMin(95, 40, 20, Math.log(75 / 60) / 20) ?? 0)).toBe(118)
    expect(Math.round(coolingMin(95, 40, 20, Math.log(75 / 65) / 20) ?? 0)).toBe(185)
  })
})

describe('exhaustion', () => {
  test('0.80 in 1500 mL and 0.04 in 1350 mL are 95.5 %', () => {
    const readings = { startAbsorbance: 0.8, startML: 1500, nowAbsorbance: 0.04, nowML: 1350 }
    expect(answered(exhaustionFromReadings(readings))).toBeCloseTo(95.5, 9)
  })

  test('a residual cup like the 6 % rung is 94 %, between its neighbours', () => {
    expect(answered(exhaustionFromLadder({ like: 6 }))).toEqual({ percent: 94, lowPercent: 88, highPercent: 97 })
    expect(answered(exhaustionFromLadder({ like: [12, 6] }))).toEqual({ percent: 91, lowPercent: 88, highPercent: 94 })
    expect(answered(exhaustionFromLadder({ like: 0 }))).toEqual({ percent: 100, lowPercent: 97, highPercent: 100 })
    const lost = answered(exhaustionFromLadder({ like: 6, startML: 1500, nowML: 1350 }))
    expect(lost.percent).toBeCloseTo(94.6, 9)
  })
})
