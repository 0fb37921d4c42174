// What a thing on the shelf is now: the fold of its entries.
import type { Making } from './events.ts'
import type { Thing } from './thing.ts'

/** When the level was known, and how. `added`, `made`, `corrected`, `used-up` and `discarded` say how much there was then;
 * `refilled` says how much came to it. */
export type Mark = {
  kind: 'added' | 'made' | 'corrected' | 'used-up' | 'discarded' | 'refilled'
  atMs: number
  amount: number
  was: number | null
  why: string
}

export type Change = { atMs: number; was: Thing; now: Thing; why: string }

export type Item = {
  itemId: string
  thing: Thing
  addedAtMs: number
  making: Making | null
  /** In the order of writing. */
  marks: Mark[]
  changes: Change[]
  /** Command ids already heard: a repeated one does nothing. */
  heard: string[]
}

export type ShelfState =
  | { status: 'none' }
  | ({ status: 'here' } & Item)
  | ({ status: 'away'; how: 'put away' | 'used up' | 'discarded'; awayAtMs: number; why: string } & Item)

export type Shelved = Exclude<ShelfState, { status: 'none' }>
