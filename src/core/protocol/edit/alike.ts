// Which fields differ, as they are written; and whether they differ in effect.
import type { KitchenCountry } from '../../quantity/index.ts'
import { type Data, type Fields, isFields, same } from './data.ts'
import { sameEffect } from './effect.ts'
import { words } from './summary.ts'

/** `same`: written in another way, and read as the same value. Null: the field is not there. */
export type Change = { name: string; was: string | null; now: string | null; same: boolean }

/** One change for each field that is written differently; a field inside a field is named "ask enough". */
export function changesBetween(
  was: Fields,
  now: Fields,
  kitchenWas: KitchenCountry | null,
  kitchenNow: KitchenCountry | null
): Change[] {
  const names = new Set([...Object.keys(was), ...Object.keys(now)])
  return [...names].flatMap((name) => {
    const before = Object.hasOwn(was, name) ? was[name] : undefined
    const after = Object.hasOwn(now, name) ? now[name] : undefined
    if (isFields(before) && isFields(after)) {
      const inner = changesBetween(before, after, kitchenWas, kitchenNow)
      return inner.map((change) => ({ ...change, name: `${name} ${change.name}` }))
    }
    // A cup means the same only in the same kitchen.
    if (same(before, after) && (kitchenWas === kitchenNow || sameOrAlike(before, after, kitchenWas, kitchenNow)))
      return []
    const effect = sameOrAlike(before, after, kitchenWas, kitchenNow)
    return [{ name, was: textOf(before), now: textOf(after), same: effect }]
  })
}

function sameOrAlike(
  a: Data | undefined,
  b: Data | undefined,
  one: KitchenCountry | null,
  other: KitchenCountry | null
): boolean {
  if (a === undefined || b === undefined) return false
  // One thing may be written as a list of one.
  const [first, second] = [a, b].map((value) =>
    Array.isArray(value) && value.length === 1 ? (value[0] ?? null) : value
  )
  if (Array.isArray(first) && Array.isArray(second) && first.length === second.length) {
    return first.every((item, i) => sameOrAlike(item, second[i], one, other))
  }
  const scalars = typeof first !== 'object' && typeof second !== 'object'
  if (scalars) return sameEffect(String(first), String(second), one, other)
  return same(first, second)
}

function textOf(data: Data | undefined): string | null {
  return data === undefined ? null : words(data)
}
