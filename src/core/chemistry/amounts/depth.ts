import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { owfG, owfPercent } from './formulas.ts'
import { goodsLimit, owfLimit, some, stockLimit, volumeLimit } from './limits.ts'

/** The dye for a depth of shade, and the stock that holds it: dye g = goods g · % owf / 100, stock mL = goods g · % owf /
 * % w/v. Goods in g dry, 0.05 g to 100 kg; depth 0 to 1000 % owf; stock above 0 and up to 100 % w/v. Refuses what lies
 * outside, is missing or is no number. Source: the usual formula of laboratory dyeing texts. */
export function stockFor(given: {
  goodsG: number
  percentOwf: number
  stockPercentWV: number
}): Answer<{ dyeG: number; stockML: number }> {
  const { goodsG, percentOwf, stockPercentWV } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [percentOwf, owfLimit],
    [stockPercentWV, stockLimit]
  ])
  if (problems.length > 0) return refuse(...problems)
  const dyeG = owfG(percentOwf, goodsG)
  return { dyeG, stockML: (dyeG / stockPercentWV) * 100 }
}

/** The depth that a volume of stock gives, the other way round; stock up to 1000 L. Units, ranges, refusals and source as
 * of stockFor. */
export function depthOf(given: {
  goodsG: number
  stockML: number
  stockPercentWV: number
}): Answer<{ dyeG: number; percentOwf: number }> {
  const { goodsG, stockML, stockPercentWV } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [stockML, volumeLimit('stockML', 'the stock')],
    [stockPercentWV, stockLimit]
  ])
  if (problems.length > 0) return refuse(...problems)
  const dyeG = (stockML * stockPercentWV) / 100
  return { dyeG, percentOwf: owfPercent(dyeG, goodsG) }
}

/** Powder to weigh out for a stock: g = % w/v · mL / 100, made up to the whole volume with water, not added to it.
 * Strength above 0 and up to 100 % w/v, volume above 0 and up to 1000 L. Source: the definition of % w/v. */
export function makeUpStock(given: {
  stockPercentWV: number
  volumeML: number
}): Answer<{ powderG: number; makeUpToML: number }> {
  const { stockPercentWV, volumeML } = given
  const problems = allOutside([
    [stockPercentWV, stockLimit],
    [volumeML, some(volumeLimit('volumeML', 'the volume'))]
  ])
  if (problems.length > 0) return refuse(...problems)
  return { powderG: (stockPercentWV * volumeML) / 100, makeUpToML: volumeML }
}
