// The shelf for the screens: what stands on it with its levels, kept up with pots and other tabs. Loaded when it is first
// asked for.
import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { By } from '../core/pot/events.ts'
import { leftOn } from '../core/shelf/levels.ts'
import { unitOf } from '../core/shelf/thing.ts'
import { queue } from '../session/queue.ts'
import {
  type DrawnPot,
  type OpenedItem,
  readDraws,
  readShelf,
  type ShelfOutcome,
  type ShelfPorts,
  sendToShelf
} from '../session/shelf.ts'
import type { Tabs } from '../shell/ownership/tabs.ts'
import type { PotOnStove } from '../ui/kitchen.ts'
import type { BatchDrawn, KitchenShelf, OnShelf, ShelfSent } from '../ui/shelf.ts'
import { type KitchenParts, personOf, type ShelfHere } from './kitchen.ts'

export type ShelfParts = ShelfPorts & {
  pots: ReadonlySignal<PotOnStove[]>
  by: () => By
  /** Other tabs, told what was changed and telling; null: there are none to tell. */
  tabs: Pick<Tabs, 'say' | 'onWord'> | null
}

type Around = Pick<KitchenParts, 'clock' | 'journal' | 'newId' | 'settings'>
const made = new WeakMap<Around, KitchenShelf>()

/** The shelf of a kitchen: made once, read anew whenever it is asked for. */
export async function shelfOf(around: Around, pots: ShelfParts['pots'], here: ShelfHere): Promise<KitchenShelf> {
  const { clock, journal, newId, settings } = around
  const by = () => personOf(settings)
  const ids = { newId, writerId: here.writerId }
  const shelf = made.get(around) ?? makeShelf({ clock, journal, ids, pots, by, tabs: here.tabs() })
  made.set(around, shelf)
  await shelf.again()
  return shelf
}

export function makeShelf(parts: ShelfParts): KitchenShelf {
  const { clock, journal, ids, pots, tabs } = parts
  const run = queue()
  const items = signal<readonly OpenedItem[]>([])
  const drawn = signal<readonly DrawnPot[]>([])
  const unread = signal<string | null>(null)

  const read = async (readThings: () => Promise<readonly OpenedItem[]>): Promise<void> => {
    try {
      const things = await readThings()
      const draws = await readDraws(journal, counted(things))
      batch(() => {
        items.value = things
        drawn.value = draws
        unread.value = null
      })
    } catch (error) {
      unread.value = `The shelf can’t be read (${error instanceof Error ? error.message : error}).`
    }
  }
  const again = (): Promise<void> => run(() => read(() => readShelf(journal)))
  const withItem = (item: OpenedItem): OpenedItem[] => [
    ...items.value.filter(({ itemId }) => itemId !== item.itemId),
    item
  ]
  tabs?.onWord((word) => {
    if (word.kind === 'stored') void again()
  })
  return {
    things: whileLooked(
      () => onShelf(items.value, drawn.value, pots.value),
      pots,
      () => void run(() => read(async () => items.value))
    ),
    broken: computed(() => items.value.flatMap(brokenOf)),
    unread,
    again,
    send: (itemId, command, { commandId = ids.newId(), agoMs = 0 } = {}) =>
      run(async () => {
        const header = { commandId, atMs: clock.nowMs() - agoMs, by: parts.by() }
        const outcome = await sendToShelf(parts, itemId, command, header)
        if (outcome.ok) {
          items.value = withItem(outcome.item)
          tabs?.say({ kind: 'stored', potIds: [] })
          await read(async () => items.value)
        }
        return sentOf(outcome)
      }),
    batches: (itemId) => batchesOf(parts, itemId)
  }
}

/** What stands there, for as long as somebody looks at it: a pot that stored anything may have drawn, and only its line
 * beside the journal knows. */
function whileLooked(
  things: () => OnShelf[],
  pots: ShelfParts['pots'],
  drawsAgain: () => void
): ReadonlySignal<OnShelf[]> {
  let stop = (): void => {}
  let seen = ''
  return computed(things, {
    watched() {
      stop = effect(() => {
        const now = pots.value.map(({ potId, state }) => `${potId} ${state.status === 'idle' ? 0 : state.lastAtMs}`)
        if (now.join() === seen) return
        seen = now.join()
        drawsAgain()
      })
    },
    unwatched: () => stop()
  })
}

async function batchesOf({ journal }: ShelfParts, itemId: string): Promise<BatchDrawn[]> {
  const found = await readDraws(journal, [itemId])
  const mine = found.flatMap(({ draws, ...line }): BatchDrawn[] => {
    const of = draws.filter((draw) => draw.itemId === itemId)
    return of.length === 0 ? [] : [{ ...line, draws: of }]
  })
  return mine.sort((a, b) => b.startedAtMs - a.startedAtMs)
}

/** Only what is counted has a level to be worked out. */
function counted(items: readonly OpenedItem[]): string[] {
  return items.flatMap(({ itemId, state }) =>
    state.status !== 'none' && unitOf(state.thing) !== null && state.marks.length > 0 ? [itemId] : []
  )
}

function onShelf(items: readonly OpenedItem[], drawn: readonly DrawnPot[], pots: readonly PotOnStove[]): OnShelf[] {
  const standing = items.flatMap(({ state, readOnly }) => (state.status === 'none' ? [] : [{ item: state, readOnly }]))
  const levels = leftOn(
    standing.map(({ item }) => item),
    drawn,
    pots.map(({ state }) => state)
  )
  return standing
    .map(({ item, readOnly }) => ({ item, readOnly, level: levels.get(item.itemId) ?? null }))
    .sort((a, b) => a.item.addedAtMs - b.item.addedAtMs)
}

function brokenOf({ itemId, state, readOnly }: OpenedItem): { itemId: string; say: string }[] {
  return state.status === 'none' ? [{ itemId, say: readOnly ?? 'Its first entry is missing.' }] : []
}

function sentOf(outcome: ShelfOutcome): ShelfSent {
  if (outcome.ok) return { ok: true }
  switch (outcome.why) {
    case 'refused':
      return { ok: false, problems: outcome.refusal.problems, say: outcome.refusal.say }
    case 'not-saved': {
      const { failure } = outcome
      return { ok: false, problems: [], say: `Not saved. ${failure.why === 'conflict' ? '' : failure.say}` }
    }
    case 'read-only':
      return { ok: false, problems: [], say: outcome.say }
  }
}
