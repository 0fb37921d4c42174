// How far values lie apart.

export type Spread = { count: number; least: number; median: number; most: number }

/** Null: no values. */
export function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  const upper = sorted[middle] as number
  const median = sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2
  return { count: sorted.length, least: sorted[0] as number, median, most: sorted.at(-1) as number }
}
