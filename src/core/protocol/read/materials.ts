import type { Material } from '../model.ts'
import type { Reading } from '../reading.ts'
import type { Header } from '../schema/header.ts'

type Written = NonNullable<Header['materials']>[string]

/** Reads one material of the header: `vinegar: acid`, or its fields. */
export function readMaterial(id: string, given: Written, r: Reading): Material {
  if (typeof given === 'string') return { id, label: id, kind: given, percent: null, amount: null }
  const at = ['materials', id]
  const strength = given.strength === undefined ? null : readStrength(String(given.strength), [...at, 'strength'], r)
  const material: Material = {
    id,
    label: given.label ?? id,
    kind: given.kind,
    percent: strength?.percent ?? null,
    amount: given.amount === undefined ? null : String(given.amount)
  }
  if (strength) material.basis = strength.basis
  if (given.density !== undefined) material.densityGPerML = given.density
  if (given.parts) material.parts = Object.entries(given.parts).map(([part, parts]) => ({ id: part, parts }))
  if (strength?.basis === 'w/w' && given.density === undefined) {
    r.say([...at, 'strength'], 'missing-field', `${id}: % w/w needs a density.`, 'add density: 1.07, in g/mL')
  }
  checkWhole(given.amount, [...at, 'amount'], r)
  return material
}

/** "5 %", "5 % w/v", "80 % w/w"; labels rarely say which, and w/v is what a stock is made up to. */
function readStrength(text: string, at: string[], r: Reading): { percent: number; basis: 'w/v' | 'w/w' } | null {
  const basis = /w ?\/ ?w/i.test(text) ? 'w/w' : 'w/v'
  const [, figure] = /^([^%]*)% ?(?:w ?\/ ?[wv])?$/i.exec(text.trim()) ?? []
  if (figure === undefined) {
    r.say(at, 'not-a-percent', `"${text}" is no strength.`, 'write 5 %, 5 % w/v or 80 % w/w')
    return null
  }
  const percent = r.number(figure.trim(), at, { least: 0.001, most: 100 })
  return percent === null ? null : { percent, basis }
}

/** The whole is worked out from the goods or the bath; a share of something else would lead in a circle. */
function checkWhole(written: string | number | undefined, at: string[], r: Reading): void {
  // An input's value is not known yet: the amount is read when a pot is tried out.
  if (written === undefined || String(written).includes('{')) return
  const amount = r.amount(written, at)
  if (amount && (amount.kind === 'share' || amount.kind === 'rest')) {
    r.say(at, 'share-of-nothing', 'A whole can be no share of something else.', 'write 2 % owf, 1 g/L, 30 mL or 5 g')
  }
}
