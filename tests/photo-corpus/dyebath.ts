// What each band takes up of two dyes: first order in the bath, all bands alike, the dye kept account of. The model of the
// "simulated split" table of the trade notes; a model, not a law.

/** A band enters at its minute; all stay until `endMin`. Half-times hold for all bands together. */
export type Dyeing = { entersMin: readonly number[]; endMin: number; halfTimeMin: readonly [number, number] }

export type Taken = { one: number; other: number }

/** Of one unit of each dye in the bath. */
export function taken({ entersMin, endMin, halfTimeMin }: Dyeing): { bands: Taken[]; left: Taken } {
  const [one, other] = halfTimeMin.map((half) => takenOf(entersMin, endMin, half)) as [number[], number[]]
  const leftOf = (bands: number[]): number => 1 - bands.reduce((sum, band) => sum + band, 0)
  return {
    bands: one.map((share, nth) => ({ one: share, other: other[nth] as number })),
    left: { one: leftOf(one), other: leftOf(other) }
  }
}

function takenOf(entersMin: readonly number[], endMin: number, halfTimeMin: number): number[] {
  const rate = Math.LN2 / halfTimeMin / entersMin.length
  const bands = entersMin.map(() => 0)
  const times = [...new Set([...entersMin, endMin])].sort((a, b) => a - b)
  let bath = 1
  for (const [nth, from] of times.entries()) {
    const to = times[nth + 1]
    if (to === undefined) break
    const within = entersMin.map((enters) => enters <= from)
    const many = within.filter(Boolean).length
    const gone = bath * -Math.expm1(-rate * many * (to - from))
    bath -= gone
    for (const [band, inside] of within.entries()) if (inside) bands[band] = (bands[band] as number) + gone / many
  }
  return bands
}
