// The shelf for the screens: what stands on it with its levels, kept up with pots and other tabs. Loaded when it is first
// asked for.
import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import type { By } from '../core/pot/events.ts'
import { leftOn } from '../core/shelf/levels.ts'
import { unitOf } from '../core/shelf/thing.ts'
import type { PotSummary } from '../session/ports.ts'
import { queue } from '../session/queue.ts'
import {
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

export type ShelfParts = ShelfPorts & {
  pots: ReadonlySignal<PotOnStove[]>
  by: () => By
  /** Other tabs, told what was changed and telling; null: there are none to tell. */
  tabs: Pick<Tabs, 'say' | 'onWord'> | null
}

export function makeShelf(parts: ShelfParts): KitchenShelf {
  const { clock, journal, ids, pots, tabs } = parts
  const run = queue()
  const items = signal<readonly OpenedItem[]>([])
  const drawn = signal<readonly PotSummary[]>([])
  const unread = signal<string | null>(null)

  const readAll = async (read: () => Promise<void>): Promise<void> => {
    try {
      await read()
      unread.value = null
    } catch (error) {
      unread.value = `The shelf can’t be read (${error instanceof Error ? error.message : error}).`
    }
  }
  const drawsAgain = async (): Promise<void> => {
    drawn.value = await readDraws(journal, counted(items.value))
  }
  const again = (): Promise<void> =>
    run(() =>
      readAll(async () => {
        const read = await readShelf(journal)
        const draws = await readDraws(journal, counted(read))
        batch(() => {
          items.value = read
          drawn.value = draws
        })
      })
    )
  const put = (item: OpenedItem): void => {
    const others = items.value.filter(({ itemId }) => itemId !== item.itemId)
    items.value = [...others, item]
  }

  tabs?.onWord((word) => {
    if (word.kind === 'stored') void again()
  })
  let stop = (): void => {}
  let seen = ''
  // A pot that stored anything may have drawn: only its line beside the journal knows.
  const things = computed<OnShelf[]>(() => onShelf(items.value, drawn.value, pots.value), {
    watched() {
      stop = effect(() => {
        const now = pots.value.map(({ potId, state }) => `${potId} ${state.status === 'idle' ? 0 : state.lastAtMs}`)
        if (now.join() === seen) return
        seen = now.join()
        void run(() => readAll(drawsAgain))
      })
    },
    unwatched: () => stop()
  })
  return {
    things,
    broken: computed(() => items.value.flatMap(brokenOf)),
    unread,
    again,
    send: (itemId, command, { commandId = ids.newId(), agoMs = 0 } = {}) =>
      run(async () => {
        const header = { commandId, atMs: clock.nowMs() - agoMs, by: parts.by() }
        const outcome = await sendToShelf(parts, itemId, command, header)
        if (outcome.ok) {
          put(outcome.item)
          tabs?.say({ kind: 'stored', potIds: [] })
        }
        return sentOf(outcome)
      }),
    async batches(itemId) {
      const found = await journal.drawnFrom(itemId)
      const mine = found.map(
        ({ draws = [], ...line }): BatchDrawn => ({ ...line, draws: draws.filter((draw) => draw.itemId === itemId) })
      )
      return mine.sort((a, b) => b.startedAtMs - a.startedAtMs)
    }
  }
}

/** Only what is counted has a level to be worked out. */
function counted(items: readonly OpenedItem[]): string[] {
  return items.flatMap(({ itemId, state }) =>
    state.status !== 'none' && unitOf(state.thing) !== null && state.marks.length > 0 ? [itemId] : []
  )
}

function onShelf(items: readonly OpenedItem[], drawn: readonly PotSummary[], pots: readonly PotOnStove[]): OnShelf[] {
  const standing = items.flatMap(({ state, readOnly }) => (state.status === 'none' ? [] : [{ item: state, readOnly }]))
  const levels = leftOn(
    standing.map(({ item }) => item),
    drawn.map(({ potId, draws = [] }) => ({ potId, draws })),
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
