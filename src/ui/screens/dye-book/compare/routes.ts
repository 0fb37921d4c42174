// The addresses of several batches at once. "compare", "repeat" and "choose" stand before a second part, which no single
// batch has.
export type Several = { page: 'compare' | 'repeat' | 'choose'; potIds: string[] }

export function compareRoute(potIds: readonly string[]): string {
  return several('compare', potIds)
}

export function repeatRoute(potIds: readonly string[]): string {
  return several('repeat', potIds)
}

/** The list, for choosing more beside this one. */
export function chooseRoute(potId: string): string {
  return several('choose', [potId])
}

function several(page: Several['page'], potIds: readonly string[]): string {
  return `#/dye-book/${page}/${potIds.map(encodeURIComponent).join(',')}`
}

/** Null: the address is none of several batches. */
export function severalIn(route: string): Several | null {
  const [, page, ids = ''] = /^#?\/dye-book\/(compare|repeat|choose)\/([^/]*)$/.exec(route) ?? []
  if (page === undefined) return null
  const potIds = ids.split(',').filter(Boolean).map(decoded)
  return { page: page as Several['page'], potIds: [...new Set(potIds)] }
}

function decoded(id: string): string {
  try {
    return decodeURIComponent(id)
  } catch {
    return id
  }
}
