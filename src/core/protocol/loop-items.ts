// How often a loop goes round, and over what: numbers may come from inputs.

import { suggest } from './nearest.ts'
import type { FieldPath, Reading } from './reading.ts'
import { timesMost } from './source/limits.ts'
import type { WrittenItems } from './written.ts'

/** A whole number as written, or that of the input it names. Null: a problem was said. */
export function resolveCount(written: string | number, at: FieldPath, r: Reading): number | null {
  if (typeof written === 'number') return written
  const { quantities } = r.scope
  if (!Object.hasOwn(quantities, written)) {
    r.say(at, 'unknown-input', `There is no input ${written}.`, suggest(written, Object.keys(quantities), 'inputs'))
    return null
  }
  const value = Number(quantities[written])
  if (Number.isInteger(value) && value >= 1 && value <= timesMost) return value
  r.say(at, 'out-of-limits', `${written} is ${quantities[written]}.`, `give it a whole number from 1 to ${timesMost}`)
  return null
}

/** The names of the items in order: "1", "2", …, or as listed. Null: a problem was said. */
export function resolveItems(items: WrittenItems, at: FieldPath, r: Reading): string[] | null {
  if ('list' in items) {
    if (items.list.length > 0) return items.list
    r.say(at, 'items-missing', 'There is no item in the list.', 'name the items: [J1, J2, J3]')
    return null
  }
  const from = resolveCount(items.from, [...at, 'from'], r)
  const to = resolveCount(items.to, [...at, 'to'], r)
  if (from === null || to === null) return null
  if (from > to) {
    r.say(
      at,
      'items-backwards',
      `It counts from ${from} to ${to}.`,
      'write the lower number first; a list may run backwards'
    )
    return null
  }
  return Array.from({ length: to - from + 1 }, (_, i) => String(from + i))
}
