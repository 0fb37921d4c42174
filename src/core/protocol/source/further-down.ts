// A part of a text that stands further down than where it was read: lines were put in or taken out above it.
import type { Entry, Located, Place } from './located.ts'
import { moving } from './moving.ts'

const nodes = moving<Located>(placed)

/** The part where it was read first: the same for as long as nothing in it changes, wherever it stands by now. What a
 * part says can be kept under it; its lines are those of the part that is asked about. */
export function stillOf(node: Located): Located {
  return nodes.stillOf(node)
}

export function furtherDown(node: Located, by: number): Located {
  return nodes.moved(node, by)
}

function placed(still: Located, by: number): Located {
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
