import { describe, expect, it } from 'vitest'
import type { PotEntry } from '../../src/session/ports.ts'
import { type HandClock, handClock } from '../../src/shell/clock/hand-clock.ts'
import { events, MIN, open, pass, send, startCommand, started, stored, T0, table } from './kitchen-table.ts'

/** The same clocks in a page that hears of no tick until it is woken: `boot` names the page. */
const frozenFor = (clock: HandClock, boot: number): HandClock => ({
  ...clock,
  bootId: `boot-${boot}`,
  onTick: () => () => {}
})

const isShift = ({ event }: PotEntry): boolean => event.type === 'ClockShifted'

const dueOf = (at: Awaited<ReturnType<typeof started>>): number => {
  const state = at.session.pots()[0]?.state
  if (state === undefined || state.status === 'idle') throw new Error('no pot')
  return ((state.active[0]?.dueAtMs ?? 0) - at.clock.nowMs()) / MIN
}

describe('the clock calls', () => {
  it('writes down an alert once, at its time, and lets it stand until it is answered', async () => {
    const at = await started()
    await pass(at, 12 * MIN)
    const calls = events(at, 'AlertRaised').filter(({ kind }) => kind === 'call')
    expect(calls).toHaveLength(1)
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    expect(again.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    await send(again, { type: 'MarkDone', path: 'acid1' })
    expect(again.alerts).toEqual([])
    await pass(again, MIN)
    expect(events(again, 'AlertRaised').filter(({ kind }) => kind === 'call')).toHaveLength(1)
  })

  it('catches up after a sleep to the very journal it would have written awake', async () => {
    const awake = await started()
    await pass(awake, 45 * MIN)
    const slept = await started()
    slept.clock.sleep(45 * MIN)
    await slept.session.wake()
    const told = (at: typeof awake): unknown[] => stored(at).map(({ atMs, by, event }) => ({ atMs, by, event }))
    expect(told(slept)).toEqual(told(awake))
    expect(slept.session.pots()[0]?.state).toMatchObject({ active: [{ path: 'acid1' }] })
  })

  it('passes a moment before a tap that was quicker than the tick', async () => {
    const at = await started()
    await pass(at, 10 * MIN - 100)
    at.clock.creep(300)
    expect(await send(at, { type: 'MarkDone', path: 'acid1' })).toMatchObject({ ok: true })
    expect(open(at)).toEqual(['hold1'])
    expect(stored(at).map(({ atMs }) => atMs)).toEqual(
      stored(at)
        .map(({ atMs }) => atMs)
        .sort((a, b) => a - b)
    )
  })

  it('says first what was missed while the app was closed, by how much, and what lateness does', async () => {
    const at = await started()
    at.session.close()
    at.clock.advance(25 * MIN)
    const again = table({ clock: at.clock, store: at.store })
    expect(await again.session.open()).toEqual([
      {
        potId: 'plum',
        colourway: 'Plum',
        path: 'acid1',
        what: 'acid1',
        dueAtMs: T0 + 10 * MIN,
        byMs: 15 * MIN,
        late: 'What follows moves by the lateness.'
      }
    ])
    again.session.dismissMissed()
    expect(again.session.missed()).toEqual([])
  })

  it('calls nothing missed that was told in time', async () => {
    const at = await started()
    await pass(at, 12 * MIN)
    expect(at.session.missed()).toEqual([])
  })
})

describe('the clock was set', () => {
  it('back: the open deadline comes after the same real time, and the journal says so', async () => {
    const at = await started()
    await pass(at, 4 * MIN)
    at.clock.set(-60 * MIN)
    await at.session.wake()
    expect(dueOf(at)).toBe(6)
    expect(events(at, 'ClockShifted')).toEqual([{ type: 'ClockShifted', byMs: -60 * MIN }])
    expect(at.session.jump()).toBeNull()
    await pass(at, 6 * MIN)
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    expect(await send(at, { type: 'MarkDone', path: 'acid1' })).toMatchObject({ ok: true })
  })

  it('back, with the answer to that write lost: it moves once, and stands in the record by the old time', async () => {
    const at = await started()
    await pass(at, 4 * MIN)
    const append = at.journal.append
    at.journal.append = async (entries, summaries) => {
      at.journal.append = append
      await append(entries, summaries)
      return { ok: false, why: 'lost', say: 'no answer' }
    }
    at.clock.set(-60 * MIN)
    await at.session.wake()
    await at.session.retry()
    expect(events(at, 'ClockShifted')).toHaveLength(1)
    expect(dueOf(at)).toBe(6)
    const shift = stored(at).find(({ event }) => event.type === 'ClockShifted')
    expect([shift?.atMs, shift?.recordedAtMs]).toEqual([T0 + 4 * MIN, T0 - 56 * MIN])
    expect(at.session.pots()[0]?.state).toMatchObject({ lastAtMs: T0 - 56 * MIN })
  })

  it('back while a call stands: the call goes on sounding, even with a store that hangs', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    at.faults.push('crash-before')
    void send(at, { type: 'WriteNote', text: 'hangs' })
    at.clock.set(-60 * MIN)
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    at.clock.advance(1000)
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
  })

  it('back by two seconds or less: that is drift, nothing moves', async () => {
    const at = await started()
    at.clock.set(-2000)
    await pass(at, 1000)
    expect(events(at, 'ClockShifted')).toEqual([])
  })

  it('forward: presumes that time passed, calls, and asks; declared, what is open moves on', async () => {
    const at = await started()
    await pass(at, 4 * MIN)
    at.clock.set(30 * MIN)
    await at.session.wake()
    expect(at.alerts.map(({ alert }) => alert.path)).toEqual(['acid1'])
    expect(at.session.jump()).toMatchObject({ byMs: 30 * MIN })
    await at.session.declareClockSet()
    expect(at.session.jump()).toBeNull()
    expect(events(at, 'ClockShifted')).toEqual([{ type: 'ClockShifted', byMs: 30 * MIN }])
    // Acid 1 was due 10 min after the start; 4 of them have passed.
    expect(dueOf(at)).toBe(6)
    expect(at.alerts).toEqual([])
  })

  it('forward and declared only after an act on one pot: that pot goes on by the new clock, the others move', async () => {
    const at = await started()
    await pass(at, 1_000)
    await send(at, startCommand('moss', 'Moss'))
    await pass(at, 4 * MIN)
    at.clock.set(30 * MIN)
    await send(at, { type: 'MarkDone', path: 'acid1' })
    expect(dueOf(at)).toBe(20)
    expect(at.session.jump()).toMatchObject({ byMs: 30 * MIN })
    await at.session.declareClockSet()
    expect(dueOf(at)).toBe(20)
    expect([stored(at), stored(at, 'moss')].map((entries) => entries.filter(isShift).length)).toEqual([0, 1])
  })

  it('forward, and acted on in every pot since: the time is taken to have passed, and nobody is asked', async () => {
    const at = await started()
    await pass(at, 4 * MIN)
    at.clock.set(30 * MIN)
    await send(at, { type: 'MarkDone', path: 'acid1' })
    expect(at.session.jump()).toBeNull()
  })

  it('forward and undeclared: dismissing the question leaves all deadlines as they are', async () => {
    const at = await started()
    at.clock.set(5 * MIN)
    await at.session.wake()
    at.session.dismissJump()
    expect(at.session.jump()).toBeNull()
    expect(dueOf(at)).toBe(5)
  })

  it('asks after a reload with the clock behind the last entry, and moves only when told', async () => {
    const at = await started()
    await pass(at, 5 * MIN)
    await send(at, { type: 'WriteNote', text: 'five minutes in' })
    at.session.close()
    const behind = table({ clock: handClock(T0 - 55 * MIN, { bootId: 'boot-2' }), store: at.store })
    await behind.session.open()
    expect(behind.session.jump()).toMatchObject({ byMs: -60 * MIN })
    expect(events(behind, 'ClockShifted')).toEqual([])
    await behind.session.declareClockSet()
    expect(dueOf(behind)).toBe(5)
  })

  it('asks again after the next reload, though something was written by the new clock meanwhile', async () => {
    const at = await started()
    await pass(at, 70 * MIN)
    await send(at, { type: 'WriteNote', text: 'seventy minutes in' })
    at.session.close()
    const clock = handClock(T0 + 10 * MIN, { bootId: 'boot-2' })
    const behind = table({ clock, store: at.store })
    await behind.session.open()
    await send(behind, { type: 'WriteNote', text: 'by the new clock' })
    behind.session.close()
    const again = table({ clock, store: at.store })
    await again.session.open()
    expect(again.session.jump()).toMatchObject({ byMs: -60 * MIN })
    await again.session.declareClockSet()
    const third = table({ clock, store: at.store })
    await third.session.open()
    expect(third.session.jump()).toBeNull()
  })

  it('twice: each pot moves by the jumps since its own start only', async () => {
    const at = await started()
    at.clock.set(30 * MIN)
    await at.session.wake()
    await send(at, startCommand('moss', 'Moss'))
    at.clock.set(7 * MIN)
    await at.session.wake()
    expect(at.session.jump()).toMatchObject({ byMs: 37 * MIN })
    await at.session.declareClockSet()
    const shifts = (potId: string): unknown[] =>
      stored(at, potId).flatMap(({ event }) => (event.type === 'ClockShifted' ? [event.byMs / MIN] : []))
    expect([shifts('plum'), shifts('moss')]).toEqual([[37], [7]])
    expect(await send(at, { type: 'WriteNote', text: 'goes on' })).toMatchObject({ ok: true })
  })

  it('forward and put right again before anybody answered: there is nothing left to ask', async () => {
    const at = await started()
    at.clock.set(30 * MIN)
    at.clock.set(-30 * MIN)
    await at.session.wake()
    expect(at.session.jump()).toBeNull()
  })

  it('forward and answered in one tab: the other neither asks nor moves the pot once more', async () => {
    const at = await started()
    let owner = false
    const second = table({ clock: at.clock, store: at.store, owns: () => owner })
    await second.session.open()
    at.clock.set(30 * MIN)
    await at.session.wake()
    await at.session.declareClockSet()
    expect(second.session.jump()).toBeNull()
    await second.session.declareClockSet()
    at.session.close()
    owner = true
    await second.session.open()
    expect(second.session.jump()).toBeNull()
    await second.session.declareClockSet()
    expect(events(second, 'ClockShifted')).toHaveLength(1)
  })

  it('back while a second tab opens and the shift is not stored yet: no tab moves the pots once more', async () => {
    const at = await started()
    await pass(at, 5 * MIN)
    await send(at, { type: 'WriteNote', text: 'five minutes in' })
    at.faults.push('lost')
    at.clock.set(-60 * MIN)
    await at.session.wake()
    let owner = false
    const second = table({ clock: at.clock, store: at.store, owns: () => owner })
    await second.session.open()
    await at.session.retry()
    await second.session.refresh(['plum'])
    owner = true
    expect(second.session.jump()).toBeNull()
    await second.session.declareClockSet()
    expect(events(at, 'ClockShifted')).toEqual([{ type: 'ClockShifted', byMs: -60 * MIN }])
    expect(dueOf(second)).toBe(5)
  })

  it('back while the journal can not be read: nothing moves until it is, then every pot once when told', async () => {
    const at = await started()
    await pass(at, 1000)
    await send(at, startCommand('moss', 'Moss'))
    await pass(at, 5 * MIN)
    await send(at, { type: 'WriteNote', text: 'five minutes in' })
    at.session.close()
    const again = table({ clock: at.clock, store: at.store })
    const { live } = again.journal
    again.journal.live = () => Promise.reject(new Error('gone'))
    await again.session.open()
    await send(again, startCommand('moss', 'Moss'))
    again.clock.set(-60 * MIN)
    await again.session.wake()
    again.journal.live = live
    await pass(again, 6_000)
    expect(events(again, 'ClockShifted')).toEqual([])
    await again.session.declareClockSet()
    expect([stored(again), stored(again, 'moss')].map((entries) => entries.filter(isShift).length)).toEqual([1, 1])
  })

  it('back while a tab can not store its shift and is opened again: it asks for no second one', async () => {
    const at = await started()
    await pass(at, 5 * MIN)
    await send(at, { type: 'WriteNote', text: 'five minutes in' })
    at.faults.push('full')
    at.clock.set(-60 * MIN)
    await at.session.wake()
    await at.session.open()
    expect(at.session.jump()).toBeNull()
    expect(events(at, 'ClockShifted')).toHaveLength(1)
    expect(dueOf(at)).toBe(5)
  })

  it('back while this tab was frozen and another shifted: it moves nothing once more when it wakes', async () => {
    const at = await started()
    await pass(at, 5 * MIN)
    const frozen = table({ clock: frozenFor(at.clock, 2), store: at.store })
    await frozen.session.open()
    at.clock.set(-60 * MIN)
    await at.session.wake()
    at.session.close()
    await frozen.session.open()
    at.clock.advance(1000)
    await frozen.session.wake()
    expect(events(at, 'ClockShifted')).toHaveLength(1)
    expect(dueOf(frozen)).toBe(5 - 1 / 60)
  })

  it('back after a tap that is stored only when another tab has shifted: the tap moves with its pot', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    const slow = table({ clock: frozenFor(at.clock, 2), store: at.store })
    await slow.session.open()
    slow.faults.push('lost')
    expect(await send(slow, { type: 'MarkDone', path: 'acid1' })).toMatchObject({ ok: false, why: 'not-saved' })
    at.clock.set(-30 * MIN)
    await at.session.wake()
    await slow.session.retry()
    const tap = stored(at).find(({ event }) => event.type === 'Dosed')
    expect([tap?.atMs, tap?.recordedAtMs]).toEqual([at.clock.nowMs(), at.clock.nowMs()])
    // The hold of 20 min began with it.
    expect(dueOf(slow)).toBe(20)
  })

  it('does not move a pot that was started after the jump', async () => {
    const at = table()
    await at.session.open()
    at.clock.set(30 * MIN)
    await at.session.wake()
    await send(at, startCommand())
    await at.session.declareClockSet()
    expect(dueOf(at)).toBe(10)
    expect(open(at)).toEqual(['soak'])
  })
})
