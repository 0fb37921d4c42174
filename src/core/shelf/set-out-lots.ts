// Which bottles each cup on the bench is filled from, in the order they are used up.
import type { Bottle, Programme } from '../protocol/model.ts'
import { poured } from './draws.ts'

export type LotOfCup = { bottle: Bottle; amount: number }
/** `together`: the bottles differ in strength and fill more than one cup, so they are poured together first, and these are
 * the amounts for all the cups. */
export type CupFilled = { lots: LotOfCup[]; together: boolean }

/** By the id of what is set out; cups of no bottle on the shelf are left out. */
export function lotsOf({ setOut, given }: Programme): Map<string, CupFilled> {
  const filled = new Map<string, CupFilled>()
  const gave = new Map<string, number>()
  for (const item of setOut) {
    const { id, material } = item
    if (material === undefined) continue
    const bottles = given?.materials[material]?.shelf ?? []
    if (bottles.length === 0) continue
    const mine = setOut.filter((one) => one.material === material)
    const together = mine.length > 1 && unlike(bottles)
    const amount = together ? mine.reduce((sum, one) => sum + one.amount.value, 0) : item.amount.value
    const from = together ? 0 : (gave.get(material) ?? 0)
    gave.set(material, from + item.amount.value)
    const lots = poured(bottles, from, amount).flatMap(({ itemId, amount: part }) => {
      const bottle = bottles.find((one) => one.itemId === itemId)
      return bottle ? [{ bottle, amount: part }] : []
    })
    filled.set(id, { lots, together })
  }
  return filled
}

function unlike(bottles: readonly Bottle[]): boolean {
  const [first] = bottles
  return bottles.some(
    ({ percent, basis, densityGPerML }) =>
      percent !== first?.percent || basis !== first.basis || densityGPerML !== first.densityGPerML
  )
}
