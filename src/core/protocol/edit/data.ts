// What a text holds, without its places, and how to change it without changing the old one.
export type Data = string | number | boolean | null | Data[] | { [key: string]: Data }
export type Fields = { [key: string]: Data }
export type Path = readonly (string | number)[]

export function isFields(data: Data | undefined): data is Fields {
  return typeof data === 'object' && data !== null && !Array.isArray(data)
}

/** What lies at a path; undefined: nothing. */
export function at(data: Data | undefined, path: Path): Data | undefined {
  let here = data
  for (const part of path) {
    if (Array.isArray(here)) here = here[Number(part)]
    else if (isFields(here)) here = Object.hasOwn(here, part) ? here[String(part)] : undefined
    else return undefined
  }
  return here
}

/** A copy with something else at the path; undefined takes it out. The way there must exist. */
export function withAt(data: Data, path: Path, change: (old: Data | undefined) => Data | undefined): Data {
  const [first, ...rest] = path
  if (first === undefined) return change(data) ?? null
  if (Array.isArray(data)) {
    const copy = [...data]
    const index = Number(first)
    const next = rest.length === 0 ? change(copy[index]) : withAt(copy[index] ?? null, rest, change)
    if (next === undefined) copy.splice(index, 1)
    else copy[index] = next
    return copy
  }
  const fields = isFields(data) ? data : {}
  const old = Object.hasOwn(fields, first) ? fields[String(first)] : undefined
  const next = rest.length === 0 ? change(old) : withAt(old ?? {}, rest, change)
  const key = String(first)
  if (next === undefined) return Object.fromEntries(Object.entries(fields).filter(([name]) => name !== key))
  if (!Object.hasOwn(fields, key)) return Object.fromEntries([...Object.entries(fields), [key, next]])
  return Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, name === key ? next : value]))
}

/** The order of fields is no difference. */
export function same(a: Data | undefined, b: Data | undefined): boolean {
  // Nearly everything, after an edit of one field.
  if (a === b) return true
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((one, i) => same(one, b[i]))
  if (!isFields(a) || !isFields(b)) return false
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
}
