// How bottles serve what a pot wants of a material: each gives what is free of it, in the order they were chosen, by its
// own strength.

/** `free` null: how much there is was never told, so it gives whatever is asked. `gPerML` of what is active; null: it is
 * weighed as it is, or nobody knows, and counts as strong as the others. */
export type Lot = { itemId: string; free: number | null; gPerML: number | null }

export type Served = {
  /** What each bottle gives, mL or g; the last one also what is short. */
  parts: { itemId: string; amount: number }[]
  /** How much of the last bottle is wanting; 0: there is enough. */
  short: number
  /** The share of what was wanted that is there. */
  covered: number
  /** Of all of it poured together, g/mL; null: no strength is known. */
  gPerML: number | null
}

/** Under that it is rounding: no syringe measures it. */
const dust = 0.005

/** `wanted`: as much as it would be out of the first bottle alone. What the others give is worked out by their strength, so
 * that as much of what is active goes in. */
export function serve(wanted: number, lots: readonly Lot[]): Served {
  const first = lots[0]?.gPerML ?? null
  const strengthOf = ({ gPerML }: Lot): number => (first === null || gPerML === null ? 1 : gPerML / first)
  const parts: Served['parts'] = []
  let missing = wanted
  let last = 1
  for (const lot of lots) {
    last = strengthOf(lot)
    const gives = Math.max(0, Math.min(missing / last, lot.free ?? Number.POSITIVE_INFINITY))
    parts.push({ itemId: lot.itemId, amount: gives })
    missing -= gives * last
    if (missing / last <= dust) missing = 0
  }
  const short = missing / last
  const end = parts.at(-1)
  if (end) end.amount += short
  const whole = parts.reduce((sum, { amount }) => sum + amount, 0)
  const covered = wanted > 0 ? 1 - missing / wanted : 1
  return { parts, short, covered, gPerML: first === null || whole <= 0 ? first : (wanted * first) / whole }
}
