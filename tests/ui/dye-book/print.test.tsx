// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { storedCards } from '../../../src/app/stored-cards.ts'
import { memoryKept } from '../../../src/shell/settings/kept.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { dayBounds, dayKey } from '../../../src/ui/screens/dye-book/days.ts'
import { PrintPage } from '../../../src/ui/screens/dye-book/print/index.tsx'
import { sheetsOf } from '../../../src/ui/screens/dye-book/print/places.ts'
import { bookPlace, dayRoute, printRoute, recordRoute } from '../../../src/ui/screens/dye-book/routes.ts'
import { T0 } from '../../core/pot/given.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

function open(): TestKitchen {
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries: mossFinished().entries }], nowMs: T0 })
  kitchen.skeinCards = storedCards(memoryKept())
  render(<PrintPage kitchen={kitchen} potId="pot-a" />)
  return kitchen
}

beforeEach(forgetTaps)
afterEach(() => {
  cleanup()
  vi.unstubAllGlobals()
})

describe('what is printed', () => {
  it('begins with the record, and the paper that is chosen is kept among the settings', async () => {
    const kitchen = open()
    const changed = vi.spyOn(kitchen, 'changeSettings')
    expect(await screen.findByRole('article', { name: 'Record of Moss, as it prints' })).toBeTruthy()
    fireEvent.click(screen.getByText('US Letter'))
    await waitFor(() => expect(changed).toHaveBeenCalledWith({ paper: 'letter' }))
  })

  it('is not begun in silence by a browser that can’t', async () => {
    vi.stubGlobal('print', undefined)
    open()
    fireEvent.click(await screen.findByRole('button', { name: 'Print' }))
    expect(await screen.findByText(/This browser can’t print from here/)).toBeTruthy()
  })

  it('says so where what was written for a card could not be kept, and leaves it standing', async () => {
    const kitchen = open()
    kitchen.skeinCards = {
      read: async () => null,
      keep: async () => ({ ok: false, refusal: null, say: 'Not kept: full.' })
    }
    fireEvent.click(await screen.findByText('Skein card'))
    const care = (await screen.findByLabelText('Care')) as HTMLInputElement
    fireEvent.input(care, { target: { value: 'Wash cool' } })
    expect(await screen.findByText('Not kept: full.')).toBeTruthy()
    expect(care.value).toBe('Wash cool')
    expect(screen.getByRole('article').textContent).toContain('Wash cool')
  })
})

describe('the words for skein cards', () => {
  it('are kept by batch, and what else may lie there is not taken for them', async () => {
    const kept = memoryKept()
    const cards = storedCards(kept)
    const text = { fibre: 'wool', metres: '400 m', care: 'cool', bleed: '' }
    expect(await cards.keep('a', text)).toEqual({ ok: true })
    expect([await cards.read('a'), await cards.read('b')]).toEqual([text, null])
    await kept.set('card/c', { fibre: 7, care: 'cool' })
    expect(await cards.read('c')).toEqual({ fibre: '', metres: '', care: 'cool', bleed: '' })
  })

  it('are told when they could not be stored', async () => {
    const full = { ...memoryKept(), set: () => Promise.reject(new Error('full')) }
    const sent = await storedCards(full).keep('a', { fibre: '', metres: '', care: '', bleed: '' })
    expect(sent.ok ? '' : sent.say).toContain('Not kept')
  })
})

describe('a sheet of tags', () => {
  it('has each tag once, in order, from the first place on, and never an empty sheet', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 1, max: 27 }), (count, first) => {
        const sheets = sheetsOf(count, first, 27)
        const all = sheets.flat()
        expect(sheets.every((sheet) => sheet.length === 27 && sheet.some((nth) => nth !== null))).toBe(true)
        expect(all.filter((nth) => nth !== null)).toEqual(Array.from({ length: count }, (_, i) => i))
        expect(all.indexOf(0)).toBe(first - 1)
      })
    )
  })
})

describe('the addresses of the book', () => {
  it('lead back to the same batch whatever its id, and a day is never taken for one', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), (potId) => {
        expect(bookPlace(recordRoute(potId))).toEqual({ page: 'record', potId })
        expect(bookPlace(printRoute(potId))).toEqual({ page: 'print', potId })
      })
    )
    expect(bookPlace(dayRoute('2031-06-14'))).toEqual({ page: 'day', day: '2031-06-14' })
    expect(bookPlace(recordRoute('day:2031-06-14'))).toEqual({ page: 'record', potId: 'day:2031-06-14' })
    expect(bookPlace('#/dye-book')).toEqual({ page: 'list' })
    expect(bookPlace('#/dye-book/%E0%A4%A')).toEqual({ page: 'record', potId: '%E0%A4%A' })
  })

  it('a day goes from its midnight to the next, and holds its own moments', () => {
    const { fromMs, toMs } = dayBounds('2031-06-14')
    expect([dayKey(fromMs), dayKey(toMs - 1), dayKey(toMs)]).toEqual(['2031-06-14', '2031-06-14', '2031-06-15'])
  })
})
