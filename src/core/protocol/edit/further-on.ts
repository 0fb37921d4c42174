// A part of a text that stands further on than where it was parsed: signs were put in or taken out before it.
import type { Entry, Group, Tree } from './tree.ts'

type Moved = { still: Group; by: number }

const moves = new WeakMap<Group, Moved>()

/** The part where it was parsed first: the same for as long as nothing in it changes. */
export function stillOf(group: Group): Group {
  return moves.get(group)?.still ?? group
}

export function entryFurtherOn(entry: Entry, by: number): Entry {
  if (by === 0) return entry
  const { start, end, valueFrom, key, value } = entry
  return { start: start + by, end: end + by, valueFrom: valueFrom + by, key, value: furtherOn(value, by) }
}

/** What is inside is moved when it is asked for: with each letter everything behind it moves, and nearly nothing of it is
 * looked at. */
export function furtherOn(tree: Tree, by: number): Tree {
  if (by === 0) return tree
  if (tree.kind === 'scalar') return { ...tree, start: tree.start + by, end: tree.end + by }
  const { still, by: before } = moves.get(tree) ?? { still: tree, by: 0 }
  const move: Moved = { still, by: before + by }
  if (move.by === 0) return still
  const made = placed(move)
  moves.set(made, move)
  return made
}

function placed({ still, by }: Moved): Group {
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
