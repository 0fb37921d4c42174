import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { liquorML } from './formulas.ts'
import { goodsLimit, massLimit, ratioLimit, some, volumeLimit } from './limits.ts'

/** Water to pour into the pot for a liquor ratio. The whole liquor is ratio · goods g; stock, acid and whatever else is
 * poured come off it, and so does the water that wet goods carry in, if the ratio is to count it. Say which: spun yarn
 * carries some 0.6 of its dry weight, dripping yarn twice it (common practice, no source).
 * `trueRatio`: mL of all that is then in the pot, carried water too, for each g.
 * Goods 0.05 g to 100 kg, ratio 1 to 1000, volumes 0 to 1000 L. Refuses what lies outside, is missing or is no number, and
 * liquids that come to more than the whole. Source: the definition of the liquor ratio. */
export function waterFor(given: {
  goodsG: number
  ratio: number
  stockML: number
  acidML: number
  carriedML: number
  countCarried: boolean
}): Answer<{ totalML: number; waterML: number; trueRatio: number }> {
  const { goodsG, ratio, stockML, acidML, carriedML, countCarried } = given
  const problems = allOutside([
    [goodsG, goodsLimit],
    [ratio, ratioLimit],
    [stockML, volumeLimit('stockML', 'the stock')],
    [acidML, volumeLimit('acidML', 'the acid')],
    [carriedML, volumeLimit('carriedML', 'the water that the goods carry')]
  ])
  if (problems.length > 0) return refuse(...problems)
  const totalML = liquorML(ratio, goodsG)
  const waterML = totalML - stockML - acidML - (countCarried ? carriedML : 0)
  if (waterML < 0) {
    const what = `What goes in comes to ${round(totalML - waterML)} mL, the whole liquor to ${round(totalML)} mL.`
    const instead = `Give a ratio of at least ${Math.ceil((totalML - waterML) / goodsG)}, or a stronger stock.`
    return refuse({ code: 'does-not-fit', field: 'ratio', what, instead })
  }
  return { totalML, waterML, trueRatio: (waterML + stockML + acidML + carriedML) / goodsG }
}

/** Water that wet goods carry, 1 g taken as 1 mL: wet weight less dry weight. Dry 0.05 g to 100 kg; wet at least that. */
export function carriedML(given: { goodsG: number; wetG: number }): Answer<number> {
  const { goodsG, wetG } = given
  const wetLimit = massLimit('wetG', 'the wet weight')
  const problems = allOutside([
    [goodsG, goodsLimit],
    [wetG, wetLimit]
  ])
  if (problems.length > 0) return refuse(...problems)
  const least = allOutside([[wetG, { ...wetLimit, name: 'the weight of wet goods', least: goodsG }]])
  return least.length > 0 ? refuse(...least) : wetG - goodsG
}

/** The ratio that a pot stands at: mL of all its liquor for each g of dry goods. */
export function ratioOf(given: { goodsG: number; liquorML: number }): Answer<number> {
  const problems = allOutside([
    [given.goodsG, goodsLimit],
    [given.liquorML, some(volumeLimit('liquorML', 'the liquor'))]
  ])
  return problems.length > 0 ? refuse(...problems) : given.liquorML / given.goodsG
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
