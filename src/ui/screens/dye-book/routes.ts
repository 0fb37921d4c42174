// The addresses of the Dye book's pages. An id is written so that no sign of its own divides the address.
export const bookRoute = '#/dye-book'

export function recordRoute(potId: string): string {
  return `${bookRoute}/${encodeURIComponent(potId)}`
}

export function printRoute(potId: string): string {
  return `${recordRoute(potId)}/print`
}

/** `day`: "2031-06-14", as the device's own clock has it. No id can begin like this: its ":" would be written otherwise. */
export function dayRoute(day: string): string {
  return `${bookRoute}/day:${day}`
}

export type BookPlace = { page: 'list' } | { page: 'record' | 'print'; potId: string } | { page: 'day'; day: string }

export function bookPlace(route: string): BookPlace {
  const [, first, second] = /^#?\/dye-book\/([^/]+)(\/print)?$/.exec(route) ?? []
  if (first === undefined) return { page: 'list' }
  const day = /^day:(\d{4}-\d\d-\d\d)$/.exec(first)?.[1]
  if (day !== undefined) return { page: 'day', day }
  return { page: second === undefined ? 'record' : 'print', potId: decoded(first) }
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id)
  } catch {
    // A broken address names no pot; the page says that there is no such record.
    return id
  }
}
