import { describe, expect, it } from 'vitest'
import { sealEntry } from '../../src/core/pot/write-entry.ts'
import type { PotEntry } from '../../src/session/ports.ts'
import type { Fault } from '../../src/shell/journal/memory-journal.ts'
import { act, programme } from '../core/pot/programmes.ts'
import { events, MIN, open, pass, send, startCommand, started, stored, table } from './kitchen-table.ts'

const noMost = { atMostMs: null, late: 'shift' } as const
const acid1 = { type: 'MarkDone', path: 'acid1' } as const
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 2))

describe('when the page dies', () => {
  it('between the tap and the store, nothing was shown as done and the call stands again', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push('crash-before')
    void send(at, acid1, { commandId: 'tap' })
    await settle()
    expect(open(at)).toEqual(['acid1'])
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    expect(again.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    expect(await send(again, acid1, { commandId: 'tap' })).toMatchObject({ ok: true })
    expect(events(again, 'Dosed')).toHaveLength(1)
  })

  it('while a tap is being stored, the screen still asks for its act, also when the clock ticks meanwhile', async () => {
    const at = await started(programme([act('lift'), act('lower')]))
    const seen = (): (string | null)[] => at.session.pots()[0]?.alerts.map(({ path }) => path) ?? []
    await at.session.wake()
    expect(seen()).toEqual(['lift'])
    at.faults.push({ slowMs: 20 })
    const sent = send(at, { type: 'MarkDone', path: 'lift' })
    await settle()
    at.clock.tick()
    expect(seen()).toEqual(['lift'])
    await sent
    expect(seen()).toEqual(['lower'])
  })

  it('between the store and the screen, the act is done once, whoever taps again', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push('crash-after')
    void send(at, acid1, { commandId: 'tap' })
    await settle()
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    expect(open(again)).toEqual(['hold1'])
    expect(await send(again, acid1, { commandId: 'tap' })).toMatchObject({ ok: true })
    expect(await send(again, acid1)).toMatchObject({ ok: false, why: 'refused' })
    expect(events(again, 'Dosed')).toHaveLength(1)
  })
})

describe('when another tab was first', () => {
  it('reads again and decides again under the same id: nothing is overwritten, nothing done twice', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    const second = table({ clock: at.clock, store: at.store })
    await second.session.open()
    expect(await send(second, acid1, { commandId: 'second tab' })).toMatchObject({ ok: true })
    expect(await send(at, acid1, { commandId: 'first tab' })).toMatchObject({ ok: false, why: 'refused' })
    expect(open(at)).toEqual(['hold1'])
    expect(events(at, 'Dosed')).toHaveLength(1)
    expect(await send(at, { type: 'WriteNote', text: 'mine' })).toMatchObject({ ok: true })
    expect(await send(second, { type: 'WriteNote', text: 'theirs' })).toMatchObject({ ok: true })
    expect(events(at, 'NoteWritten').map(({ text }) => text)).toEqual(['mine', 'theirs'])
  })

  it('confirms no repeated tap whose first could not be stored and is not true any more', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push('lost')
    expect(await send(at, acid1, { commandId: 'tap' })).toMatchObject({ why: 'not-saved' })
    const second = table({ clock: at.clock, store: at.store })
    await second.session.open()
    await send(second, acid1, { commandId: 'second tab' })
    expect(await send(at, acid1, { commandId: 'tap' })).toMatchObject({ ok: false, why: 'refused' })
    expect(events(at, 'Dosed')).toHaveLength(1)
  })

  it('raises a call that came again after an undo, though its first one is in the journal under the same name', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    await send(at, acid1)
    await pass(at, 21 * MIN)
    await send(at, { type: 'Undo' })
    await send(at, acid1, { agoMs: 21 * MIN })
    at.faults.push('conflict')
    await pass(at, 250)
    const calls = stored(at).filter(({ event }) => event.type === 'AlertRaised' && event.path === 'acid2')
    expect(calls).toHaveLength(2)
  })

  it('writes an alert down at the time that the other tab gave it', async () => {
    const at = await started(programme([act('a'), act('b')]))
    await pass(at, 20_000)
    const second = table({ clock: at.clock, store: at.store })
    await second.session.open()
    at.faults.push('lost', 'lost')
    await send(at, { type: 'MarkDone', path: 'a' })
    await pass(at, 1000)
    expect(await send(second, { type: 'MarkDone', path: 'a' }, { agoMs: 10_000 })).toMatchObject({ ok: true })
    await at.session.retry()
    const called = stored(at).find(({ event }) => event.type === 'AlertRaised' && event.path === 'b')
    expect(called?.atMs).toBe(at.clock.nowMs() - 10_000)
  })

  it('does not write down an alert that by the word of the other tab is still to come', async () => {
    const at = await started(programme([act('a'), act('b')], [{ from: 'a', to: 'b', atLeastMs: 5 * MIN, ...noMost }]))
    await pass(at, 20_000)
    const second = table({ clock: at.clock, store: at.store })
    await second.session.open()
    at.faults.push('lost', 'lost')
    await send(at, { type: 'MarkDone', path: 'a' }, { agoMs: 5_000 })
    at.clock.creep(5 * MIN - 5_000)
    await pass(at, 1000)
    expect(await send(second, { type: 'MarkDone', path: 'a' }, { agoMs: 500 })).toMatchObject({ ok: true })
    await at.session.retry()
    expect(stored(at).filter(({ event }) => event.type === 'AlertRaised' && event.path === 'b')).toEqual([])
  })

  it('takes a write of which only the answer was lost as the one write it was', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    // The first write arrives and says it did not: the second try conflicts with it.
    const append = at.journal.append
    at.journal.append = async (entries, summaries) => {
      at.journal.append = append
      await append(entries, summaries)
      return { ok: false, why: 'lost', say: 'no answer' }
    }
    expect(await send(at, acid1)).toMatchObject({ ok: false, why: 'not-saved' })
    await at.session.retry()
    expect(at.session.notSaved()).toBeNull()
    expect(open(at)).toEqual(['hold1'])
    expect(events(at, 'Dosed')).toHaveLength(1)
  })
})

