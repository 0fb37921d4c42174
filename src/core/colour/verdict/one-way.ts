// The nearest run that only rises.

/** Weighted isotonic regression by pooling neighbours that go the wrong way. R. E. Barlow and others, Statistical
 * Inference under Order Restrictions, 1972 (from memory). */
export function rising(values: readonly number[], weights: readonly number[]): number[] {
  const pools: { value: number; weight: number; count: number }[] = []
  for (const [nth, value] of values.entries()) {
    pools.push({ value, weight: weights[nth] ?? 1, count: 1 })
    for (let last = pools.length - 1; last > 0; last--) {
      const [before, after] = [pools[last - 1], pools[last]]
      if (!before || !after || before.value <= after.value) break
      const weight = before.weight + after.weight
      const value = (before.value * before.weight + after.value * after.weight) / weight
      pools.splice(last - 1, 2, { value, weight, count: before.count + after.count })
    }
  }
  return pools.flatMap(({ value, count }) => new Array<number>(count).fill(value))
}
