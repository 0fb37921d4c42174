// From a state and an event to the next state. Only assigns.
import type { Entry } from '../pot/entry.ts'
import type { ShelfEvent } from './events.ts'
import type { Mark, ShelfState, Shelved } from './state.ts'

type Stamp = { atMs: number; commandId: string }

/** The state of a thing from its entries, in the order of writing. */
export function foldItem(entries: readonly Entry<ShelfEvent>[]): ShelfState {
  let state: ShelfState = { status: 'none' }
  for (const { event, atMs, commandId } of entries) state = evolveItem(state, event, { atMs, commandId })
  return state
}

/** The state after an event, without touching the one before. */
export function evolveItem(state: ShelfState, event: ShelfEvent, stamp: Stamp): ShelfState {
  if (event.type === 'ShelfItemAdded') return state.status === 'none' ? added(event, stamp) : state
  if (state.status === 'none') return state
  return assign({ ...state, heard: [...state.heard, stamp.commandId] }, event, stamp.atMs)
}

function added({ itemId, thing, level }: Extract<ShelfEvent, { type: 'ShelfItemAdded' }>, stamp: Stamp): ShelfState {
  const { atMs, commandId } = stamp
  const marks: Mark[] = level === null ? [] : [{ kind: 'added', atMs, amount: level, was: null, why: '' }]
  return { status: 'here', itemId, thing, addedAtMs: atMs, making: null, marks, changes: [], heard: [commandId] }
}

function assign(state: Shelved, event: Exclude<ShelfEvent, { type: 'ShelfItemAdded' }>, atMs: number): ShelfState {
  switch (event.type) {
    case 'ShelfItemChanged': {
      const { was, now, why } = event
      return { ...state, thing: now, changes: [...state.changes, { atMs, was, now, why }] }
    }
    case 'StockMade': {
      const made = marked(state, { kind: 'made', atMs, amount: event.making.volumeML, was: null, why: '' })
      return { ...made, making: event.making }
    }
    case 'Refilled':
      return marked(state, { kind: 'refilled', atMs, amount: event.amount, was: null, why: '' })
    case 'LevelCorrected':
      return marked(state, { kind: 'corrected', atMs, amount: event.now, was: event.was, why: event.why })
    case 'PutAway':
      return { ...state, status: 'away', how: 'put away', awayAtMs: atMs, why: event.why }
    case 'BroughtBack':
      return { ...itemOf(state), status: 'here' }
    case 'UsedUp': {
      const empty = marked(state, { kind: 'used-up', atMs, amount: 0, was: event.was, why: '' })
      return { ...empty, status: 'away', how: 'used up', awayAtMs: atMs, why: '' }
    }
    case 'StockDiscarded': {
      const empty = marked(state, { kind: 'discarded', atMs, amount: 0, was: event.was, why: event.how })
      return { ...empty, status: 'away', how: 'discarded', awayAtMs: atMs, why: event.how }
    }
  }
}

function marked(state: Shelved, mark: Mark): Shelved {
  return { ...state, marks: [...state.marks, mark] }
}

function itemOf(state: Shelved) {
  const { itemId, thing, addedAtMs, making, marks, changes, heard } = state
  return { itemId, thing, addedAtMs, making, marks, changes, heard }
}
