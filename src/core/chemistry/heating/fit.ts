// The best curve of Newton's law through readings, all three of its parameters free, and which crossings of the target
// are as plausible as that (profile likelihood).
import { type Curve, curveAt, type Levels, misfitByRate, plausibleSpan, type Span } from './curve.ts'
import { leastOver, signChange } from './search.ts'

/** How much more misfit than the best, in variances of a reading, is plausible: a point of chi-square with one degree of
 * freedom (Wilks' theorem; Y. Pawitan, In All Likelihood, 2001; both figures from memory). */
export const within95Percent = 3.841
export const within999PerMille = 10.828

const steps = 48
const stepsWithin = 16

export type Fit = {
  levels: Levels
  /** Variance of a reading, °C². */
  variance: number
  best: Curve
  /** A curve at every step of the line of rates. */
  grid: Curve[]
}

// A rate is a place on a line: near 0, where the curve is almost straight, even steps are even; far from it, a ratio.
const rateAt = (place: number): number => Math.expm1(place)
const placeOf = ({ rate }: Curve): number => Math.log1p(rate)

export function fit(levels: Levels, variance: number): Fit {
  const second = levels.times.find((time) => time > 0) ?? 1
  // The steepest rate worth a look: all is over before the second reading.
  const end = Math.log1p(40 / second)
  const grid = Array.from({ length: steps + 1 }, (_, i) => curveAt(rateAt((end * i) / steps), levels))
  return { levels, variance, best: bestOf(grid, levels), grid }
}

/** Where the misfit no longer changes, between the neighbours of the best step; at an end of the line it still may. */
function bestOf(grid: Curve[], levels: Levels): Curve {
  const misfits = grid.map((curve) => curve.misfit)
  const at = misfits.indexOf(Math.min(...misfits))
  const best = grid[at] as Curve
  const [before, after] = [grid[at - 1] ?? best, grid[at + 1] ?? best]
  if (misfitByRate(before, levels) >= 0 || misfitByRate(after, levels) <= 0) return best
  const change = (place: number): number => misfitByRate(curveAt(rateAt(place), levels), levels)
  return curveAt(rateAt(signChange(change, placeOf(before), placeOf(after))), levels)
}

/** About the number of readings less 3 when they follow the law. */
export function chiSquare({ best, variance }: Fit): number {
  return best.misfit / variance
}

/** A level line is as plausible: the readings neither rise nor fall beyond their doubt. */
export function mayBeSteady({ levels: { levels }, best, variance }: Fit): boolean {
  const misfit = levels.reduce((sum, level) => sum + (level - best.meanLevel) ** 2, 0)
  return misfit - best.misfit <= within95Percent * variance
}

/** When the pot may be at the target. A latest time under 0: every plausible one lies before the first reading. */
export function plausibleTimes({ levels, variance, best, grid }: Fit, plausible: number): Span {
  const most = best.misfit + plausible * variance
  const spanAt = (place: number): Span => {
    const curve = curveAt(rateAt(place), levels)
    return plausibleSpan(curve, levels.times.length, most - curve.misfit)
  }
  const over = (place: number): number => curveAt(rateAt(place), levels).misfit - most
  const good = [...grid.filter((curve) => curve.misfit <= most), best].map(placeOf)
  const [slow, fast] = [Math.min(...good), Math.max(...good)]
  const slower = grid.findLast((curve) => placeOf(curve) < slow)
  const faster = grid.find((curve) => placeOf(curve) > fast)
  const from = slower ? signChange(over, placeOf(slower), slow) : slow
  const to = faster ? signChange(over, placeOf(faster), fast) : fast
  const between = Array.from({ length: stepsWithin + 1 }, (_, i) => from + ((to - from) * i) / stepsWithin)
  const places = [...between, placeOf(best)].sort((a, b) => a - b)
  const spans = places.map(spanAt)
  const earliest = spans.map((span) => span.earliest)
  const soonest = leastOver((place) => spanAt(place).earliest, places, earliest)
  const latest = spans.map((span) => -span.latest)
  return { earliest: soonest, latest: -leastOver((place) => -spanAt(place).latest, places, latest) }
}
