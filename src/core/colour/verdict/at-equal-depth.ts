// Each position of the skein against the control curve at its own depth, with the covariance of what is found: errors of
// the series go into all positions together.
import { added, type Covariance, labOf, scaled, tripleOf } from '../covariance.ts'
import { deltaHue, type Lab } from '../lab.ts'
import { at, type Matrix } from './cholesky.ts'
import { type ControlCurve, chromaVariance, controlCurve } from './control-curve.ts'
import type { Noise, Point, Position } from './given.ts'

export type AtEqualDepth = {
  curve: ControlCurve
  /** ΔH* of each position from the curve. */
  deltaH: number[]
  /** What each position alone makes of it: patch and repeat noise of its own. */
  own: Matrix
  /** All of it: own, series, curve and light. */
  whole: Matrix
  /** Of that, what comes of repeat noise (it alone is known on few degrees of freedom), of the curve between the swatches,
   * and of the light. */
  repeat: Matrix
  strayed: Matrix
  light: Matrix
}

/** How the light may differ from end to end where nobody looked: about what passes without a fault. Common practice, no
 * source. */
const unknownLight: Lab = { l: 3, a: 1, b: 1 }
/** A small step for slopes, in CIELAB units: all is smooth over it. */
const step = 0.01

export function atEqualDepth(series: Point[], positions: Position[], noise: Noise): AtEqualDepth {
  const doubtOf = (point: Point): Covariance => added(point.doubt, perAverage(noise))
  const variances = series.map((point) => chromaVariance(doubtOf(point)))
  const points = [...series, ...positions]
  const labs = points.map(({ lab }) => lab)
  const found = (moved: Lab[]): number[] => {
    const curve = controlCurve(moved.slice(0, series.length), variances)
    return moved.slice(series.length).map((lab) => deltaHue(curve.at(lab.l), lab))
  }
  const deltaH = found(labs)
  const slope = (move: (lab: Lab, nth: number) => Lab): number[] =>
    found(labs.map(move)).map((value, nth) => (value - (deltaH[nth] ?? 0)) / step)
  const slopes = labs.map((_, of) => ([0, 1, 2] as const).map((axis) => slope(only(of, axis))))
  const [patch, repeat] = [(point: Point) => point.doubt, () => perAverage(noise)].map((covariance) =>
    sum(points.map((point, nth) => carried(slopes[nth] as number[][], covariance(point))))
  ) as [Matrix, Matrix]
  const own = diagonal(positions.map((point, nth) => ownVariance(slopes[series.length + nth], nth, doubtOf(point))))
  const curve = controlCurve(labs.slice(0, series.length), variances)
  const between = strayed(curve, positions)
  const light = outer(slope((lab, nth) => along(lab, lightAt(points, nth, series.length), noise.light ?? unknownLight)))
  return {
    curve,
    deltaH,
    own,
    whole: sum([patch, repeat, between, light]),
    repeat,
    strayed: between,
    light
  }
}

/** Repeat noise of an average of several photos. */
const perAverage = ({ repeat, photos }: Noise): Covariance => scaled(repeat, 1 / Math.max(1, photos))

const only =
  (of: number, axis: 0 | 1 | 2) =>
  (lab: Lab, nth: number): Lab => {
    if (nth !== of) return lab
    const triple = tripleOf(lab)
    triple[axis] += step
    return labOf(triple)
  }

/** Where a thing lies in the light; unknown: the skein from end to end, the series in its middle. */
function lightAt(points: (Point | Position)[], nth: number, seriesCount: number): number {
  const point = points[nth] as Point | Position
  if (point.lightAt !== null) return point.lightAt
  return nth < seriesCount || !('at' in point) ? 0.5 : point.at
}

const along = ({ l, a, b }: Lab, place: number, light: Lab): Lab => ({
  l: l + step * place * light.l,
  a: a + step * place * light.a,
  b: b + step * place * light.b
})

/** What the covariance of one reading makes of all ΔH*, by the slopes along its three axes. */
function carried(slopes: number[][], covariance: Covariance): Matrix {
  const [first = []] = slopes
  return first.map((_, i) =>
    first.map((_, j) => {
      let value = 0
      for (const p of [0, 1, 2])
        for (const q of [0, 1, 2]) value += at(slopes, p, i) * at(covariance, p, q) * at(slopes, q, j)
      return value
    })
  )
}

/** What a position's own covariance makes of its own ΔH*. */
const ownVariance = (slopes: number[][] | undefined, nth: number, covariance: Covariance): number =>
  at(carried(slopes ?? [], covariance), nth, nth)

/** What the curve itself may stray by between swatches, turned into ΔH* along the hue direction at each position. */
function strayed(curve: ControlCurve, positions: Position[]): Matrix {
  const across = positions.map(({ lab }) => acrossHue(curve.at(lab.l), lab))
  return positions.map((one, i) =>
    positions.map((other, j) => {
      const [p, q] = [across[i] as [number, number], across[j] as [number, number]]
      return (p[0] * q[0] + p[1] * q[1]) * curve.stray(one.lab.l, other.lab.l)
    })
  )
}

/** How ΔH* changes with a* and b* of the control. */
function acrossHue(control: Lab, lab: Lab): [number, number] {
  const now = deltaHue(control, lab)
  return [
    (deltaHue({ ...control, a: control.a + step }, lab) - now) / step,
    (deltaHue({ ...control, b: control.b + step }, lab) - now) / step
  ]
}

const sum = (matrices: Matrix[]): Matrix =>
  (matrices[0] ?? []).map((row, i) => row.map((_, j) => matrices.reduce((all, matrix) => all + at(matrix, i, j), 0)))

const diagonal = (values: number[]): Matrix => values.map((value, i) => values.map((_, j) => (i === j ? value : 0)))

const outer = (values: number[]): Matrix => values.map((one) => values.map((other) => one * other))
