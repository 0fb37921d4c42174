// Searching along a line, always the same way and with a bounded number of looks.

const golden = (Math.sqrt(5) - 1) / 2

/** Where `f` changes its sign between two places that have different signs: false position, halving the weight of an end
 * that stays (the Illinois rule; M. Dowell & P. Jarratt, BIT 11, 1971; from memory). */
export function signChange(f: (x: number) => number, from: number, to: number): number {
  let [a, b, atA, atB] = [from, to, f(from), f(to)]
  for (let look = 0; look < 60 && atB !== 0; look++) {
    const x = b - (atB * (b - a)) / (atB - atA)
    // Nearer than that, roundings decide on the sign.
    if (!(Math.abs(x - b) > 1e-14 * Math.abs(b))) break
    const atX = f(x)
    if (atX < 0 !== atB < 0) [a, atA] = [b, atB]
    else atA /= 2
    ;[b, atB] = [x, atX]
  }
  return b
}

/** The least value of `f` between two places within which it falls and then rises: golden section. */
function leastBetween(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to]
  let [left, right] = [b - golden * (b - a), a + golden * (b - a)]
  let [atLeft, atRight] = [f(left), f(right)]
  // The place to a ten-thousandth of the way; the value, flat there, to about the square of that.
  for (let look = 0; look < 20; look++) {
    if (atLeft <= atRight) {
      ;[b, right, atRight] = [right, left, atLeft]
      left = b - golden * (b - a)
      atLeft = f(left)
    } else {
      ;[a, left, atLeft] = [left, right, atRight]
      right = a + golden * (b - a)
      atRight = f(right)
    }
  }
  return Math.min(atLeft, atRight)
}

/** The least value of `f` over places where it is known, and between the neighbours of the best of them. */
export function leastOver(f: (x: number) => number, places: number[], values: number[]): number {
  const least = Math.min(...values)
  if (!Number.isFinite(least)) return least
  const best = values.indexOf(least)
  const here = places[best] as number
  return Math.min(least, leastBetween(f, places[best - 1] ?? here, places[best + 1] ?? here))
}
