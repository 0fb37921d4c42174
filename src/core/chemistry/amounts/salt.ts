import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { liquorML, owfG } from './formulas.ts'
import { goodsLimit, owfLimit, ratioLimit } from './limits.ts'

/** Salt or levelling agent on the weight of the goods, and what that is in the liquor: g/L = % owf · 10 / ratio.
 * Goods 0.05 g to 100 kg, 0 to 1000 % owf, ratio 1 to 1000. Refuses what lies outside, is missing or is no number.
 * Source: proportion. */
export function saltFor(given: {
  goodsG: number
  percentOwf: number
  ratio: number
}): Answer<{ saltG: number; gPerL: number }> {
  const { goodsG, percentOwf, ratio } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [percentOwf, owfLimit],
    [ratio, ratioLimit]
  ])
  if (problems.length > 0) return refuse(...problems)
  const saltG = owfG(percentOwf, goodsG)
  return { saltG, gPerL: (saltG / liquorML(ratio, goodsG)) * 1000 }
}
