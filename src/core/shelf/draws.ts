// What a pot took off the shelf, from its journal: every dose that stands, by its corrected amount, out of the bottle or
// bottles that serve its material. It is the line a pot leaves beside its summary, so that what is left in a bottle is
// known without reading journals. It is worked out with every write of a pot, and loaded with the Stove: keep it small.
import type { Entry } from '../pot/entry.ts'
import type { EntryRef, PotEvent } from '../pot/events.ts'
import type { Amount, Programme } from '../protocol/model.ts'
import { stepAt } from '../protocol/tree.ts'

/** `use`: a vessel, a burner, water: it is used, and nothing of it is counted. */
export type Draw = { itemId: string; atMs: number; amount: number; unit: Amount['unit'] | 'use' }

type PotEntry = Entry<PotEvent>

/** All that a pot drew, in the order of its journal. An undone dose was none. A dose of this pot that went into another is
 * still this pot's draw, and none of the other's. Of a material that two bottles serve, the first gives first. */
export function drawsOf(entries: readonly PotEntry[]): Draw[] {
  const { undone, said } = takenBack(entries)
  const draws: Draw[] = []
  const served: Record<string, number> = {}
  let programme: Programme | null = null
  for (const entry of entries) {
    const { event, atMs } = entry
    const key = keyOf(entry)
    if (undone.has(key)) continue
    const now = (field: string, was: number): number => Number(said.get(`${key} ${field}`) ?? was)
    if (event.type === 'PotStarted') {
      programme = event.programme
      const { skeins, uses = [] } = event.pot
      const goodsG = skeins.reduce((sum, { massG }, i) => sum + now(`pot.skeins.${i}.massG`, massG), 0)
      for (const { kind, itemId } of uses) {
        draws.push({ itemId, atMs, ...(kind === 'yarn' ? { amount: goodsG, unit: 'g' } : { amount: 0, unit: 'use' }) })
      }
    }
    const dose = doseIn(event)
    if (dose === null) continue
    const { unit } = dose.amount
    const amount = now(dose.field, dose.amount.value)
    const of = said.get(`${key} of`) ?? dose.of
    if (dose.itemId) draws.push({ itemId: dose.itemId, atMs, amount, unit })
    else if (programme) {
      for (const { material, each } of materialsOf(programme, dose.path, of)) {
        const bottles = programme.given?.materials[material]?.shelf ?? []
        const from = served[material] ?? 0
        served[material] = from + amount * each
        for (const part of poured(bottles, from, amount * each)) draws.push({ ...part, atMs, unit })
      }
    }
  }
  return draws
}

/** What was withdrawn, and what was said anew of each entry's fields: the last word that can be taken. */
function takenBack(entries: readonly PotEntry[]): { undone: Set<string>; said: Map<string, string> } {
  const undone = new Set<string>()
  const said = new Map<string, string>()
  for (const { event } of entries) {
    if (event.type === 'Withdrawn') for (const ref of event.entries) undone.add(keyOf(ref))
    if (event.type !== 'Corrected') continue
    const { entry, field, now } = event
    if (field === 'of' || (now.trim() !== '' && Number.isFinite(Number(now)))) said.set(`${keyOf(entry)} ${field}`, now)
  }
  return { undone, said }
}

/** A dose that this pot's bottles gave. One that was meant for another pot came out of that one's. */
function doseIn(event: PotEvent) {
  if (event.type === 'DoseWentElsewhere') return { ...event, field: 'amount.value', itemId: undefined }
  if (event.type !== 'Dosed' || event.fromPotId !== null) return null
  return { ...event, amount: event.added, field: 'added.value' }
}

/** By the dose's step; what was told by name only is of the one material whose bottle is called so. */
function materialsOf(programme: Programme, path: string | null, of: string): { material: string; each: number }[] {
  const dose = path === null ? null : stepAt(programme, path)?.dose
  if (dose?.amount.of === of) return dose.from ?? []
  const named = Object.entries(programme.given?.materials ?? {}).filter(([, { shelf, name }]) => shelf && name === of)
  return named.length === 1 ? named.map(([material]) => ({ material, each: 1 })) : []
}

type Part = { itemId: string; amount: number }

/** `amount` out of bottles that have given `from` together. The last gives whatever more is asked of it. */
export function poured(
  bottles: readonly { itemId: string; upTo: number | null }[],
  from: number,
  amount: number
): Part[] {
  let begins = 0
  return bottles.flatMap(({ itemId, upTo }, i) => {
    const ends = upTo === null || i === bottles.length - 1 ? Infinity : begins + upTo
    const part = Math.min(from + amount, ends) - Math.max(from, begins)
    begins = ends
    return part > 0 ? [{ itemId, amount: part }] : []
  })
}

const keyOf = ({ writerId, seq }: EntryRef): string => `${writerId} ${seq}`