describe('when a write fails', () => {
  for (const fault of ['full', 'lost'] satisfies Fault[]) {
    it(`(${fault}) says so, shows nothing as done, keeps it, and stores it on trying again`, async () => {
      const at = await started()
      await pass(at, 11 * MIN)
      at.faults.push(fault)
      expect(await send(at, acid1)).toMatchObject({ ok: false, why: 'not-saved', failure: { why: fault } })
      expect(open(at)).toEqual(['acid1'])
      expect(at.session.notSaved()?.entries.map(({ event }) => event.type)).toContain('Dosed')
      await at.session.retry()
      expect(at.session.notSaved()).toBeNull()
      expect(open(at)).toEqual(['hold1'])
      expect(events(at, 'Dosed')).toHaveLength(1)
    })
  }

  it('goes on alarming for what comes next, and tries again by itself', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push(...Array.from({ length: 6 }, () => 'full' as const))
    await send(at, acid1)
    // Without a store the hold is timed all the same: its end calls for acid 2.
    at.clock.advance(20 * MIN)
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid2'])
    await pass(at, 60_000)
    expect(at.session.notSaved()).toBeNull()
    expect(open(at)).toEqual(['acid2'])
  })

  it('keeps an earlier unsaved act in front of a later one', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push('lost')
    await send(at, acid1)
    expect(await send(at, { type: 'WriteNote', text: 'cloudy' })).toMatchObject({ ok: true })
    expect(
      stored(at)
        .slice(-4)
        .map(({ event }) => event.type)
    ).toEqual(['Dosed', 'StepClosed', 'StepStarted', 'NoteWritten'])
    expect(stored(at).map(({ seq }) => seq)).toEqual(stored(at).map((_, index) => index + 1))
  })

  it('never waits with an alarm for a slow store', async () => {
    const at = await started()
    at.faults.push('crash-before')
    void send(at, { type: 'WriteNote', text: 'hangs for ever' })
    await settle()
    at.clock.advance(10 * MIN)
    expect(at.alerts.map(({ alert }) => [alert.path, alert.urgency])).toEqual([['acid1', 'now']])
    expect(open(at)).toEqual(['soak'])
  })
})

