// Exhaustion as a first-order process, E = E∞ (1 - e^-kt), its rate rising with heat by Arrhenius' law. A model, not a
// law: dye on wool often follows another.
import { type Answer, type Problem, refuse } from '../answer.ts'
import { allOutside, type Limit } from '../limits.ts'

const GAS_KJ = 0.008314462618
const KELVIN = 273.15

/** `ratePerMin`: k at `rateAtC`. `energyKJPerMol`: Arrhenius' energy, 50 to 100 for acid dyes (from memory): show it as an
 * assumption. */
export type Rate = { ratePerMin: number; rateAtC: number; energyKJPerMol: number }

/** A stretch of time over which the bath goes evenly from one temperature to another. */
export type Stretch = { fromC: number; toC: number; min: number }

/** Rate per minute at another temperature: k = k0 e^((Ea/R)(1/T0 - 1/T)). Rates above 0 and up to 100 per min, energy 0 to
 * 300 kJ/mol, 0 to 105 °C. Refuses what lies outside, is missing or is no number. Source: Arrhenius' law. */
export function rateAt(given: Rate & { tempC: number }): Answer<number> {
  const problems = [...rateProblems(given), ...allOutside([[given.tempC, tempLimit('tempC', 'the temperature')]])]
  return problems.length > 0 ? refuse(...problems) : arrhenius(given, given.tempC)
}

/** Half-time in min of a first-order process: ln 2 / k. The rate as of rateAt. */
export function halfTimeMin(ratePerMin: number): Answer<number> {
  const problems = allOutside([[ratePerMin, rateLimit]])
  return problems.length > 0 ? refuse(...problems) : Math.LN2 / ratePerMin
}

/** Exhaustion in % after some stretches of time, from an empty fibre. `finalPercent`: what it comes to in the end, 0 to
 * 100. Up to 100 stretches of 0 to 10,000 min, the rate as of rateAt. Source: first-order kinetics; over a ramp the rate is
 * added up by Simpson's rule. */
export function exhaustionAfter(given: Rate & { finalPercent: number; stretches: readonly Stretch[] }): Answer<number> {
  const { finalPercent, stretches } = given
  const problems = [
    ...rateProblems(given),
    ...allOutside([
      [finalPercent, { field: 'finalPercent', name: 'the exhaustion in the end', unit: '%', least: 0, most: 100 }],
      [stretches.length, { field: 'stretches', name: 'the number of stretches', unit: '', least: 0, most: 100 }],
      ...stretches.flatMap(({ fromC, toC, min }, i) => [
        [fromC, tempLimit(`stretches[${i}].fromC`, 'the temperature at first')] as const,
        [toC, tempLimit(`stretches[${i}].toC`, 'the temperature at last')] as const,
        [min, { field: `stretches[${i}].min`, name: 'the time', unit: 'min', least: 0, most: 10_000 }] as const
      ])
    ])
  ]
  if (problems.length > 0) return refuse(...problems)
  const passed = stretches.reduce((sum, stretch) => sum + passedIn(given, stretch), 0)
  return finalPercent * (1 - Math.exp(-passed))
}

const rateLimit: Limit = { field: 'ratePerMin', name: 'the rate', unit: 'per min', least: 0, most: 100, above: true }

function tempLimit(field: string, name: string): Limit {
  return { field, name, unit: '°C', least: 0, most: 105 }
}

function rateProblems({ ratePerMin, rateAtC, energyKJPerMol }: Rate): Problem[] {
  return allOutside([
    [ratePerMin, rateLimit],
    [rateAtC, tempLimit('rateAtC', 'the temperature of the rate')],
    [energyKJPerMol, { field: 'energyKJPerMol', name: 'the activation energy', unit: 'kJ/mol', least: 0, most: 300 }]
  ])
}

function arrhenius({ ratePerMin, rateAtC, energyKJPerMol }: Rate, tempC: number): number {
  return ratePerMin * Math.exp((energyKJPerMol / GAS_KJ) * (1 / (rateAtC + KELVIN) - 1 / (tempC + KELVIN)))
}

/** ∫ k dt over a stretch. */
function passedIn(rate: Rate, { fromC, toC, min }: Stretch): number {
  const halves = 50
  let sum = arrhenius(rate, fromC) + arrhenius(rate, toC)
  for (let i = 1; i < 2 * halves; i++) {
    sum += (i % 2 === 1 ? 4 : 2) * arrhenius(rate, fromC + ((toC - fromC) * i) / (2 * halves))
  }
  return (sum * min) / (6 * halves)
}
