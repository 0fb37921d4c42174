// The control curve: the colour that the mixed dye has at each depth when nothing splits, from the dilution series.
// Depth is L*. The curve is drawn through a* and b*, which stay smooth where the hue angle jumps near grey; h(depth) and
// C(depth) are its angle and its length.
import { chromaOf, type Lab } from '../lab.ts'
import { at, cholesky, dot, type Matrix, solved } from './cholesky.ts'

// Gaussian process regression (universal kriging): a straight line in L* plus a smooth way about it, with the Matérn
// covariance of order 5/2. C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning, 2006, ch. 2
// and eq. 4.17 (from memory). Chosen over a polynomial because it says how little it knows between two swatches.

/** Over so many units of L* the way about the line is alike, and it is as wide as so much of the deepest chroma. Set by
 * curves of made-up dyes; see "The verdict" in DEVELOPERS.md. */
const reach = 30
const shareOfChroma = 0.6
/** What one swatch strays by because the dye was measured by hand, in units of a* and b*: about 1 % of the ratio. */
const dosingSd = 0.2
/** The straight line may be anywhere. */
const lineSd = 200
const slopeSd = 5

export type ControlCurve = {
  /** From the palest to the deepest of the series. */
  deepest: number
  palest: number
  at(depth: number): Lab
  /** What the curve may stray by between the swatches: covariance of its error at two depths, in a* and alike in b*. */
  stray(depth: number, other: number): number
}

/** Of at least three colours. `variances`: of a* and b* of each, on average; more of it, and the curve keeps less to it. */
export function controlCurve(colours: readonly Lab[], variances: readonly number[]): ControlCurve {
  const depths = colours.map(({ l }) => l)
  const middle = depths.reduce((sum, depth) => sum + depth, 0) / depths.length
  const wide = shareOfChroma * Math.max(...colours.map(chromaOf))
  const alike = (one: number, other: number): number =>
    lineSd ** 2 + slopeSd ** 2 * (one - middle) * (other - middle) + wide ** 2 * matern(Math.abs(one - other) / reach)
  const plain: Matrix = depths.map((one) => depths.map((other) => alike(one, other)))
  const noisy = plain.map((row, i) => row.map((value, j) => (i === j ? value + nugget(variances[i] ?? 0) : value)))
  const lower = cholesky(noisy)
  const [pullA, pullB] = [
    solved(
      lower,
      colours.map(({ a }) => a)
    ),
    solved(
      lower,
      colours.map(({ b }) => b)
    )
  ]
  const to = (depth: number): number[] => depths.map((swatch) => alike(depth, swatch))
  const stray = (depth: number, other: number): number => {
    const [near, far] = [to(depth), to(other)]
    const [weights, others] = [solved(lower, near), solved(lower, far)]
    const through = weights.map((_, i) => dot(plain[i] as number[], others))
    const dosed = dosingSd ** 2 * dot(weights, others)
    return alike(depth, other) - dot(weights, far) - dot(others, near) + dot(weights, through) + dosed
  }
  return {
    deepest: Math.min(...depths),
    palest: Math.max(...depths),
    at: (depth) => ({ l: depth, a: dot(to(depth), pullA), b: dot(to(depth), pullB) }),
    stray
  }
}

const nugget = (variance: number): number => dosingSd ** 2 + variance

function matern(distance: number): number {
  const far = Math.sqrt(5) * distance
  return (1 + far + far ** 2 / 3) * Math.exp(-far)
}

/** Mean variance of a* and b*, as `controlCurve` wants it. */
export function chromaVariance(covariance: Matrix): number {
  return (at(covariance, 1, 1) + at(covariance, 2, 2)) / 2
}
