// @vitest-environment happy-dom
import { cleanup, fireEvent, waitFor, within } from '@testing-library/preact'
import { describe, expect, it } from 'vitest'
import type { FixtureKitchen } from './fixtures.ts'
import { noon } from './fixtures.ts'
import { atTheStove, call, type Journal, open, openWith, sent, settle, sheet, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

describe('more', () => {
  async function deed(name: string, ...journals: Journal[]): Promise<FixtureKitchen> {
    const kitchen = await open(...journals)
    await tap(/: more$/)
    await tap(name, sheet())
    return kitchen
  }

  it('reads pH in the strip’s own steps, between two, or not at all', async () => {
    const kitchen = await deed('Read pH', made.moss())
    await tap('between', sheet())
    await tap('4.5 – 5', sheet())
    expect(sent(kitchen)).toEqual([{ type: 'ReadPh', reading: { kind: 'between', low: 4.5, high: 5 } }])
    cleanup()
    const other = await deed('Read pH', made.moss())
    await tap(/Stained/, sheet())
    expect(sent(other)).toEqual([{ type: 'ReadPh', reading: { kind: 'unreadable' } }])
  })

  it('tells both pots of a cup that went into the wrong one', async () => {
    const kitchen = await open(made.heather(), made.moss())
    await tap('Heather mist on grey: more')
    await tap('Cup went into another pot', sheet())
    await tap('Moss', sheet())
    expect(sent(kitchen).map((c) => c.type)).toEqual(['ReportAddedElsewhere', 'AddUnplanned'])
  })

  it('takes another amount than the planned one, where the call has no room for it', async () => {
    const kitchen = await open(made.mossLate())
    await tap(/: more$/, call())
    await tap('Other amount', sheet())
    await tap('10 less', sheet())
    await tap('Acid: 20 mL', sheet())
    expect(sent(kitchen)).toMatchObject([{ type: 'MarkDone', path: 'A2', added: { value: 20, unit: 'mL' } }])
  })

  describe('for who measures in cups', () => {
    const inCups = (kitchen: FixtureKitchen): void => void kitchen.changeSettings({ volume: 'us' })

    it('asks for the water in them', async () => {
      const kitchen = await openWith(inCups, [made.moss()])
      await tap(/: more$/)
      await tap('Topped up', sheet())
      expect(text(sheet())).toContain('0.75 US cups')
      await tap('Water added: 0.25 more', sheet())
      expect(text(sheet())).toContain('1 US cup+')
      await tap('Water added: 1 more', sheet())
      expect(text(sheet())).toContain('2 US cups')
      await tap('Topped up', sheet())
      expect(sent(kitchen)).toMatchObject([{ type: 'TopUp', volumeML: 2 * 236.5882365 }])
    })

    it('shows a cup that went elsewhere in them, and tells of it whole if nothing else is said', async () => {
      const kitchen = await openWith(inCups, [made.heather(), made.moss()])
      await tap('Heather mist on grey: more')
      await tap('Cup went into another pot', sheet())
      expect(text(sheet())).not.toContain('mL')
      await tap('Moss', sheet())
      // 30 mL, to the letter: there and back again it would wander.
      expect(sent(kitchen)[0]).toMatchObject({ path: 'A1', amount: { value: 30, asEntered: '30 mL' } })
    })
  })

  it('stops the procedure, and the bath says that it goes on dyeing', async () => {
    const kitchen = await deed('Stop the procedure', made.moss())
    await tap('Stop the procedure', sheet())
    expect(sent(kitchen)).toEqual([{ type: 'Hold', reason: null }])
    await waitFor(() => expect(text(document.querySelector('.bath'))).toContain('Stopped, still dyeing'))
  })

  it.each([
    ['Topped up', 'Topped up', { type: 'TopUp', volumeML: 200 }],
    ['Done early', 'End it now', { type: 'EndEarly', path: 'stay', reason: 'judged by eye' }],
    ['Skip the step', 'Skip it', { type: 'Skip', path: 'stay' }],
    ['Once more', 'Do it once more', { type: 'DoOnceMore', path: 'A1' }],
    ['Skeins in', 'Moss: skeins are in', { type: 'PutSkeinsIn' }],
    ['Skeins out', 'Moss: skeins are out', { type: 'TakeSkeinsOut' }],
    ['Added, not planned', 'It is in', { type: 'AddUnplanned', amount: { value: 10, unit: 'mL', of: 'acid' } }]
  ] as const)('%s is sent as it was said', async (name, pad, command) => {
    const kitchen = await deed(name, made.moss())
    await tap(pad, sheet())
    expect(sent(kitchen)).toMatchObject([command])
    await waitFor(() => expect(sheet()).toBeNull())
  })

  it('moves a time by minutes, with a reason', async () => {
    const kitchen = await deed('Move its time', made.moss())
    await tap('10 min later', sheet())
    await tap('Move it', sheet())
    expect(sent(kitchen)).toMatchObject([{ type: 'MoveDeadline', path: 'stay', dueAtMs: noon + 438_000 + 600_000 }])
  })

  it('ends a batch by press and hold only', async () => {
    const kitchen = await deed('End the batch', made.moss())
    await tap('spoiled', sheet())
    await tap(/end the batch/, sheet())
    expect(sent(kitchen)).toEqual([])
    fireEvent.keyDown(within(sheet()).getByRole('button', { name: /end the batch/ }), { key: 'Enter' })
    await new Promise((done) => setTimeout(done, 750))
    await settle()
    expect(sent(kitchen)).toEqual([{ type: 'Abort', reason: 'spoiled' }])
  })
})