describe('a record that this version can not write', () => {
  it('opens read-only on an event it has no word for, still calls, and does not harm the other pots', async () => {
    const at = await started()
    await pass(at, 1000)
    await send(at, startCommand('moss', 'Moss'))
    const { crc: _, ...last } = stored(at).at(-1) as PotEntry
    const future = sealEntry<unknown>({ ...last, seq: last.seq + 1, event: { type: 'FromTheFuture' } })
    at.store.entries.set('future', future)
    at.session.close()
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    const before = stored(again).length
    expect(again.session.pots().map(({ readOnly }) => readOnly !== null)).toEqual([true, false])
    expect(await send(again, { type: 'WriteNote', text: 'x' })).toMatchObject({ ok: false, why: 'read-only' })
    await pass(again, 10 * MIN)
    expect(again.alerts.map(({ potId, alert }) => `${potId} ${alert.path}`)).toEqual(['plum acid1', 'moss acid1'])
    expect(stored(again)).toHaveLength(before)
    expect(stored(again, 'moss').at(-1)?.event.type).toBe('AlertRaised')
  })

  it('opens read-only when an entry was changed outside, and names the entry', async () => {
    const at = await started()
    const [key, entry] = [...at.store.entries][1] as [string, object]
    at.store.entries.set(key, { ...entry, atMs: 5 })
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    await again.session.wake()
    expect(again.session.pots()[0]?.readOnly).toMatch(/Entry 2 .*checksum/)
  })

  it('writes nothing to a record before its checksums were looked at, be it a tap or the clock', async () => {
    const at = await started()
    const [key, entry] = [...at.store.entries][1] as [string, object]
    at.store.entries.set(key, { ...entry, recordedAtMs: 5 })
    at.session.close()
    const before = stored(at).length
    const tapped = table({ clock: at.clock, store: at.store })
    await tapped.session.open()
    expect(tapped.session.pots()[0]?.readOnly).toBeNull()
    expect(await send(tapped, { type: 'WriteNote', text: 'x' })).toMatchObject({ ok: false, why: 'read-only' })
    tapped.session.close()
    at.clock.advance(11 * MIN)
    const late = table({ clock: at.clock, store: at.store })
    await late.session.open()
    expect(late.session.pots()[0]?.readOnly).toMatch(/Entry 2 .*checksum/)
    expect(stored(at)).toHaveLength(before)
  })

  it('looks at the checksums of one pot at each look at the clock, until all were', async () => {
    const at = await started()
    await send(at, startCommand('moss', 'Moss'))
    for (const [key, entry] of at.store.entries) at.store.entries.set(key, { ...(entry as object), recordedAtMs: 5 })
    at.session.close()
    const again = table({ clock: at.clock, store: at.store })
    const damaged = (): number => again.session.pots().filter(({ readOnly }) => readOnly !== null).length
    await again.session.open()
    const seen = [damaged()]
    for (let look = 0; look < 2; look++) {
      await again.session.wake()
      seen.push(damaged())
    }
    expect(seen).toEqual([0, 1, 2])
  })

  it('says that the journal can not be read, and opens when it can be again', async () => {
    const at = await started()
    const again = table({ clock: at.clock, store: at.store })
    const { live } = again.journal
    again.journal.live = () => Promise.reject(new Error('gone'))
    await again.session.open()
    expect(again.session.notSaved()?.failure).toMatchObject({ why: 'lost', say: expect.stringContaining('gone') })
    again.journal.live = live
    await pass(again, 6_000)
    expect(again.session.notSaved()).toBeNull()
    expect(open(again)).toEqual(['soak'])
  })
})

describe('a journal that could not be read at the start', () => {
  it('is tried again though a write went well meanwhile: pots that call wait in it', async () => {
    const at = await started()
    at.session.close()
    at.clock.advance(11 * MIN)
    const again = table({ clock: at.clock, store: at.store })
    const { live } = again.journal
    again.journal.live = () => Promise.reject(new Error('gone'))
    await again.session.open()
    expect(await send(again, startCommand('moss', 'Moss'))).toMatchObject({ ok: true })
    expect(again.session.notSaved()?.failure).toMatchObject({ why: 'lost' })
    again.journal.live = live
    await pass(again, 6_000)
    expect(again.session.notSaved()).toBeNull()
    expect(again.session.pots().map(({ potId }) => potId)).toEqual(['plum', 'moss'])
    expect(again.alerts.map(({ potId }) => potId)).toEqual(['plum'])
  })
})

describe('with two tabs', () => {
  it('reads again what another tab wrote, when it could not be read at once', async () => {
    const at = await started()
    const second = table({ clock: at.clock, store: at.store })
    await second.session.open()
    await pass(at, 11 * MIN)
    await send(at, acid1)
    const { read } = second.journal
    second.journal.read = () => Promise.reject(new Error('gone'))
    await second.session.refresh(['plum'])
    expect(second.session.notSaved()?.failure).toMatchObject({ why: 'lost' })
    second.journal.read = read
    await pass(second, 6_000)
    expect(second.session.notSaved()).toBeNull()
    expect(open(second)).toEqual(['hold1'])
  })

  it('what a tab that owned before stored late is carried on at once by the one that owns now', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    const now = table({ clock: at.clock, store: at.store })
    await now.session.open()
    await send(at, acid1)
    at.session.close()
    now.session.close()
    at.clock.advance(21 * MIN)
    expect(open(now)).toEqual(['acid1'])
    await now.session.refresh(['plum'])
    // The hold was over a minute ago.
    expect(open(now)).toEqual(['acid2'])
    expect(stored(at, 'plum').at(-1)?.event).toMatchObject({ type: 'AlertRaised', path: 'acid2' })
  })

  it('a tab that does not own writes nothing, raises nothing, and reads what the owner stored', async () => {
    const at = await started()
    let owner = false
    const follower = table({ clock: at.clock, store: at.store, owns: () => owner })
    await follower.session.open()
    expect(await send(follower, { type: 'WriteNote', text: 'x' })).toEqual({ ok: false, why: 'not-owner' })
    await pass(at, 11 * MIN)
    expect(follower.alerts).toEqual([])
    await send(at, acid1)
    expect(open(follower)).toEqual(['soak'])
    await follower.session.refresh(['plum'])
    expect(open(follower)).toEqual(['hold1'])
    owner = true
    await follower.session.open()
    expect(await send(follower, { type: 'WriteNote', text: 'x' })).toMatchObject({ ok: true })
  })
})
