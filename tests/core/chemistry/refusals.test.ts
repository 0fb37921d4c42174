// What is given wrongly is refused, with the field, what is wrong, and what would be right.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Answer, Strength } from '../../../src/core/chemistry/index.ts'
import * as chemistry from '../../../src/core/chemistry/index.ts'
import { problemsOf } from './answered.ts'
import { plainBath } from './baths.ts'

type Given = Record<string, unknown>
type Asked = (given: never) => Answer<unknown>

const strength: Strength = { percent: 5, basis: 'w/v' }
const dyes = [{ name: 'blue', parts: 3, stockPercentWV: 1 }]
const portions = [{ name: 'stock', amount: 40, goesBy: 'goods' }]

/** Every function of the room that takes fields, with an example that it answers. */
const asked: Record<string, [Asked, Given]> = {
  bathPh: [chemistry.bathPh, plainBath],
  acidFor: [chemistry.acidFor, { ...plainBath, vinegarML: undefined, acid: 'vinegar', targetPh: 4 }],
  boilingPointC: [chemistry.boilingPointC, { altitudeM: 1000 }],
  'boilingPointC by pressure': [chemistry.boilingPointC, { stationPressureHPa: 900 }],
  stockFor: [chemistry.stockFor, { goodsG: 50, percentOwf: 0.8, stockPercentWV: 1 }],
  depthOf: [chemistry.depthOf, { goodsG: 50, stockML: 40, stockPercentWV: 1 }],
  makeUpStock: [chemistry.makeUpStock, { stockPercentWV: 1, volumeML: 250 }],
  dilute: [chemistry.dilute, { fromPercentWV: 1, toPercentWV: 0.1, toML: 250 }],
  mixParts: [chemistry.mixParts, { goodsG: 50, percentOwf: 0.8, dyes }],
  waterFor: [chemistry.waterFor, { goodsG: 50, ratio: 30, stockML: 40, acidML: 20, carriedML: 30, countCarried: true }],
  carriedML: [chemistry.carriedML, { goodsG: 50, wetG: 80 }],
  ratioOf: [chemistry.ratioOf, { goodsG: 50, liquorML: 1500 }],
  acidDose: [chemistry.acidDose, { goodsG: 50, percentOwf: 2, strength }],
  citricForAcetic: [chemistry.citricForAcetic, { aceticG: 1, ph: 4, citricForm: 'anhydrous' }],
  saltFor: [chemistry.saltFor, { goodsG: 50, percentOwf: 10, ratio: 30 }],
  smallDose: [chemistry.smallDose, { goodsG: 10, percentOwf: 0.0625, stocksPercentWV: [1] }],
  dilutionSeries: [chemistry.dilutionSeries, { goodsG: 10, topPercentOwf: 2, steps: 6, stocksPercentWV: [1] }],
  scaleRecipe: [chemistry.scaleRecipe, { fromGoodsG: 50, toGoodsG: 100, fromLiquorML: 1500, portions }],
  dryG: [chemistry.dryG, { massG: 100, regainPercent: 12 }],
  conditionedG: [chemistry.conditionedG, { goodsG: 100, regainPercent: 12 }],
  regainPercent: [chemistry.regainPercent, { massG: 112, goodsG: 100 }],
  rampMin: [chemistry.rampMin, { fromC: 40, toC: 95, rateCPerMin: 1 }],
  rampPowerKW: [chemistry.rampPowerKW, { liquorL: 3, goodsKg: 0.1, potKJPerK: 1, rateCPerMin: 1 }],
  rampRate: [chemistry.rampRate, { liquorL: 3, goodsKg: 0.1, potKJPerK: 1, powerKW: 1 }],
  exhaustionFromReadings: [
    chemistry.exhaustionFromReadings,
    { startAbsorbance: 0.8, startML: 1500, nowAbsorbance: 0.04, nowML: 1350 }
  ],
  diffusedFraction: [chemistry.diffusedFraction, { alpha: 1, time: 0.1 }],
  rateAt: [chemistry.rateAt, { ratePerMin: 0.06, rateAtC: 95, energyKJPerMol: 60, tempC: 80 }],
  exhaustionAfter: [
    chemistry.exhaustionAfter,
    { ratePerMin: 0.06, rateAtC: 95, energyKJPerMol: 60, finalPercent: 95, stretches: [] }
  ],
  exhaustionFromLadder: [chemistry.exhaustionFromLadder, { like: 6, startML: 1500, nowML: 1350 }]
}

const ask = (name: string, given: Given): Answer<unknown> => {
  const [call] = asked[name] as [Asked, Given]
  return call(given as never)
}

