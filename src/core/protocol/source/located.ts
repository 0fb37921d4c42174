// A text read as YAML, each part with its place in it.

/** Lines and columns count from 1; a column counts UTF-16 units, as editors do. */
export type Place = { line: number; column: number }

export type Located =
  | { kind: 'map'; at: Place; entries: Entry[] }
  | { kind: 'list'; at: Place; items: Located[] }
  | { kind: 'scalar'; at: Place; value: string | number | boolean | null }

export type Entry = { key: string; keyAt: Place; value: Located }

/** The value without its places. */
export function plain(node: Located): unknown {
  switch (node.kind) {
    case 'scalar':
      return node.value
    case 'list':
      return node.items.map(plain)
    case 'map':
      return Object.fromEntries(node.entries.map((entry) => [entry.key, plain(entry.value)]))
  }
}

export function entryOf(node: Located | null, key: string): Entry | null {
  return node?.kind === 'map' ? (node.entries.find((entry) => entry.key === key) ?? null) : null
}

/** The place of what lies at `path` below a node; where that is missing, of the nearest thing around it. */
export function placeAt(node: Located, path: readonly (string | number)[], start: Place = node.at): Place {
  let here: Located = node
  let place = start
  for (const part of path) {
    const next: Entry | Located | null =
      here.kind === 'list' ? (here.items[Number(part)] ?? null) : entryOf(here, String(part))
    if (!next) return place
    here = 'keyAt' in next ? next.value : next
    place = here.at
  }
  return place
}
