import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { some, stockLimit, volumeLimit } from './limits.ts'

/** A weaker stock from a stronger: C1 V1 = C2 V2. Take `takeML` and make up to `makeUpToML` with water.
 * Strengths above 0 and up to 100 % w/v, volume above 0 and up to 1000 L. Refuses what lies outside, is missing or is no
 * number, and a wanted strength above the one there is. Source: conservation of what is dissolved. */
export function dilute(given: {
  fromPercentWV: number
  toPercentWV: number
  toML: number
}): Answer<{ takeML: number; makeUpToML: number }> {
  const { fromPercentWV, toPercentWV, toML } = given
  const problems = allOutside([
    [fromPercentWV, { ...stockLimit, field: 'fromPercentWV', name: 'the strength there is' }],
    [toPercentWV, { ...stockLimit, field: 'toPercentWV', name: 'the strength wanted' }],
    [toML, some(volumeLimit('toML', 'the volume wanted'))]
  ])
  if (problems.length > 0) return refuse(...problems)
  if (toPercentWV > fromPercentWV) {
    const what = `Water makes no ${toPercentWV} % out of ${fromPercentWV} %.`
    const instead = `Give at most ${fromPercentWV} %, or take a stronger stock.`
    return refuse({ code: 'contradiction', field: 'toPercentWV', what, instead })
  }
  // The last digit of a sum must not take more than the whole.
  return { takeML: Math.min(toML, (toML * toPercentWV) / fromPercentWV), makeUpToML: toML }
}
