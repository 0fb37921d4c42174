// How far a count may be from the truth, by chance alone.

/** The rate (of the same length of time) above which a count this low would come up in one of twenty tries: Poisson. */
export function mostEvents(count: number): number {
  let [low, high] = [count, 3 * count + 20]
  for (let turn = 0; turn < 60; turn++) {
    const middle = (low + high) / 2
    if (atMost(count, middle) > 0.05) low = middle
    else high = middle
  }
  return low
}

/** How likely so many events or fewer are where `mean` are to be expected. */
function atMost(count: number, mean: number): number {
  let term = Math.exp(-mean)
  let sum = term
  for (let nth = 1; nth <= count; nth++) {
    term *= mean / nth
    sum += term
  }
  return sum
}
