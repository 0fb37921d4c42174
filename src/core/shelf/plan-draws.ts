// What a pot that is to start wants of each bottle, with what is short of it.
import type { Bottle, Programme, ProgrammeInputs } from '../protocol/model.ts'
import { bottleGPerML } from './label.ts'
import { type Served, serve } from './serving.ts'
import { stillNeeded } from './still-needed.ts'

export type Chosen = Readonly<Record<string, readonly Bottle[]>>
/** What is free of each bottle, by its id; none there: its level was never told. */
export type Free = ReadonlyMap<string, number>

export type PlannedDraw = Served & { wanted: number; unit: 'mL' | 'g' | 'count' }

/** By material. `programme`: worked out as if the first bottle of each material gave all of it. A bottle that serves two
 * materials is not promised twice. */
export function planDraws(programme: Programme, chosen: Chosen, free: Free): Map<string, PlannedDraw> {
  const needed = stillNeeded({ programme, ended: {}, taken: {}, round: {} })
  const promised = new Map<string, number>()
  const planned = new Map<string, PlannedDraw>()
  for (const [material, bottles] of Object.entries(chosen)) {
    const { amount, unit } = needed.get(material) ?? { amount: 0, unit: 'mL' as const }
    const lots = bottles.map((bottle) => {
      const there = free.get(bottle.itemId)
      const left = there === undefined ? null : there - (promised.get(bottle.itemId) ?? 0)
      return { itemId: bottle.itemId, free: left, gPerML: unit === 'mL' ? bottleGPerML(bottle) : null }
    })
    const served = serve(amount, lots)
    for (const part of served.parts) promised.set(part.itemId, (promised.get(part.itemId) ?? 0) + part.amount)
    planned.set(material, { ...served, wanted: amount, unit })
  }
  return planned
}

type Given = ProgrammeInputs['materials'][string]

/** A material as its bottles serve it: each gives its part and the last all the rest. Bottles of several strengths are
 * poured together first, so they are as strong as the whole of it. */
export function servedBy(bottles: readonly Bottle[], planned: PlannedDraw | null): Given | null {
  const first = bottles[0]
  if (first === undefined) return null
  const { name, percent, basis, densityGPerML } = first
  const shelf = bottles.map((bottle, i) => ({
    ...bottle,
    upTo: i === bottles.length - 1 ? null : (planned?.parts[i]?.amount ?? null)
  }))
  const gPerML = bottleGPerML(first)
  const mixed = planned?.gPerML ?? null
  if (mixed === null || gPerML === null || Math.abs(mixed / gPerML - 1) < 1e-9) {
    return { name, percent, basis, densityGPerML, shelf }
  }
  return { name, percent: mixed * 100, basis: 'w/v', densityGPerML: null, shelf }
}
