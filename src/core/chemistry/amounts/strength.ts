// How strong a bottle is: grams of what is active in a mL of it. Labels rarely say w/v or w/w, so the dyer is asked.
import type { Problem } from '../answer.ts'
import { gPerMLOf } from './formulas.ts'

/** % w/v: g in 100 mL. % w/w: g in 100 g, which needs the density. */
export type Strength =
  | { percent: number; basis: 'w/v' }
  | { percent: number; basis: 'w/w'; densityGPerML: number | null }

/** What is wrong with a strength, `name` as a sentence begins with it; null: nothing. More than 0 and at most 100 %,
 * 0.5 to 2 g/mL. */
export function strengthProblem(name: string, strength: Strength): Omit<Problem, 'field'> | null {
  const { percent, basis } = strength
  if (!(percent > 0 && percent <= 100)) {
    const what = `${name} can't be ${percent} % strong.`
    return { code: 'percent-outside', what, instead: 'Give more than 0 and at most 100 %.' }
  }
  if (basis !== 'w/v' && basis !== 'w/w') {
    return { code: 'unknown-word', what: `${name} has no basis of its strength.`, instead: 'Give % w/v or % w/w.' }
  }
  if (basis === 'w/v') return null
  const density = strength.densityGPerML
  if (density === null || density === undefined) {
    const what = `${name} is given in % w/w without its density.`
    return { code: 'density-missing', what, instead: 'Give the density, or % w/v.' }
  }
  if (!(density >= 0.5 && density <= 2)) {
    const what = `No such liquid has a density of ${density} g/mL.`
    return { code: 'density-outside', what, instead: 'Give 0.5 to 2 g/mL.' }
  }
  return null
}

/** g of what is active in a mL. */
export function strengthGPerML(strength: Strength): number {
  return gPerMLOf(strength.percent, strength.basis === 'w/w' ? strength.densityGPerML : null)
}
