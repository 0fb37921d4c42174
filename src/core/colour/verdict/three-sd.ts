// How many standard deviations are as much as three where the standard deviation itself is only an estimate.

/** The point of Student's t on `freedom` degrees of freedom beyond which as little lies as beyond three standard
 * deviations of the normal curve: 3 for very many, 6.62 for 4. Good to 1 % from 4 degrees of freedom on; fewer are taken
 * as 4. Source: the expansion of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.5 (from memory). */
export function threeSd(freedom: number): number {
  const z = 3
  const n = Math.max(4, freedom)
  const terms = [
    (z ** 3 + z) / 4,
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160
  ]
  return terms.reduce((sum, term, nth) => sum + term / n ** (nth + 1), z)
}
