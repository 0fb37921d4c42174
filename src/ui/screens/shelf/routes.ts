// The addresses of the shelf.
export const SHELF = '#/shelf'
export const ADD = `${SHELF}/add`
export const MAKE = `${SHELF}/make`

export type Place = { at: 'list' | 'add' | 'make' } | { at: 'item' | 'change' | 'label'; itemId: string }

/** Ids are told apart from the words of the shelf's own places by what goes before them. */
export function placeOf(route: string): Place {
  const [, first, second, third] = route.replace(/^#?\//, '').split('/')
  if (first === 'add' || first === 'make') return { at: first }
  if (first !== 'item' || second === undefined) return { at: 'list' }
  const itemId = decoded(second)
  return { at: third === 'change' || third === 'label' ? third : 'item', itemId }
}

export function itemRoute(itemId: string, more: '' | '/change' | '/label' = ''): string {
  return `${SHELF}/item/${encodeURIComponent(itemId)}${more}`
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    // A broken address names nothing; the page says that there is no such thing.
    return text
  }
}
