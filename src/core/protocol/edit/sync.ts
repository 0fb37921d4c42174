// Brings a text in step with data, one small change after the other, each at the place that differs.
import { at, type Data, isFields, type Path, same } from './data.ts'
import { begun, bodyOf, inserted, removed, replaced, type Splice, spliced } from './splice.ts'
import type { Style } from './style.ts'
import { dataOf, type Entry, type Group, type Parsed, parse, type Tree } from './tree.ts'
import { orderOf } from './write.ts'

/** More than any edit by form needs. */
const changesMost = 60

/** The text that says `target`; null: it can't be brought there. Nothing is changed where the text says it already. */
export function inStep(p: Parsed, target: Data, style: Style): string | null {
  let here = p
  for (let change = 0; change < changesMost; change++) {
    if (here.problems.length > 0 || !here.root) return null
    const splices = difference(here, here.root, null, null, [], target, style)
    if (splices === null) return same(dataOf(here.root), target) ? here.text : null
    const fixed = splices.map((splice) => ({ ...splice, put: splice.put.replace(/\r?\n/g, style.eol) }))
    const text = spliced(here.text, fixed)
    if (text === null || text === here.text) return null
    here = parse(text)
  }
  return null
}

/** The splices for the first difference; null: there is none. */
function difference(
  p: Parsed,
  tree: Tree,
  parent: Group | null,
  owner: Entry | null,
  path: Path,
  target: Data,
  style: Style
): Splice[] | null {
  if (tree.kind === 'map' && isFields(target)) return inMap(p, tree, parent, owner, path, target, style)
  if (tree.kind === 'list' && Array.isArray(target)) return inList(p, tree, parent, owner, path, target, style)
  if (same(dataOf(tree), target)) return null
  return parent && owner ? replaced(p, parent, owner, path, target, style) : []
}

function inMap(
  p: Parsed,
  map: Group,
  parent: Group | null,
  owner: Entry | null,
  path: Path,
  target: { [key: string]: Data },
  style: Style
): Splice[] | null {
  const common = map.entries.filter(({ key }) => Object.hasOwn(target, key ?? ''))
  // With nothing in common it is another thing: a step of another word.
  if (common.length === 0 && map.entries.length > 0 && parent && owner) {
    return replaced(p, parent, owner, path, target, style)
  }
  for (const entry of common) {
    const key = entry.key ?? ''
    const inner = difference(p, entry.value, map, entry, [...path, key], at(target, [key]) ?? null, style)
    if (inner) return inner
  }
  const known = new Set(map.entries.map(({ key }) => key))
  const missing = Object.keys(target).find((key) => !known.has(key))
  if (missing !== undefined) {
    const body = bodyOf('map', path, missing, target[missing] ?? null, style)
    if (map.entries.length > 0) return inserted(p, map, placeFor(missing, map, path), body)
    return owner && parent ? begun(p, owner, parent.flow || map.flow, style, false, body) : []
  }
  const surplus = map.entries.findIndex(({ key }) => !Object.hasOwn(target, key ?? ''))
  return surplus < 0 ? null : removed(p, map, surplus, owner)
}

/** A field stands where its form has it; one that the form does not know comes last. */
function placeFor(key: string, map: Group, path: Path): number {
  const order = orderOf(path)
  const rank = order.indexOf(key)
  if (rank < 0) return map.entries.length
  const before = map.entries.findLastIndex((entry) => {
    const other = order.indexOf(entry.key ?? '')
    return other >= 0 && other < rank
  })
  return before + 1
}

function inList(
  p: Parsed,
  list: Group,
  parent: Group | null,
  owner: Entry | null,
  path: Path,
  target: Data[],
  style: Style
): Splice[] | null {
  const { entries } = list
  if (entries.length > 0 && target.length === 0 && parent && owner) return replaced(p, parent, owner, path, [], style)
  const until = Math.min(entries.length, target.length)
  let first = 0
  while (first < until && same(dataOf((entries[first] as Entry).value), target[first])) first++
  const here = [...path, first]
  if (entries.length < target.length) {
    const body = bodyOf('list', path, first, target[first] ?? null, style)
    if (entries.length > 0) return inserted(p, list, first, body)
    return owner && parent ? begun(p, owner, parent.flow, style, true, body) : []
  }
  if (entries.length > target.length) return removed(p, list, first, owner)
  const entry = entries[first]
  if (!entry) return null
  return difference(p, entry.value, list, entry, here, target[first] ?? null, style)
}
