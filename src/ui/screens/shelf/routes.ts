// The addresses of the shelf.
export const SHELF = '#/shelf'
export const ADD = `${SHELF}/add`
export const MAKE = `${SHELF}/make`
export const SUMS = `${SHELF}/sums`

/** `forPot`: a pot on its form waits for this bottle, or for the stock of this label; the protocol it is started by. */
export type Place =
  | { at: 'list' | 'add' | 'make' }
  | { at: 'change'; itemId: string }
  | { at: 'item' | 'label'; itemId: string; forPot: string | null }

/** Ids are told apart from the words of the shelf's own places by what goes before them. */
export function placeOf(route: string): Place {
  const [, first, second, third, fourth] = route.replace(/^#?\//, '').split('/')
  if (first === 'add' || first === 'make') return { at: first }
  if (first !== 'item' || second === undefined) return { at: 'list' }
  const itemId = decoded(second)
  if (third === 'label') return { at: third, itemId, forPot: fourth === undefined ? null : decoded(fourth) }
  if (third === 'change') return { at: third, itemId }
  return { at: 'item', itemId, forPot: third !== 'for' || fourth === undefined ? null : decoded(fourth) }
}

export function itemRoute(itemId: string, more: '' | '/change' | '/label' = ''): string {
  return `${SHELF}/item/${encodeURIComponent(itemId)}${more}`
}

/** With the way back to the pot that waits for it, by the protocol it is started by. */
export function labelRoute(itemId: string, forPot?: string): string {
  return `${itemRoute(itemId, '/label')}${forPot === undefined ? '' : `/${encodeURIComponent(forPot)}`}`
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    // A broken address names nothing; the page says that there is no such thing.
    return text
  }
}
