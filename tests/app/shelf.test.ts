import { effect, signal } from '@preact/signals'
import { describe, expect, it, vi } from 'vitest'
import { makeShelf } from '../../src/app/shelf.ts'
import { sealEntry } from '../../src/core/pot/write-entry.ts'
import type { ShelfEvent } from '../../src/core/shelf/events.ts'
import type { ShelfEntry } from '../../src/session/ports.ts'
import { handClock } from '../../src/shell/clock/hand-clock.ts'
import { type Fault, type MemoryStore, memoryJournal, memoryStore } from '../../src/shell/journal/memory-journal.ts'
import { tabs } from '../../src/shell/ownership/tabs.ts'
import type { PotOnStove } from '../../src/ui/kitchen.ts'
import type { OnShelf } from '../../src/ui/shelf.ts'
import { PERSON, T0 } from '../core/pot/given.ts'
import { act } from '../core/pot/programmes.ts'
import { bottle, from, served, vinegar } from '../core/shelf/bottles.ts'
import { send, startCommand, table } from '../session/kitchen-table.ts'

let names = 0

function shelfOn(
  store: MemoryStore = memoryStore(),
  more: { talk?: string; faults?: (Fault | null)[]; noRead?: () => boolean } = {}
) {
  let ids = 0
  const name = `shelf${++names}`
  const { faults = [], noRead = () => false } = more
  const journal = memoryJournal({ store, fault: () => faults.shift() ?? null, failRead: noRead })
  const pots = signal<PotOnStove[]>([])
  const made = makeShelf({
    clock: handClock(T0),
    journal,
    ids: { newId: () => `${name}-${++ids}`, writerId: 'w1' },
    pots,
    by: () => PERSON,
    tabs: more.talk === undefined ? null : tabs(more.talk)
  })
  return { ...made, pots, journal }
}

const add = { type: 'AddThing', thing: vinegar, level: 500 } as const
const correct = { type: 'CorrectLevel', was: 500, now: 400, why: 'spilled' } as const
const levelOf = (things: OnShelf[]) => things.map(({ level }) => level?.left)

describe('the shelf', () => {
  it('keeps what was put on it, and a next start of the app finds it', async () => {
    const store = memoryStore()
    const shelf = shelfOn(store)
    expect(await shelf.send('v1', add)).toEqual({ ok: true })
    expect(await shelf.send('v1', correct)).toEqual({ ok: true })
    expect(levelOf(shelf.things.value)).toEqual([400])
    const later = shelfOn(store)
    expect(later.things.value).toEqual([])
    await later.again()
    expect(later.things.value).toMatchObject([{ item: { itemId: 'v1', thing: vinegar }, level: { left: 400 } }])
  })

  it('says what is wrong at its field, and stores nothing of it', async () => {
    const shelf = shelfOn()
    const sent = await shelf.send('v1', { ...add, thing: { ...vinegar, name: '' } })
    expect(sent).toMatchObject({ ok: false, problems: [{ field: 'name' }] })
    expect(shelf.journal.store.entries.size).toBe(0)
  })

  it.each([
    ['the store is full', 'full' as const],
    ['the connection is lost', 'lost' as const]
  ])('says that it is not saved when %s, and shows nothing as done', async (_, fault) => {
    const shelf = shelfOn(memoryStore(), { faults: [null, fault] })
    await shelf.send('v1', add)
    const sent = await shelf.send('v1', correct, { commandId: 'tap' })
    expect(sent).toMatchObject({ ok: false, say: expect.stringContaining('Not saved.') })
    expect(levelOf(shelf.things.value)).toEqual([500])
    expect(await shelf.send('v1', correct, { commandId: 'tap' })).toEqual({ ok: true })
    expect(levelOf(shelf.things.value)).toEqual([400])
  })

  it('takes a tap that comes twice for one', async () => {
    const shelf = shelfOn()
    await shelf.send('v1', add)
    const more = { type: 'Refill', amount: 100 } as const
    const both = await Promise.all([1, 2].map(() => shelf.send('v1', more, { commandId: 'tap' })))
    expect(both).toEqual([{ ok: true }, { ok: true }])
    expect(levelOf(shelf.things.value)).toEqual([600])
  })

  it('decides again when another tab was first, and loses neither of two', async () => {
    const store = memoryStore()
    const [one, two] = [shelfOn(store), shelfOn(store)]
    await one.send('v1', add)
    const more = { type: 'Refill', amount: 100 } as const
    const both = await Promise.all([one.send('v1', more), two.send('v1', more)])
    expect(both).toEqual([{ ok: true }, { ok: true }])
    await one.again()
    expect(levelOf(one.things.value)).toEqual([700])
  })

  it('tells the other tabs', async () => {
    const store = memoryStore()
    const talk = `shelf talk ${++names}`
    const [one, two] = [shelfOn(store, { talk }), shelfOn(store, { talk })]
    await one.send('v1', add)
    await vi.waitFor(() => expect(levelOf(two.things.value)).toEqual([500]))
  })

  it('says why it can’t be read, and shows what it read before', async () => {
    let broken = false
    const shelf = shelfOn(memoryStore(), { noRead: () => broken })
    await shelf.send('v1', add)
    broken = true
    await shelf.again()
    expect(shelf.unread.value).toContain('the store does not answer')
    expect(levelOf(shelf.things.value)).toEqual([500])
    expect(await shelf.send('v1', correct)).toMatchObject({ ok: false, say: expect.stringContaining('Not saved.') })
  })

  it('opens a thing read-only where a newer version wrote of it or an entry is damaged', async () => {
    const store = memoryStore()
    const shelf = shelfOn(store)
    await shelf.send('v1', add)
    await shelf.send('v2', add)
    const [, second] = [...store.entries.values()] as ShelfEntry[]
    const { crc: _, ...open } = second as ShelfEntry
    const next = { ...open, seq: 2, after: { writerId: 'w1', seq: 1 }, commandId: 'x' }
    const unknown = sealEntry({ ...next, event: { type: 'Blessed' } as unknown as ShelfEvent })
    store.entries.set('new', unknown)
    store.entries.set('bad', { ...sealEntry({ ...next, streamId: 'stock/v1' }), atMs: 1 })
    await shelf.again()
    const why = shelf.things.value.map(({ readOnly }) => readOnly)
    expect(why).toEqual([expect.stringContaining('is damaged'), expect.stringContaining('A newer Strandline')])
    for (const id of ['v1', 'v2']) expect(await shelf.send(id, correct)).toMatchObject({ ok: false, problems: [] })
    expect(levelOf(shelf.things.value)).toEqual([500, 500])
  })
})

