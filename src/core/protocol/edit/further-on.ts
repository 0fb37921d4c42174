// A part of a text that stands further on than where it was parsed: signs were put in or taken out before it.
import { moving } from '../source/moving.ts'
import type { Entry, Group, Tree } from './tree.ts'

const groups = moving<Group>(placed)

/** The part where it was parsed first: the same for as long as nothing in it changes. */
export function stillOf(group: Group): Group {
  return groups.stillOf(group)
}

export function entryFurtherOn(entry: Entry, by: number): Entry {
  if (by === 0) return entry
  const { start, end, valueFrom, key, value } = entry
  return { start: start + by, end: end + by, valueFrom: valueFrom + by, key, value: furtherOn(value, by) }
}

export function furtherOn(tree: Tree, by: number): Tree {
  if (tree.kind !== 'scalar') return groups.moved(tree, by)
  return by === 0 ? tree : { ...tree, start: tree.start + by, end: tree.end + by }
}

function placed(still: Group, by: number): Group {
  const { kind, flow, start, end } = still
  let entries: Entry[] | null = null
  return {
    kind,
    flow,
    start: start + by,
    end: end + by,
    get entries() {
      entries ??= still.entries.map((entry) => entryFurtherOn(entry, by))
      return entries
    }
  }
}
