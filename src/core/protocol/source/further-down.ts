// A part of a text that stands further down than where it was read: lines were put in or taken out above it.
import type { Entry, Located, Place } from './located.ts'

type Moved = { still: Located; by: number }

const moves = new WeakMap<Located, Moved>()

/** The part where it was read first: the same for as long as nothing in it changes, wherever it stands by now. What a
 * part says can be kept under it; its lines are those of the part that is asked about. */
export function stillOf(node: Located): Located {
  return moves.get(node)?.still ?? node
}

/** What is inside is moved when it is asked for: after a line put in at the top nobody asks for most of it. */
export function furtherDown(node: Located, by: number): Located {
  if (by === 0) return node
  const { still, by: before } = moves.get(node) ?? { still: node, by: 0 }
  const move: Moved = { still, by: before + by }
  if (move.by === 0) return still
  const made = placed(move)
  moves.set(made, move)
  return made
}

function placed({ still, by }: Moved): Located {
  const at = lower(still.at, by)
  if (still.kind === 'scalar') return { ...still, at }
  if (still.kind === 'list') {
    let items: Located[] | null = null
    return {
      kind: 'list',
      at,
      get items() {
        items ??= still.items.map((item) => furtherDown(item, by))
        return items
      }
    }
  }
  let entries: Entry[] | null = null
  return {
    kind: 'map',
    at,
    get entries() {
      entries ??= still.entries.map((entry) => entryFurtherDown(entry, by))
      return entries
    }
  }
}

export function entryFurtherDown(entry: Entry, by: number): Entry {
  if (by === 0) return entry
  return { key: entry.key, keyAt: lower(entry.keyAt, by), value: furtherDown(entry.value, by) }
}

function lower({ line, column }: Place, by: number): Place {
  return { line: line + by, column }
}
