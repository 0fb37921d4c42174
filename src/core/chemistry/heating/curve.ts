// One curve of Newton's law through the readings, for a given rate. Time runs from the first reading (0) to the last (1),
// and a level is a temperature less the target, so that "at the target" is level 0.
//   level(t) = start + slope · g(t),  g(t) = (1 − e^(−rate·t)) / rate,  which is t itself at rate 0 (a straight line).
// For a given rate this is a straight line over g, so its best start and slope are had without any search.

export type Levels = { times: Float64Array; levels: Float64Array; meanLevel: number }

export type Curve = {
  rate: number
  meanG: number
  meanLevel: number
  slope: number
  /** Sum of squares of g about its mean. */
  spreadG: number
  /** Sum of squares of what the curve leaves over. */
  misfit: number
}

/** Drawn some 200 times for an answer, through every reading: plain loops. */
export function curveAt(rate: number, { times, levels, meanLevel }: Levels): Curve {
  const count = times.length
  const gs = new Float64Array(count)
  let sumG = 0
  for (let i = 0; i < count; i++) {
    const g = gAt(rate, times[i] as number)
    gs[i] = g
    sumG += g
  }
  const meanG = sumG / count
  let spreadG = 0
  let together = 0
  for (let i = 0; i < count; i++) {
    const off = (gs[i] as number) - meanG
    spreadG += off * off
    together += off * ((levels[i] as number) - meanLevel)
  }
  const slope = together / spreadG
  let misfit = 0
  for (let i = 0; i < count; i++) {
    const over = (levels[i] as number) - meanLevel - slope * ((gs[i] as number) - meanG)
    misfit += over * over
  }
  return { rate, meanG, meanLevel, slope, spreadG, misfit }
}

/** How the misfit changes with the rate; 0 at the best one. Found from what is left over and not from two misfits, so it
 * keeps its digits where the curve goes through every reading. */
export function misfitByRate({ rate, meanG, meanLevel, slope }: Curve, { times, levels }: Levels): number {
  let change = 0
  for (let i = 0; i < times.length; i++) {
    const time = times[i] as number
    const over = (levels[i] as number) - meanLevel - slope * (gAt(rate, time) - meanG)
    // Start and slope are at their best, so only the change of g itself counts.
    change -= 2 * over * slope * gByRate(rate, time)
  }
  return change
}

/** The time at which the curve is at the target. Infinity: it levels off before. Under 0: before the first reading. */
export function crossing({ rate, meanG, meanLevel, slope }: Curve): number {
  return timeOfG(rate, meanG - meanLevel / slope)
}

/** From the earliest time, from the first reading on, to the latest; Infinity is never. */
export type Span = { earliest: number; latest: number }

const none: Span = { earliest: Number.POSITIVE_INFINITY, latest: Number.NEGATIVE_INFINITY }

/** The times at which a curve of this rate may be at the target that misses the readings by at most `allowed` more than
 * this one, the best (E. C. Fieller's interval for a ratio; from memory). */
export function plausibleSpan(
  { rate, meanG, meanLevel, slope, spreadG }: Curve,
  readings: number,
  allowed: number
): Span {
  if (allowed < 0) return none
  // (meanLevel + slope·d)² ≤ allowed·(1/n + d²/spreadG), d = g − meanG
  const a = slope * slope - allowed / spreadG
  const b = meanLevel * slope
  const c = meanLevel * meanLevel - allowed / readings
  // Of the two ways to write a root, each that subtracts nothing nearly equal.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(Math.max(0, b * b - a * c)))
  const ends = [meanG + q / a, meanG + c / q]
  const low = Math.min(...ends)
  const high = Math.max(...ends)
  if (a > 0)
    return { earliest: high < 0 ? none.earliest : timeOfG(rate, Math.max(0, low)), latest: timeOfG(rate, high) }
  // The slope may be 0 or of the other sign: all is plausible but what lies between the two.
  const everything = b * b <= a * c || low >= 0
  return { earliest: everything ? 0 : timeOfG(rate, Math.max(0, high)), latest: Number.POSITIVE_INFINITY }
}

function gAt(rate: number, time: number): number {
  return rate === 0 ? time : -Math.expm1(-rate * time) / rate
}

function timeOfG(rate: number, g: number): number {
  if (rate === 0) return g
  const gone = rate * g
  return gone < 1 ? -Math.log1p(-gone) / rate : Number.POSITIVE_INFINITY
}

function gByRate(rate: number, time: number): number {
  const x = rate * time
  // The closed form loses its digits at small x: the first terms of its series.
  if (x < 1e-3) return time * time * (-1 / 2 + x * (1 / 3 + x * (-1 / 8 + x / 30)))
  return (time * Math.exp(-x) - gAt(rate, time)) / rate
}
