import { type Answer, refuse } from '../answer.ts'
import { allOutside } from '../limits.ts'
import { rateAt } from './first-order.ts'

/** Activation energies of dye going into protein and polyamide, kJ/mol: C.I. Acid Orange 7 in nylon 66 after boiling
 * water 75 ('Diffusion Kinetics of Orange-II in Nylon 66'), lac on wool 107 (Wei et al., J. Chemistry 2013, 546839).
 * `likely`: about half-way. None was found for acid dyes on wool by name. */
export const publishedEnergiesKJPerMol = { least: 75, likely: 90, most: 107 } as const

/** What has to be added to a hold that goes on cooler than it was meant, so that as much dye goes in: by Arrhenius' law
 * the rate falls, and the time grows by as much. A model, not a law.
 * Hold 0 to 10,000 min; both temperatures 0 to 105 °C, the cooler one not above the other. Refuses what lies outside, is
 * missing or is no number. Source: Arrhenius' law with the energies above. */
export function longerHold(given: {
  holdMin: number
  meantC: number
  atC: number
}): Answer<{ leastMin: number; likelyMin: number; mostMin: number }> {
  const { holdMin, meantC, atC } = given
  const problems = allOutside([
    [holdMin, { field: 'holdMin', name: 'the hold', unit: 'min', least: 0, most: 10_000 }],
    [meantC, { field: 'meantC', name: 'the temperature that was meant', unit: '°C', least: 0, most: 105 }],
    [atC, { field: 'atC', name: 'the temperature of the hold', unit: '°C', least: 0, most: Math.min(105, meantC) }]
  ])
  if (problems.length > 0) return refuse(...problems)
  const more = (energyKJPerMol: number): number => {
    const slower = rateAt({ ratePerMin: 1, rateAtC: meantC, energyKJPerMol, tempC: atC })
    return typeof slower === 'number' ? holdMin / slower - holdMin : 0
  }
  const { least, likely, most } = publishedEnergiesKJPerMol
  return { leastMin: more(least), likelyMin: more(likely), mostMin: more(most) }
}
