import { describe, expect, it } from 'vitest'
import { fold } from '../../src/core/pot/fold.ts'
import { readEntries } from '../../src/core/pot/read-entry.ts'
import { events, MIN, open, pass, send, startCommand, started, stored, table } from './kitchen-table.ts'

const acid1 = { type: 'MarkDone', path: 'acid1' } as const

describe('what the dyer says is stored before it is shown', () => {
  it('shows a pot only when its start is in the journal, and leaves a line for the Dye book', async () => {
    const at = table()
    await at.session.open()
    const sent = send(at, startCommand())
    expect(at.session.pots()).toEqual([])
    expect(await sent).toMatchObject({ ok: true })
    expect(open(at)).toEqual(['soak'])
    expect(await at.journal.live()).toMatchObject([{ potId: 'plum', status: 'running', entries: stored(at).length }])
  })

  it('keeps an unbroken count: the stored journal folds to the state on the screen', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    await send(at, acid1)
    await pass(at, 25 * MIN)
    const { entries, damaged } = readEntries(await at.journal.read('pot/plum'))
    expect(damaged).toEqual([])
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, at) => at + 1))
    expect(entries.every(({ after }, at) => (after?.seq ?? 0) === at)).toBe(true)
    expect(fold(entries)).toEqual(at.session.pots()[0]?.state)
  })

  it('does nothing a second time for a repeated command, whether it comes at once or after a restart', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    const [first, second] = await Promise.all([
      send(at, acid1, { commandId: 'tap' }),
      send(at, acid1, { commandId: 'tap' })
    ])
    expect(first.ok && second.ok).toBe(true)
    expect(events(at, 'Dosed')).toHaveLength(1)
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    expect(await send(again, acid1, { commandId: 'tap' })).toMatchObject({ ok: true })
    expect(events(again, 'Dosed')).toHaveLength(1)
  })

  it('takes the time of the tap, not that of its turn: a slow store makes nobody late', async () => {
    const at = await started()
    await pass(at, 10 * MIN)
    at.faults.push({ slowMs: 5 })
    const tappedAtMs = at.clock.nowMs()
    const slow = send(at, { type: 'WriteNote', text: 'steam' })
    const sent = send(at, acid1)
    at.clock.advance(60_000)
    await Promise.all([slow, sent])
    expect(stored(at).find(({ event }) => event.type === 'Dosed')?.atMs).toBe(tappedAtMs)
  })

  it('says what is wrong with a command that is refused, and stores nothing of it', async () => {
    const at = await started()
    const before = stored(at).length
    expect(await send(at, acid1)).toMatchObject({ ok: false, why: 'refused', refusal: { code: 'step-not-open' } })
    expect(stored(at)).toHaveLength(before)
  })

  it('writes the acid for one pot that went into another into both records or into neither', async () => {
    const at = await started()
    await send(at, startCommand('moss', 'Moss'))
    const amount = { value: 30, unit: 'mL', of: 'vinegar', asEntered: '30 mL' } as const
    const both = (): ReturnType<typeof at.session.sendBoth> =>
      at.session.sendBoth(
        { potId: 'plum', command: { type: 'ReportAddedElsewhere', path: null, amount, toPotId: 'moss' } },
        { potId: 'moss', command: { type: 'AddUnplanned', amount, fromPotId: 'plum' } },
        { by: { kind: 'person', name: null, via: 'tap' } }
      )
    at.faults.push('crash-before')
    void both()
    await new Promise((resolve) => setTimeout(resolve, 5))
    expect([stored(at), stored(at, 'moss')].flat().filter(({ event }) => /Dose/.test(event.type))).toEqual([])
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    const sent = await again.session.sendBoth(
      { potId: 'plum', command: { type: 'ReportAddedElsewhere', path: null, amount, toPotId: 'moss' } },
      { potId: 'moss', command: { type: 'AddUnplanned', amount, fromPotId: 'plum' } },
      { by: { kind: 'person', name: null, via: 'tap' } }
    )
    expect(sent.ok && sent.entries.map(({ streamId, event }) => `${streamId} ${event.type}`)).toEqual([
      'pot/plum DoseWentElsewhere',
      'pot/moss Dosed'
    ])
  })

  it('takes a note to a batch that ended, read from the journal when it is wanted', async () => {
    const at = await started()
    await send(at, { type: 'Abort', reason: 'test' })
    const next = table({ clock: at.clock, store: at.store })
    await next.session.open()
    expect(next.session.pots()).toEqual([])
    expect(await send(next, { type: 'WriteNote', text: 'dried even' })).toMatchObject({ ok: true })
    expect(events(next, 'NoteWritten')).toHaveLength(1)
    expect(await next.journal.live()).toEqual([])
  })

  it('starts no pot twice, though it ended and a restored store writes under another name', async () => {
    const at = await started()
    await send(at, { type: 'Abort', reason: 'test' })
    const count = stored(at).length
    const next = table({ clock: at.clock, store: at.store, writerId: 'w2' })
    await next.session.open()
    expect(await send(next, startCommand())).toMatchObject({ ok: false, why: 'refused' })
    expect(stored(next)).toHaveLength(count)
  })

  it('takes back the latest act as if it had not been, also after a restart', async () => {
    const at = await started()
    await pass(at, 11 * MIN)
    const before = at.session.pots()[0]?.state
    await send(at, acid1)
    await send(at, { type: 'Undo' })
    expect(open(at)).toEqual(['acid1'])
    expect(at.session.pots()[0]?.state).toMatchObject({ doses: [], ended: (before as { ended: object }).ended })
    const again = table({ clock: at.clock, store: at.store })
    await again.session.open()
    expect(again.session.pots()[0]?.state).toEqual(at.session.pots()[0]?.state)
  })
})
