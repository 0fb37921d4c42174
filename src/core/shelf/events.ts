// What can happen to a thing on the shelf: the streams "stock/ID", in the same journal and the same entries as pots. Past
// tense, JSON-native fields only.
//
// How much is left is nowhere written: it is what was last made, measured or told, less what pots and other stocks drew
// since (levels.ts).
import type { Thing } from './thing.ts'

/** So much of another bottle went into this one, as that one's label read then. */
export type MadeFrom = {
  itemId: string
  volumeML: number
  name: string
  lot: string
  percentWV: number
  madeOn: string | null
}

/** How a stock was made: weighed, thinned, or mixed. */
export type Making = {
  how: 'powder' | 'dilution' | 'mix'
  volumeML: number
  /** The powder weighed in; null: none was. */
  powderG: number | null
  /** The lot on the powder's own jar. */
  powderLot: string
  from: MadeFrom[]
  water: string
}

export type ShelfEvent =
  | { type: 'ShelfItemAdded'; itemId: string; thing: Thing; level: number | null }
  | { type: 'ShelfItemChanged'; was: Thing; now: Thing; why: string }
  | { type: 'StockMade'; making: Making }
  /** More of the same lot was put in. */
  | { type: 'Refilled'; amount: number }
  /** `was`: what was worked out by then; it stays here, with the reason. */
  | { type: 'LevelCorrected'; was: number | null; now: number; why: string }
  | { type: 'PutAway'; why: string }
  | { type: 'BroughtBack' }
  | { type: 'UsedUp'; was: number | null }
  | { type: 'StockDiscarded'; was: number | null; how: string }

const known: Record<ShelfEvent['type'], true> = {
  ShelfItemAdded: true,
  ShelfItemChanged: true,
  StockMade: true,
  Refilled: true,
  LevelCorrected: true,
  PutAway: true,
  BroughtBack: true,
  UsedUp: true,
  StockDiscarded: true
}

/** Does this version have a word for the event? A thing with one it has no word for opens read-only. */
export function isKnownShelfEvent(type: string): boolean {
  return Object.hasOwn(known, type)
}
