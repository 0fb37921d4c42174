// What goes into each vessel until it is emptied, in the order of the programme.
import type { Programme, SetOut, Step } from '../model.ts'
import { stepsOf } from '../tree.ts'

export type Pour = { item: SetOut; step: Step }
/** `vessel` null: the pot. `hottestC`: the hottest that its steps ask for; null: no step says. */
export type Vessel = { vessel: string | null; pours: Pour[]; hottestC: number | null }

/** The first bath of the pot and of each other vessel. What is only added if wanted is left out. */
export function poursOf(programme: Programme): Vessel[] {
  const items = new Map(programme.setOut.map((item) => [item.id, item]))
  const vessels = new Map<string | null, Vessel>()
  let emptied = false
  let hottestC: number | null = null
  for (const step of stepsOf(programme)) {
    const item = step.dose ? items.get(step.dose.setOutId) : undefined
    if (item && !item.ifWanted) {
      const key = item.vessel ?? null
      const vessel = vessels.get(key) ?? { vessel: key, pours: [], hottestC: null }
      if (key === null && item.fills && vessel.pours.some((pour) => pour.item.fills)) emptied = true
      if (key !== null || !emptied) vessel.pours.push({ item, step })
      vessels.set(key, vessel)
    }
    if (step.word === 'rinse' || step.word === 'transfer') emptied = true
    const asksC = step.ramp?.lowC ?? step.setPoint?.lowC ?? null
    if (!emptied && asksC !== null) hottestC = Math.max(hottestC ?? asksC, asksC)
  }
  return [...vessels.values()].map((vessel) => ({ ...vessel, hottestC }))
}
