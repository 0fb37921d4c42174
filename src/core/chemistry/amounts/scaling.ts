import { type Answer, type Problem, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { goodsLimit, massLimit, some, volumeLimit } from './limits.ts'

/** An amount of a recipe, in mL or g. `goesBy`: given on the weight of the goods (% owf, parts), or for each litre. */
export type Portion = { name: string; amount: number; goesBy: 'goods' | 'liquor' }

/** `ratioChanged`: the pot holds less than the recipe's liquor ratio asks for, so it stands at `ratio` instead. Ratio and
 * pH change how dyes are taken up (Golob et al., Text. Res. J. 74 (2004) 587, abstract seen), so this is to be told. */
export type Scaled = { portions: Portion[]; liquorML: number; ratio: number; ratioChanged: boolean }

/** A recipe for other goods: what goes by the goods times their weights' ratio, what goes by the litre times the liquors'.
 * Times and temperatures do not scale; heating up takes longer, and that is not worked out here.
 * Goods 0.05 g to 100 kg, liquor above 0 and up to 1000 L, `potHoldsML` the same (left out: any pot), amounts 0 to
 * 1,000,000. Refuses what lies outside, is missing or is no number. Source: proportion. */
export function scaleRecipe(given: {
  fromGoodsG: number
  toGoodsG: number
  fromLiquorML: number
  portions: readonly Portion[]
  potHoldsML?: number
}): Answer<Scaled> {
  const { fromGoodsG, toGoodsG, fromLiquorML, portions, potHoldsML } = given
  const problems: Problem[] = allOutside([
    [fromGoodsG, { ...goodsLimit, field: 'fromGoodsG', name: "the recipe's goods" }],
    [toGoodsG, { ...goodsLimit, field: 'toGoodsG', name: 'the new goods' }],
    [fromLiquorML, some(volumeLimit('fromLiquorML', "the recipe's liquor"))],
    ...portions.map(({ name, amount }, i) => [amount, massLimit(`portions[${i}].amount`, name)] as const)
  ])
  if (potHoldsML !== undefined) {
    problems.push(...allOutside([[potHoldsML, some(volumeLimit('potHoldsML', 'what the pot holds'))]]))
  }
  if (problems.length > 0) return refuse(...problems)
  const byGoods = toGoodsG / fromGoodsG
  const wantedML = fromLiquorML * byGoods
  const ratioChanged = potHoldsML !== undefined && potHoldsML < wantedML
  const liquorML = ratioChanged ? potHoldsML : wantedML
  const byLiquor = liquorML / fromLiquorML
  const scaled = portions.map(
    (portion): Portion => ({ ...portion, amount: portion.amount * (portion.goesBy === 'goods' ? byGoods : byLiquor) })
  )
  return { portions: scaled, liquorML, ratio: liquorML / toGoodsG, ratioChanged }
}
