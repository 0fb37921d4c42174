// What the batch took off the shelf, with the age of each bottle at its use: told from the pot's own journal, so that the
// record reads the same whatever became of the bottle since.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { Bottle, Programme } from '../protocol/model.ts'
import { ageDays } from '../shelf/age.ts'
import { drawsOf } from '../shelf/draws.ts'
import { localDay } from './local-time.ts'
import type { BottleRecord } from './record.ts'

/** Each bottle that was chosen at the start, in the order of the materials, then those that only unplanned doses came out
 * of. `tzOffsetMin`: of the dyer's clock at the start. */
export function bottlesOf(
  entries: readonly Entry<PotEvent>[],
  programme: Programme,
  startedAtMs: number,
  tzOffsetMin: number
): BottleRecord[] {
  const draws = drawsOf(entries)
  const chosen = new Map<string, Bottle>()
  for (const { shelf = [] } of Object.values(programme.given?.materials ?? {})) {
    for (const bottle of shelf) chosen.set(bottle.itemId, bottle)
  }
  for (const { event } of entries) {
    if (event.type !== 'Dosed' || !event.itemId || chosen.has(event.itemId)) continue
    chosen.set(event.itemId, unplanned(event.itemId, event.of))
  }
  return [...chosen.values()].map(({ upTo: _, ...bottle }) => {
    const mine = draws.filter(({ itemId }) => itemId === bottle.itemId)
    const usedAtMs = mine.length === 0 ? null : Math.min(...mine.map(({ atMs }) => atMs))
    const usedOn = localDay(usedAtMs ?? startedAtMs, tzOffsetMin)
    const drawn = mine.reduce((sum, { amount }) => sum + amount, 0)
    const { unit = null } = mine[0] ?? {}
    return { ...bottle, drawn, unit: unit === 'use' ? null : unit, usedAtMs, ageDays: ageDays(bottle.madeOn, usedOn) }
  })
}

/** Nobody read its label when the pot was started. */
function unplanned(itemId: string, name: string): Bottle {
  return { itemId, upTo: null, name, lot: '', percent: null, basis: 'w/v', densityGPerML: null, madeOn: null }
}
