// How a pot changes its temperature when all of it is equally warm (lumped heat balance).
// Source: Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, chapter 5 (the law; checked in tests/reference).

/** Where a pot comes from and where it would end on this heat in this room, °C, and how fast, per minute (1 / time constant). */
export type Newton = { fromC: number; towardsC: number; perMin: number }

/** The temperature after some minutes, °C: T = Tend + (Tstart − Tend) e^(−kt), for heating and for cooling. */
export function newtonC({ fromC, towardsC, perMin }: Newton, min: number): number {
  return towardsC + (fromC - towardsC) * Math.exp(-perMin * min)
}

/** Minutes until the pot is at `targetC`; 0 where it starts there. Null: it never gets there, since it levels off at or
 * before the target, or moves away from it. */
export function newtonMin({ fromC, towardsC, perMin }: Newton, targetC: number): number | null {
  if (targetC === fromC) return 0
  const left = (targetC - towardsC) / (fromC - towardsC)
  return left > 0 && left < 1 && perMin > 0 ? -Math.log(left) / perMin : null
}

/** Minutes that a mass takes from one temperature to a higher one when no heat is lost: t = m c ΔT / P. No pot is
 * faster. `massKg` and `powerW` over 0, `cJPerKgK` 4186 for water. */
export function losslessMin(pot: {
  massKg: number
  cJPerKgK: number
  powerW: number
  fromC: number
  toC: number
}): number {
  return (pot.massKg * pot.cJPerKgK * (pot.toC - pot.fromC)) / pot.powerW / 60
}
