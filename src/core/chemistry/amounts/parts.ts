import { type Answer, type Problem, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { mixedGPerML, owfG, owfPercent, partOfWhole } from './formulas.ts'
import { goodsLimit, owfLimit, stockLimit } from './limits.ts'

/** One dye of a mixture: its parts of dye by mass, and the strength of its stock. */
export type DyePart = { name: string; parts: number; stockPercentWV: number }
export type DyeDose = DyePart & { dyeG: number; stockML: number; percentOwf: number }

/** A depth of shade shared out among dyes by parts (3:1), as doses of each stock. Keep parts and % owf of each: a mixture
 * kept only as mL can't be varied later. `mixedPercentWV`: the strength of those stocks poured together.
 * Goods and depth as of stockFor; parts above 0 and up to 1,000,000; 1 to 20 dyes. Source: proportion. */
export function mixParts(given: {
  goodsG: number
  percentOwf: number
  dyes: readonly DyePart[]
}): Answer<{ doses: DyeDose[]; mixedPercentWV: number }> {
  const { goodsG, percentOwf, dyes } = given
  const problems: Problem[] = allOutside([
    [goodsG, goodsLimit],
    [percentOwf, owfLimit],
    [dyes.length, { field: 'dyes', name: 'the number of dyes', unit: '', least: 1, most: 20 }]
  ])
  for (const [i, { name, parts, stockPercentWV }] of dyes.entries()) {
    const field = `dyes[${i}]`
    const partsLimit = {
      field: `${field}.parts`,
      name: `the part of ${name}`,
      unit: '',
      least: 0,
      most: 1e6,
      above: true
    }
    const strength = { ...stockLimit, field: `${field}.stockPercentWV`, name: `the strength of ${name}` }
    problems.push(
      ...allOutside([
        [parts, partsLimit],
        [stockPercentWV, strength]
      ])
    )
  }
  if (problems.length > 0) return refuse(...problems)
  const whole = owfG(percentOwf, goodsG)
  const all = dyes.reduce((sum, { parts }) => sum + parts, 0)
  const doses = dyes.map((dye): DyeDose => {
    const dyeG = partOfWhole(whole, dye.parts, all)
    return { ...dye, dyeG, stockML: (dyeG / dye.stockPercentWV) * 100, percentOwf: owfPercent(dyeG, goodsG) }
  })
  const mixed = mixedGPerML(dyes.map(({ parts, stockPercentWV }) => ({ parts, gPerML: stockPercentWV / 100 })))
  return { doses, mixedPercentWV: mixed * 100 }
}
