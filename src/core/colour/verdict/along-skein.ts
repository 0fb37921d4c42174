// How far the hue turns from one end of the skein to the other, how sure that is, and whether it runs one way.
import type { AtEqualDepth } from './at-equal-depth.ts'
import { at, dot, type Matrix } from './cholesky.ts'
import { rising } from './one-way.ts'
import { threeSd } from './three-sd.ts'

/** A split has to be seen 95 times of 100: so many standard deviations over the line (a point of the normal curve). */
const sdFor95Percent = 1.645
/** Of the many pairs of positions one must not count as turning back by chance. */
const sdMoreForPairs = 1
/** What a camera's own idea of colours makes of equal hues, end to end. Set by made-up photographs. */
const cameraSd = 0.35

export type AlongSkein = {
  /** End to end, ΔH*, by the straight line through the positions, each weighted by how sure it is. */
  size: number
  sd: number
  /** So many standard deviations are as much as three. */
  limit: number
  /** The smallest split, end to end, that would be called one 95 times of 100. */
  smallestVisible: number
  oneWay: boolean
  /** Where it first differs from the beginning by more than chance: an index. */
  turnsAt: number | null
  /** Variances that the whole is made of: the positions, the swatches, the curve between them, the light. */
  parts: { own: number; series: number; curve: number; uneven: number }
}

/** `places`: where each position lies, in rising order, at least two different ones. */
export function alongSkein(places: readonly number[], found: AtEqualDepth, freedom: number): AlongSkein {
  const { deltaH, own, whole, repeat } = found
  const weights = places.map((_, i) => 1 / (at(own, i, i) + 0.01))
  const line = endToEnd(places, weights)
  const size = dot(line, deltaH)
  const variance = quadratic(line, whole) + cameraSd ** 2
  const sd = Math.sqrt(variance)
  // Welch and Satterthwaite: only the part of repeat noise is known on few degrees of freedom.
  const limit = threeSd(freedom * (variance / Math.max(1e-12, quadratic(line, repeat))) ** 2)
  const way = Math.sign(size) || 1
  const run = rising(
    deltaH.map((value) => way * value),
    weights
  )
  const differs = (from: number, to: number): number => {
    const pair = places.map((_, nth) => (nth === to ? 1 : 0) - (nth === from ? 1 : 0))
    return (way * dot(pair, deltaH)) / Math.sqrt(quadratic(pair, whole) + cameraSd ** 2)
  }
  const back = Math.min(0, ...places.flatMap((_, to) => places.slice(0, to).map((_, from) => differs(from, to))))
  const half = places.findIndex((_, nth) => (run[nth] ?? 0) - (run[0] ?? 0) >= Math.abs(size) / 2)
  const clear = places.findIndex((_, nth) => nth > 0 && differs(0, nth) > limit)
  return {
    size,
    sd,
    limit,
    smallestVisible: (limit + sdFor95Percent) * sd,
    oneWay: back > -(limit + sdMoreForPairs),
    turnsAt: clear > 0 ? clear : half > 0 ? half : null,
    parts: partsOf(line, found)
  }
}

function partsOf(line: number[], { own, whole, strayed, light }: AtEqualDepth): AlongSkein['parts'] {
  const [all, position, curve, uneven] = [whole, own, strayed, light].map((part) => quadratic(line, part)) as [
    number,
    number,
    number,
    number
  ]
  return { own: position, series: Math.max(0, all - position - curve - uneven), curve, uneven }
}

/** Weights of the positions in the rise of the straight line through them, from the first place to the last. */
function endToEnd(places: readonly number[], weights: readonly number[]): number[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const middle = dot(weights, places) / all
  const spread = dot(
    weights,
    places.map((place) => (place - middle) ** 2)
  )
  const length = (places.at(-1) ?? 0) - (places[0] ?? 0)
  return places.map((place, nth) => ((weights[nth] ?? 0) * (place - middle) * length) / spread)
}

function quadratic(line: readonly number[], matrix: Matrix): number {
  return Math.max(
    0,
    dot(
      line,
      line.map((_, i) => dot(matrix[i] as number[], line))
    )
  )
}
