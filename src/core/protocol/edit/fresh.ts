// Names that are not taken yet.
import { type Data, type Fields, isFields } from './data.ts'
import { withMoments } from './moments.ts'

/** `A1` is followed by `A2`, `dip` by `dip2`. */
export function freeName(name: string, taken: Iterable<string>): string {
  const used = new Set(taken)
  if (!used.has(name)) return name
  const [, stem = name, digits = ''] = /^(.*?)(\d{0,9})$/s.exec(name) ?? []
  let no = digits === '' ? 2 : Number(digits) + 1
  while (used.has(`${stem}${no}`)) no++
  return `${stem}${no}`
}

/** A copy of a step, or of a list of steps, in which every id is new; where the copy itself names one, it names the new. */
export function copyOf(one: Data, root: Data): Data {
  const taken = namesIn(root)
  const renamed = new Map<string, string>()
  for (const id of idsIn(one)) {
    const name = freeName(id, taken)
    taken.add(name)
    renamed.set(id, name)
  }
  // The old ids first: by them a step's own words are told from references.
  return withIds(withMoments(one, renamed), renamed)
}

/** Every text under `id` or `marks`: what a new id must not be. */
function namesIn(data: Data): Set<string> {
  const names = new Set<string>()
  eachFields(data, (fields) => {
    for (const name of [fields.id, fields.marks].flat()) if (typeof name === 'string') names.add(name)
  })
  return names
}

function idsIn(data: Data): string[] {
  const ids: string[] = []
  eachFields(data, ({ id }) => {
    if (typeof id === 'string') ids.push(id)
  })
  return ids
}

export function eachFields(data: Data, see: (fields: Fields) => void): void {
  if (isFields(data)) see(data)
  if (typeof data === 'object' && data !== null) for (const inner of Object.values(data)) eachFields(inner, see)
}

function withIds(data: Data, names: Map<string, string>): Data {
  if (Array.isArray(data)) return data.map((item) => withIds(item, names))
  if (!isFields(data)) return data
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => {
      if (key === 'id' && typeof value === 'string') return [key, names.get(value) ?? value]
      return [key, withIds(value, names)]
    })
  )
}