describe('the shelf beside the pots', () => {
  const acid = served([from('one', 30), from('two', 20), act('end')], { acid: [bottle('v1')] })

  it('goes down with every dose that is stored, reserves what is to come, and names the batch', async () => {
    const at = table()
    await at.session.open()
    const shelf = shelfOn(at.store)
    await shelf.send('v1', add)
    const seen: unknown[] = []
    const stop = effect(() => void seen.push(shelf.things.value[0]?.level))
    const look = () => {
      shelf.pots.value = at.session.pots()
    }
    await at.session.send('plum', startCommand('plum', 'Plum', acid), { by: PERSON })
    look()
    await vi.waitFor(() => expect(seen.at(-1)).toMatchObject({ left: 500, reserved: 50, free: 450 }))
    at.clock.advance(60_000)
    await send(at, { type: 'MarkDone', path: 'one' })
    look()
    await vi.waitFor(() => expect(seen.at(-1)).toMatchObject({ left: 470, reserved: 20, free: 450 }))
    at.clock.advance(1000)
    await send(at, { type: 'Undo' })
    look()
    await vi.waitFor(() => expect(seen.at(-1)).toMatchObject({ left: 500, reserved: 50 }))
    stop()
    expect(await shelf.batches('v1')).toEqual([])
    await send(at, { type: 'MarkDone', path: 'one' })
    expect(await shelf.batches('v1')).toMatchObject([
      { potId: 'plum', batchName: '2031-06-14 Plum', draws: [{ itemId: 'v1', amount: 30, unit: 'mL' }] }
    ])
  })

  it('needs no journal of a pot to know what was drawn', async () => {
    const at = table()
    await at.session.open()
    await at.session.send('plum', startCommand('plum', 'Plum', acid), { by: PERSON })
    at.clock.advance(60_000)
    await send(at, { type: 'MarkDone', path: 'one' })
    const shelf = shelfOn(at.store)
    await shelf.send('v1', add, { agoMs: 60_000 })
    for (const [key, entry] of at.store.entries) {
      if ((entry as ShelfEntry).streamId.startsWith('pot/')) at.store.entries.delete(key)
    }
    await shelf.again()
    expect(levelOf(shelf.things.value)).toEqual([470])
  })
})
