// From a pot that is short of a stock to making that stock, and back to the pot with the new bottle chosen.
import { draftOf, keepDraft } from './start-draft.ts'

/** Which form is short, of what, and by how much. It stands in the address: a reload in the middle loses nothing. */
export type StockFor = { protocolId: string; material: string; shortML: number }

export function makeFor({ protocolId, material, shortML }: StockFor): string {
  return `#/shelf/make/${encodeURIComponent(protocolId)}/${encodeURIComponent(material)}/${Math.round(shortML * 100) / 100}`
}

/** To a bottle that is refilled for a pot on its form. */
export function bottleFor(itemId: string, protocolId: string): string {
  return `#/shelf/item/${encodeURIComponent(itemId)}/for/${encodeURIComponent(protocolId)}`
}

/** Null: the stock is made for no pot. */
export function madeFor(route: string): StockFor | null {
  const found = /^#\/shelf\/make\/([^/]+)\/([^/]+)\/([\d.]+)$/.exec(route)
  if (!found) return null
  const [, protocolId = '', material = '', short] = found
  return { protocolId: decodeURIComponent(protocolId), material: decodeURIComponent(material), shortML: Number(short) }
}

/** What the pot is called on its form. */
export function potFor(protocolId: string): string {
  return draftOf(protocolId)?.colourway.trim() || 'the pot'
}

/** The bottle that does not hold enough. */
export function shortBottle({ protocolId, material }: StockFor): string | null {
  return draftOf(protocolId)?.bottles[material]?.shelf?.at(-1) ?? null
}

/** What is still wanted comes from the new one. */
export function chooseMade({ protocolId, material }: StockFor, itemId: string): void {
  const draft = draftOf(protocolId)
  const bottle = draft?.bottles[material]
  if (!draft || !bottle) return
  const shelf = [...(bottle.shelf ?? []).filter((one) => one !== itemId), itemId]
  keepDraft(protocolId, { ...draft, bottles: { ...draft.bottles, [material]: { ...bottle, shelf } } })
}
