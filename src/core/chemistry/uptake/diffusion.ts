import { type Answer, refuse } from '../answer.ts'
import { allOutside, type Limit } from '../limits.ts'
import { besselJ } from './bessel.ts'

/** How much of the dye that a fibre takes up in the end is in it at a time, where it wanders in by diffusion from a
 * stirred bath that grows poorer: a number from 0 to 1. A model, not a law: dye on wool often follows another.
 *
 * `alpha`: the bath's volume over the fibre's, divided by how many times richer in dye the fibre is in the end; the bath
 * keeps alpha / (1 + alpha) of the dye. Infinity: a bath that never grows poorer. `time`: D t / r², without a unit (D in
 * cm²/s, t in s, r the fibre's radius in cm). alpha 0.001 or more, time 0 or 0.001 to 1000: below that the series needs too
 * many terms. Refuses what lies outside, is missing or is no number.
 * Source: Crank, The Mathematics of Diffusion, 2nd ed. 1975, eqs 5.30 to 5.36, from memory. */
export function diffusedFraction(given: { alpha: number; time: number }): Answer<number> {
  const { alpha, time } = given
  const problems = allOutside([
    [alpha, { field: 'alpha', name: 'alpha', unit: '', least: 0.001, most: Number.POSITIVE_INFINITY }],
    time === 0 ? [0, timeLimit(0)] : [time, timeLimit(0.001)]
  ])
  if (problems.length > 0) return refuse(...problems)
  if (time === 0) return 0
  const s = 1 / alpha
  let left = 0
  for (let n = 1; ; n++) {
    const q = diffusionRoot(s, n)
    const fades = Math.exp(-q * q * time)
    left += ((4 * (1 + s)) / (4 * s * s + 4 * s + q * q)) * fades
    if (fades < 1e-17) return 1 - left
  }
}

function timeLimit(least: number): Limit {
  return { field: 'time', name: 'the time', unit: '(D t / r²)', least, most: 1000 }
}

/** The n-th root of q J0(q) + 2 s J1(q), for s = 1/alpha: it lies between the n-th zeros of J0 and of J1. */
export function diffusionRoot(s: number, n: number): number {
  let low = (n - 0.27) * Math.PI
  let high = (n + 0.27) * Math.PI
  const sign = n % 2 === 1 ? 1 : -1
  for (let half = 0; half < 50; half++) {
    const q = (low + high) / 2
    if (sign * (q * besselJ(0, q) + 2 * s * besselJ(1, q)) > 0) low = q
    else high = q
  }
  return (low + high) / 2
}
