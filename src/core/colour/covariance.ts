// How three figures of a colour stray together: the variances and covariances of L*, a* and b*.
import type { Lab } from './lab.ts'

export type Triple = [number, number, number]
export type Covariance = [Triple, Triple, Triple]

export const tripleOf = ({ l, a, b }: Lab): Triple => [l, a, b]
export const labOf = ([l, a, b]: Triple): Lab => ({ l, a, b })

export const noCovariance = (): Covariance => [
  [0, 0, 0],
  [0, 0, 0],
  [0, 0, 0]
]

/** Adds `times` · one · oneᵀ to `sum`, in place. */
export function addOuter(sum: Covariance, one: Triple, times = 1): void {
  for (const i of [0, 1, 2] as const) for (const j of [0, 1, 2] as const) sum[i][j] += times * one[i] * one[j]
}

export function scaled(covariance: Covariance, by: number): Covariance {
  return covariance.map((row) => row.map((value) => value * by)) as Covariance
}

export function added(one: Covariance, other: Covariance): Covariance {
  return one.map((row, i) => row.map((value, j) => value + (other[i]?.[j] ?? 0))) as Covariance
}

export function meanLab(labs: readonly Lab[]): Lab {
  const sum: Lab = { l: 0, a: 0, b: 0 }
  for (const { l, a, b } of labs) {
    sum.l += l / labs.length
    sum.a += a / labs.length
    sum.b += b / labs.length
  }
  return sum
}

export const minus = (one: Lab, other: Lab): Lab => ({ l: one.l - other.l, a: one.a - other.a, b: one.b - other.b })

/** Of single colours about their mean (n - 1). Nothing for fewer than two. */
export function covarianceOf(labs: readonly Lab[]): Covariance {
  const sum = noCovariance()
  if (labs.length < 2) return sum
  const middle = meanLab(labs)
  for (const lab of labs) addOuter(sum, tripleOf(minus(lab, middle)), 1 / (labs.length - 1))
  return sum
}

/** Of a figure that goes up by `slopes` with L*, a* and b*. */
export function carriedVariance(covariance: Covariance, slopes: Triple): number {
  let sum = 0
  for (const i of [0, 1, 2] as const)
    for (const j of [0, 1, 2] as const) sum += slopes[i] * covariance[i][j] * slopes[j]
  return sum
}
