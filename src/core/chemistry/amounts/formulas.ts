// The arithmetic of amounts, each formula once and unchecked: for what was checked where it came in.
// Textbook arithmetic of the dyehouse; worked examples in tests/reference/trade-arithmetic.test.ts.

/** g = goods g · % owf / 100. */
export function owfG(percentOwf: number, goodsG: number): number {
  return (percentOwf / 100) * goodsG
}

/** % owf = g / goods g · 100. */
export function owfPercent(grams: number, goodsG: number): number {
  return (grams / goodsG) * 100
}

/** mL of liquor = ratio · goods g. */
export function liquorML(ratio: number, goodsG: number): number {
  return ratio * goodsG
}

/** g = g/L · mL / 1000. */
export function gramsAt(gPerL: number, volumeML: number): number {
  return (gPerL * volumeML) / 1000
}

/** g/mL of a strength in % w/v, and of one in % w/w with its density. */
export function gPerMLOf(percent: number, densityGPerML: number | null): number {
  return (percent / 100) * (densityGPerML ?? 1)
}

/** A mixed stock: g/mL of all dye together, for parts of dye by mass, each from a stock of its own strength. */
export function mixedGPerML(parts: readonly { parts: number; gPerML: number }[]): number {
  const dye = parts.reduce((sum, one) => sum + one.parts, 0)
  const volume = parts.reduce((sum, one) => sum + one.parts / one.gPerML, 0)
  return dye / volume
}

/** What one of several parts comes to. */
export function partOfWhole(whole: number, parts: number, allParts: number): number {
  return (whole * parts) / allParts
}