/** A sentence with what would be right in it. */
const helpful = /^(Give|Take) .*[a-z\d%°C'L./]\.?$/

const numberFields = Object.entries(asked).flatMap(([name, [, given]]) =>
  Object.entries(given)
    .filter(([, value]) => typeof value === 'number')
    .map(([field]): [string, string] => [name, field])
    // A bath may be endless.
    .filter(([, field]) => field !== 'alpha')
)

describe.each(Object.entries(asked))('%s', (name, [, good]) => {
  it('answers its example', () => {
    expect(problemsOf(ask(name, good))).toEqual([])
  })

  it('names every wrong field at once', () => {
    const fields = Object.keys(good).filter((field) => typeof good[field] === 'number')
    const wrong = Object.fromEntries(fields.map((field) => [field, Number.NaN]))
    const named = problemsOf(ask(name, { ...good, ...wrong })).map(({ field }) => field)
    expect(named).toEqual(expect.arrayContaining(fields))
  })
})

describe.each(numberFields)('%s refuses a %s', (name, field) => {
  const [, good] = asked[name] as [Asked, Given]

  it.each<[string, unknown]>([
    ['that is no number', Number.NaN],
    ['that is endless', Number.POSITIVE_INFINITY],
    ['far below nothing', -1e9],
    ['that is absurd', 1e12],
    ['written with a comma', '1,5'],
    ['written with a point, for it is not read yet', '1.5']
  ])('%s', (_, value) => {
    const problems = problemsOf(ask(name, { ...good, [field]: value }))
    expect(problems.map((problem) => problem.field)).toContain(field)
    for (const { what, instead } of problems) {
      expect(what).toMatch(/^[A-Z\d"].*\.$/)
      expect(what).not.toMatch(/NaN|undefined/)
      expect(instead).toMatch(helpful)
    }
  })
})

describe('the words', () => {
  const first = (answer: Answer<unknown>) => problemsOf(answer)[0]

  it.each<[string, Answer<unknown>, object]>([
    [
      'a bath without water',
      chemistry.bathPh({ ...plainBath, waterML: 0 }),
      {
        code: 'outside',
        field: 'waterML',
        what: "The water can't be 0 mL.",
        instead: 'Give 0.001 to 1000000 mL.'
      }
    ],
    [
      'a bath of next to no water',
      chemistry.bathPh({ ...plainBath, waterML: 5e-324, vinegarML: 0, alkalinityMgPerLCaCO3: 0 }),
      { code: 'outside', field: 'waterML', instead: 'Give 0.001 to 1000000 mL.' }
    ],
    [
      'a value that is missing',
      chemistry.bathPh({ ...plainBath, tempC: undefined as unknown as number }),
      { code: 'missing', field: 'tempC', what: 'The temperature is missing.', instead: 'Give 0 to 100 °C.' }
    ],
    [
      'a value as it was typed',
      chemistry.bathPh({ ...plainBath, vinegarML: '1,5' as unknown as number }),
      { code: 'not-a-number', what: 'The vinegar is "1,5", which is not a number.', instead: 'Give 0 to 1000000 mL.' }
    ],
    [
      'a negative alkalinity',
      chemistry.bathPh({ ...plainBath, alkalinityMgPerLCaCO3: -20 }),
      { what: "The alkalinity can't be −20 mg/L as CaCO3.", instead: 'Give 0 to 1000 mg/L as CaCO3.' }
    ],
    [
      'a form of citric acid that is none',
      chemistry.bathPh({ ...plainBath, citricForm: 'dry' as 'anhydrous' }),
      { code: 'unknown-word', field: 'citricForm', instead: "Give 'anhydrous' or 'monohydrate'." }
    ],
    [
      'an air that is missing',
      chemistry.bathPh({ ...plainBath, air: undefined as unknown as 'open' }),
      { code: 'missing', field: 'air', instead: "Give 'closed' or 'open'." }
    ],
    [
      'vinegar without strength',
      chemistry.bathPh({ ...plainBath, vinegarPercentWV: 0 }),
      { field: 'vinegarPercentWV', instead: 'Give what the bottle says, for example 5 % w/v.' }
    ],
    [
      'a bath of neat acid',
      chemistry.bathPh({ ...plainBath, vinegarML: 4000, vinegarPercentWV: 60 }),
      { code: 'too-strong', field: 'vinegarML', instead: 'Give more water or less acid.' }
    ],
    [
      'an open bath that stays alkaline',
      chemistry.bathPh({ ...plainBath, vinegarML: 5, air: 'open' }),
      { code: 'not-neutralised', field: 'vinegarML', instead: "Give more acid, or air 'closed'." }
    ],
    [
      'an altitude above all kitchens',
      chemistry.boilingPointC({ altitudeM: 8849 }),
      { field: 'altitudeM', what: "The altitude can't be 8849 m.", instead: 'Give −430 to 5500 m.' }
    ],
    [
      'a pressure in inches',
      chemistry.boilingPointC({ stationPressureHPa: 29.92 }),
      { field: 'stationPressureHPa', instead: expect.stringContaining('450 to 1100 hPa, as the barometer') }
    ],
    ['no place at all', chemistry.boilingPointC({} as { altitudeM: number }), { code: 'missing', field: 'altitudeM' }],
    [
      'a place said twice',
      chemistry.boilingPointC({ altitudeM: 0, stationPressureHPa: 1000 }),
      { code: 'contradiction', instead: expect.stringContaining('Give one') }
    ],
    [
      'a dilution that makes stronger',
      chemistry.dilute({ fromPercentWV: 0.1, toPercentWV: 1, toML: 100 }),
      { code: 'contradiction', field: 'toPercentWV', instead: 'Give at most 0.1 %, or take a stronger stock.' }
    ],
    [
      'more stock than liquor',
      chemistry.waterFor({ goodsG: 50, ratio: 10, stockML: 500, acidML: 20, carriedML: 30, countCarried: true }),
      { code: 'does-not-fit', field: 'ratio', instead: 'Give a ratio of at least 11, or a stronger stock.' }
    ],
    [
      'wet goods that are lighter than dry ones',
      chemistry.carriedML({ goodsG: 50, wetG: 40 }),
      { field: 'wetG', what: "The weight of wet goods can't be 40 g.", instead: 'Give 50 to 1000000 g.' }
    ],
    [
      'moist goods that are lighter than dry ones',
      chemistry.regainPercent({ massG: 90, goodsG: 100 }),
      { field: 'massG', instead: 'Give 100 to 100000 g.' }
    ],
    [
      'an acid in % w/w without its density',
      chemistry.acidDose({
        goodsG: 50,
        percentOwf: 2,
        strength: { percent: 80, basis: 'w/w', densityGPerML: null }
      }),
      { code: 'density-missing', field: 'strength', instead: 'Give the density, or % w/v.' }
    ],
    [
      'a density of no liquid',
      chemistry.acidDose({ goodsG: 50, percentOwf: 2, strength: { percent: 80, basis: 'w/w', densityGPerML: 107 } }),
      { code: 'density-outside', instead: 'Give 0.5 to 2 g/mL.' }
    ],
    [
      'an acid of no basis',
      chemistry.acidDose({ goodsG: 50, percentOwf: 2, strength: { percent: 80 } as Strength }),
      { code: 'unknown-word', instead: 'Give % w/v or % w/w.' }
    ],
    [
      'an acid of more than 100 %',
      chemistry.acidDose({ goodsG: 50, percentOwf: 2, strength: { percent: 120, basis: 'w/v' } }),
      { code: 'percent-outside' }
    ],
    ['no dyes', chemistry.mixParts({ goodsG: 50, percentOwf: 1, dyes: [] }), { field: 'dyes' }],
    [
      'a dye of no parts',
      chemistry.mixParts({ goodsG: 50, percentOwf: 1, dyes: [{ name: 'blue', parts: 0, stockPercentWV: 1 }] }),
      { field: 'dyes[0].parts', what: "The part of blue can't be 0." }
    ],
    [
      'no stocks',
      chemistry.smallDose({ goodsG: 50, percentOwf: 1, stocksPercentWV: [] }),
      { field: 'stocksPercentWV' }
    ],
    [
      'a regain that is a content of nearly all water',
      chemistry.regainOfContent(90),
      { field: 'contentPercent', instead: 'Give 0 to 50 %.' }
    ],
    ['a negative regain', chemistry.contentOfRegain(-1), { field: 'regainPercent' }],
    [
      'a cup that is no rung',
      chemistry.exhaustionFromLadder({ like: 40 }),
      { field: 'like', instead: 'Give one or two of 100, 50, 25, 12, 6, 3, 0 %.' }
    ],
    ['two cups that are no neighbours', chemistry.exhaustionFromLadder({ like: [50, 6] }), { field: 'like' }],
    ['a bath of nothing', chemistry.diffusedFraction({ alpha: 0, time: 1 }), { field: 'alpha' }],
    [
      'a time too short for the series',
      chemistry.diffusedFraction({ alpha: 1, time: 0.0005 }),
      { field: 'time', instead: 'Give 0.001 to 1000 (D t / r²).' }
    ],
    [
      'a rate of nothing',
      chemistry.halfTimeMin(0),
      { field: 'ratePerMin', instead: expect.stringContaining('100 per min') }
    ],
    ['a ladder of one cup', chemistry.exhaustionFromLadder({ like: 100, ladder: [100] }), { field: 'ladder' }]
  ])('for %s', (_, answer, problem) => {
    expect(first(answer)).toMatchObject(problem)
  })
})

it('nothing that is given makes a bath answer with what is no number, or throw', () => {
  const anything = fc.oneof(
    fc.double(),
    fc.constantFrom(undefined, null, '', '5', 0, -0, 1e-300, 1e300, 'closed', 'anhydrous'),
    fc.double({ min: 0, max: 100, noNaN: true })
  )
  const fields = Object.fromEntries(Object.keys(plainBath).map((field) => [field, anything]))
  fc.assert(
    fc.property(fc.record(fields), fc.subarray(Object.keys(plainBath)), (odd, kept) => {
      const bath = { ...odd, ...Object.fromEntries(kept.map((f) => [f, plainBath[f as keyof typeof plainBath]])) }
      const answer = chemistry.bathPh(bath as typeof plainBath)
      if (chemistry.isRefused(answer)) expect(answer.problems.length).toBeGreaterThan(0)
      else expect([answer.ph, answer.lowPh, answer.highPh].every(Number.isFinite)).toBe(true)
    }),
    { numRuns: 2000 }
  )
})
