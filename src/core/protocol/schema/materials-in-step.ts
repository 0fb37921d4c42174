// What a step adds: how much, and of what.
import type { DoseDraft } from '../draft.ts'
import { suggest } from '../nearest.ts'
import { type FieldPath, type Reading, water } from '../reading.ts'
import type { AsWritten } from './fields.ts'

type Added = {
  amount?: AsWritten | undefined
  amounts?: Record<string, AsWritten> | undefined
  of?: string | undefined
  to?: string | undefined
  at?: AsWritten | undefined
}

export function readDose(fields: Added, r: Reading): DoseDraft | null {
  const [written, at] = chosen(fields, r)
  if (written === null) return null
  const amount = r.amount(written, at)
  if (!amount) return null
  const named = (amount.kind === 'liquor' ? null : amount.of) ?? fields.of ?? null
  if (named === null && amount.kind !== 'liquor') {
    r.say(at, 'of-missing', `${amount.asEntered} of what?`, `write ${amount.asEntered} of a material`)
    return null
  }
  const material = named === null ? water : r.material(r.text(named, ['of']), at)
  if (!material) return null
  if ((amount.kind === 'share' || amount.kind === 'rest') && material.amount === null) {
    const instead = `give ${material.id} its whole amount under materials`
    r.say(at, 'share-of-nothing', `A share of ${material.label}, and the whole is not given.`, instead)
    return null
  }
  const into = fields.to === undefined ? null : r.text(fields.to, ['to'])
  const atC = fields.at === undefined ? null : r.tempC(fields.at, ['at'])
  return { amount, material, into, fills: false, atC }
}

/** The amount of the step, or that of the loop's item. */
function chosen(fields: Added, r: Reading): [AsWritten | null, FieldPath] {
  const { amount, amounts } = fields
  if (amounts === undefined) {
    if (amount === undefined) r.say([], 'missing-field', 'amount is missing.', 'write amount: 30 mL of vinegar')
    return [amount ?? null, ['amount']]
  }
  if (amount !== undefined) {
    r.say(['amount'], 'unknown-field', 'amount and amounts are both given.', 'keep one of the two')
  }
  const loop = r.scope.loops.findLast(({ item }) => Object.hasOwn(amounts, item)) ?? r.scope.loops.at(-1)
  if (!loop) {
    r.say(['amounts'], 'no-band', 'amounts stands outside a for each.', 'write amount, or put the step into a for each')
    return [null, ['amounts']]
  }
  for (const key of Object.keys(amounts)) {
    if (r.scope.loops.some(({ items }) => items.includes(key))) continue
    const instead = suggest(key, loop.items, 'items')
    r.say(['amounts', key], 'item-unknown', `There is no ${loop.name} ${key}.`, instead)
  }
  const own = Object.hasOwn(amounts, loop.item) ? amounts[loop.item] : undefined
  if (own === undefined) {
    const instead = suggest(loop.item, Object.keys(amounts), 'amounts are given for')
    r.say(['amounts'], 'item-unknown', `${loop.name} ${loop.item} has no amount.`, `add ${loop.item}; ${instead}`)
    return [null, ['amounts']]
  }
  return [own, ['amounts', loop.item]]
}
