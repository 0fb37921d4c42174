import { describe, expect, it } from 'vitest'
import { trunkOf } from '../../src/core/pot/branches.ts'
import { fold } from '../../src/core/pot/fold.ts'
import { readEntries } from '../../src/core/pot/read-entry.ts'
import { branchesOf } from '../../src/core/record/branches.ts'
import { recordOf } from '../../src/core/record/record-of.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import { handClock } from '../../src/shell/clock/hand-clock.ts'
import type { MemoryStore } from '../../src/shell/journal/memory-journal.ts'
import { inOrderOfWriting } from '../../src/shell/journal/writing-order.ts'
import { MIN, pass, send, started, T0, type Table, table } from './kitchen-table.ts'

const acid1 = { type: 'MarkDone', path: 'acid1' } as const
const abort = (reason: string) => ({ type: 'Abort', reason }) as const

/** The same store on another device, with a name of its own, at the same hour. */
async function copied({ store, clock }: Table, writerId: string): Promise<Table> {
  const copy = table({ store: structuredClone(store) as MemoryStore, writerId, clock: handClock(clock.nowMs()) })
  await copy.session.open()
  return copy
}

/** All entries of several tables' pot, once each, as a merged store gives them. */
function merged(...tables: Table[]): PotEntry[] {
  const all = new Map<string, unknown>()
  for (const { store } of tables) for (const [key, entry] of store.entries) all.set(key, entry)
  const byKey = [...all.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry as PotEntry)
  byKey.sort((a, b) => (a.writerId < b.writerId ? -1 : a.writerId > b.writerId ? 1 : a.seq - b.seq))
  const read = readEntries(inOrderOfWriting(byKey))
  expect(read.damaged).toEqual([])
  return read.entries
}

/** One pot, continued on two devices from minute 11 on. */
async function parted(): Promise<{ phone: Table; tablet: Table }> {
  const phone = await started()
  await pass(phone, 11 * MIN)
  const tablet = await copied(phone, 'w2')
  await pass(phone, 1 * MIN)
  await send(phone, acid1)
  await pass(tablet, 3 * MIN)
  await send(tablet, acid1)
  await send(tablet, abort('the tablet fell'))
  await pass(phone, 30 * MIN)
  return { phone, tablet }
}

describe('the same batch continued on two devices', () => {
  it('has one state on both: that of the device that carried it on first', async () => {
    const { phone, tablet } = await parted()
    const state = fold(merged(phone, tablet))
    expect(state).toEqual(fold(merged(tablet, phone)))
    expect(state).toEqual(phone.session.pots()[0]?.state)
  })

  it('gives a record of each branch, each its own whole way from the start', async () => {
    const { phone, tablet } = await parted()
    const [trunk, side, ...more] = branchesOf(merged(phone, tablet))
    expect(more).toEqual([])
    expect(trunk?.entries).toEqual(merged(phone))
    expect(side?.entries).toEqual(merged(tablet))
    expect(side?.own?.writerId).toBe('w2')
    expect(recordOf(side?.entries ?? [])?.identity).toMatchObject({
      status: 'aborted',
      endedBecause: 'the tablet fell'
    })
    expect(recordOf(trunk?.entries ?? [])?.identity.status).toBe('running')
  })

  it('goes on where its trunk ends, with the count of its own writer unbroken', async () => {
    const { phone, tablet } = await parted()
    for (const [key, entry] of tablet.store.entries) phone.store.entries.set(key, entry)
    const again = table({ store: phone.store, writerId: 'w2', clock: phone.clock })
    await again.session.open()
    await send(again, { type: 'WriteNote', text: 'after the merge' })
    const entries = readEntries(inOrderOfWriting([...again.store.entries.values()])).entries
    const note = entries.find(({ event }) => event.type === 'NoteWritten')
    const last = merged(phone)
      .filter(({ writerId }) => writerId === 'w1')
      .at(-1)
    expect(note?.after).toEqual({ writerId: 'w1', seq: last?.seq })
    expect(entries.filter(({ writerId }) => writerId === 'w2').map(({ seq }) => seq)).toEqual(
      entries.filter(({ writerId }) => writerId === 'w2').map((_, at) => at + 1)
    )
    expect(trunkOf(entries).sides).toHaveLength(1)
  })

  it('is no branch where one device only told of the pot: its notes stand in the one record', async () => {
    const phone = await started()
    await pass(phone, 11 * MIN)
    const tablet = await copied(phone, 'w2')
    await send(tablet, { type: 'WriteNote', text: 'pale already' })
    await pass(phone, 2 * MIN)
    await send(phone, acid1)
    const entries = merged(phone, tablet)
    expect(trunkOf(entries)).toMatchObject({ sides: [] })
    expect(branchesOf(entries)).toHaveLength(1)
    expect(recordOf(entries)?.notes.map(({ text }) => text)).toContain('pale already')
    // What comes next follows the deed, not the note beside it: else the deed would be a branch.
    expect(trunkOf(entries).head?.writerId).toBe('w1')
  })

  it('on three devices shows three, and a branch that parts again shows both its ends', async () => {
    const { phone, tablet } = await parted()
    const phone2 = await copied(phone, 'w3')
    await pass(phone2, 5 * MIN)
    await send(phone2, abort('dropped'))
    await pass(phone, 1 * MIN)
    await send(phone, { type: 'MarkDone', path: 'acid2' })
    const branches = branchesOf(merged(phone, tablet, phone2))
    expect(branches.map(({ own }) => own?.writerId ?? 'trunk').sort()).toEqual(['trunk', 'w2', 'w3'])
  })

  it('is told in its line of the Dye book', async () => {
    const { phone, tablet } = await parted()
    for (const [key, entry] of tablet.store.entries) phone.store.entries.set(key, entry)
    const again = table({ store: phone.store, writerId: 'w4', clock: phone.clock })
    await again.session.open()
    await send(again, { type: 'WriteNote', text: 'x' })
    expect(await again.journal.summaries(0, T0 + 1e9)).toMatchObject([{ branched: true }])
    const alone = await started()
    await send(alone, { type: 'WriteNote', text: 'x' })
    expect(await alone.journal.summaries(0, T0 + 1e9)).not.toMatchObject([{ branched: true }])
  })
})
