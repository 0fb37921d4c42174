import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { owfG } from './formulas.ts'
import { goodsLimit, owfLimit } from './limits.ts'
import { type Strength, strengthGPerML, strengthProblem } from './strength.ts'

/** Acid on the weight of the goods, as the volume of a bottle: mL = g · 100 / % w/v, or g · 100 / (% w/w · density).
 * Goods 0.05 g to 100 kg, 0 to 1000 % owf; strength as of strengthProblem. Refuses what lies outside, is missing or is no
 * number. Source: the definitions of % w/v and % w/w. */
export function acidDose(given: {
  goodsG: number
  percentOwf: number
  strength: Strength
}): Answer<{ acidG: number; acidML: number }> {
  const { goodsG, percentOwf, strength } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [percentOwf, owfLimit]
  ])
  const weak = strengthProblem('The acid', strength)
  if (weak) problems.push({ ...weak, field: 'strength' })
  if (problems.length > 0) return refuse(...problems)
  const acidG = owfG(percentOwf, goodsG)
  return { acidG, acidML: acidG / strengthGPerML(strength) }
}
