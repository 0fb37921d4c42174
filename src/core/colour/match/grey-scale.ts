// Steps of the grey scales, as an eye would grade two colours against them. Indicative only: the standards grade by eye, under
// a stated light, and an instrument's grade has formulas of its own (ISO 105-A05, A04) that were not looked up.

export type GreyStep = 5 | 4.5 | 4 | 3.5 | 3 | 2.5 | 2 | 1.5 | 1

type Scale = readonly (readonly [GreyStep, number])[]

/** Change in colour: differences of the nine pairs in CIELAB units (ISO 105-A02:1993). */
const change: Scale = [
  [5, 0],
  [4.5, 0.8],
  [4, 1.7],
  [3.5, 2.5],
  [3, 3.4],
  [2.5, 4.8],
  [2, 6.8],
  [1.5, 9.6],
  [1, 13.6]
]

/** Staining (ISO 105-A03:1993; from memory). */
const staining: Scale = [
  [5, 0],
  [4.5, 2.2],
  [4, 4.3],
  [3.5, 6],
  [3, 8.5],
  [2.5, 12],
  [2, 16.9],
  [1.5, 24],
  [1, 34.1]
]

/** The pair whose difference is nearest; halfway it is the worse one. */
function nearest(scale: Scale, difference: number): GreyStep {
  let best = scale[0] as Scale[number]
  for (const pair of scale) if (Math.abs(pair[1] - difference) <= Math.abs(best[1] - difference)) best = pair
  return best[0]
}

/** Difference in CIELAB units (ΔE* of 1976), 0 and more. */
export const changeStep = (difference: number): GreyStep => nearest(change, difference)
export const stainingStep = (difference: number): GreyStep => nearest(staining, difference)
