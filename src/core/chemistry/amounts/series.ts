import { type Answer, type Problem, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { owfG } from './formulas.ts'
import { goodsLimit, owfLimit, some, stockLimit, volumeLimit } from './limits.ts'

/** One tab of a series. `errorPercent`: what the syringe's doubt is of the dose. `measurable`: false where even the
 * weakest stock leaves the dose under the floor. */
export type SeriesDose = {
  percentOwf: number
  stockPercentWV: number
  stockML: number
  errorPercent: number
  measurable: boolean
}

/** The doubt of a syringe or a pipette of some mL, and the most of a dose that it may be: 0.1 mL is 5 % of 2 mL. Common
 * practice, no source. */
export const usualSyringe = { doubtML: 0.1, errorMostPercent: 5 } as const

/** A dose out of the strongest of some stocks from which it can still be measured; else out of the weakest, marked.
 * So a dose under the floor is seen before it spoils a comparison. Goods and depth as of stockFor; 1 to 10 stocks; a
 * syringe's doubt above 0 and up to 100 mL, 0.1 to 100 % of the dose. Source: common practice, no source. */
export function smallDose(given: {
  goodsG: number
  percentOwf: number
  stocksPercentWV: readonly number[]
  doubtML?: number
  errorMostPercent?: number
}): Answer<SeriesDose> {
  const { goodsG, percentOwf, stocksPercentWV } = given
  const { doubtML = usualSyringe.doubtML, errorMostPercent = usualSyringe.errorMostPercent } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [percentOwf, some(owfLimit)]
  ])
  problems.push(...stocksAndSyringe(stocksPercentWV, doubtML, errorMostPercent))
  if (problems.length > 0) return refuse(...problems)
  return doseOf(goodsG, percentOwf, stocksPercentWV, doubtML, errorMostPercent)
}

/** A dilution series that halves (or falls by `factor`) from a depth on, `steps` of them, each as smallDose gives it.
 * 1 to 20 steps; factor above 1 and up to 100. Source: common practice, no source. */
export function dilutionSeries(given: {
  goodsG: number
  topPercentOwf: number
  steps: number
  factor?: number
  stocksPercentWV: readonly number[]
  doubtML?: number
  errorMostPercent?: number
}): Answer<SeriesDose[]> {
  const { goodsG, topPercentOwf, steps, factor = 2, stocksPercentWV } = given
  const { doubtML = usualSyringe.doubtML, errorMostPercent = usualSyringe.errorMostPercent } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [topPercentOwf, { ...some(owfLimit), field: 'topPercentOwf', name: 'the deepest shade' }],
    [steps, { field: 'steps', name: 'the number of steps', unit: '', least: 1, most: 20 }],
    [factor, { field: 'factor', name: 'the factor', unit: '', least: 1, most: 100, above: true }]
  ])
  problems.push(...stocksAndSyringe(stocksPercentWV, doubtML, errorMostPercent))
  if (problems.length > 0) return refuse(...problems)
  return Array.from({ length: Math.floor(steps) }, (_, i) =>
    doseOf(goodsG, topPercentOwf / factor ** i, stocksPercentWV, doubtML, errorMostPercent)
  )
}

function stocksAndSyringe(stocks: readonly number[], doubtML: number, errorMostPercent: number): Problem[] {
  return allOutside([
    [stocks.length, { field: 'stocksPercentWV', name: 'the number of stocks', unit: '', least: 1, most: 10 }],
    ...stocks.map((percent) => [percent, { ...stockLimit, field: 'stocksPercentWV' }] as const),
    [doubtML, { ...some(volumeLimit('doubtML', "the syringe's doubt")), most: 100 }],
    [
      errorMostPercent,
      { field: 'errorMostPercent', name: 'the largest error', unit: '% of the dose', least: 0.1, most: 100 }
    ]
  ])
}

function doseOf(
  goodsG: number,
  percentOwf: number,
  stocks: readonly number[],
  doubtML: number,
  errorMostPercent: number
): SeriesDose {
  const strongestFirst = [...stocks].sort((a, b) => b - a)
  const doses = strongestFirst.map((stockPercentWV): SeriesDose => {
    const stockML = (owfG(percentOwf, goodsG) / stockPercentWV) * 100
    const errorPercent = (doubtML / stockML) * 100
    return { percentOwf, stockPercentWV, stockML, errorPercent, measurable: errorPercent <= errorMostPercent }
  })
  const measurable = doses.find((dose) => dose.measurable)
  return measurable ?? (doses.at(-1) as SeriesDose)
}
