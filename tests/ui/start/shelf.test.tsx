// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { draftFrom, draftOf, dropDraft, keepDraft } from '../../../src/ui/parts/start-draft.ts'
import { StartScreen } from '../../../src/ui/screens/start/index.tsx'
import type { KitchenShelf, OnShelf } from '../../../src/ui/shelf.ts'
import { stockAt } from '../../core/shelf/on-shelf.ts'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { noon } from '../stove/fixtures.ts'
import { dip } from './dip.ts'

const twelve = stockAt('y12', { lot: '12' }, { left: 50, free: 30 })
const thirteen = stockAt('y13', { lot: '13', madeOn: '2031-06-10' }, { left: 100, free: 100 })
const ownPot: OnShelf = {
  ...twelve,
  item: {
    ...twelve.item,
    itemId: 'pot',
    thing: { kind: 'pot', name: 'Tall pot', volumeML: 3000, material: 'steel', lid: true, note: '' }
  },
  level: null
}

async function open(things: OnShelf[] = [twelve, thirteen, ownPot]): Promise<TestKitchen> {
  const kitchen = aKitchen({ protocols: [dip()], nowMs: noon })
  kitchen.beforeTheHeat = async () => [{ what: 'sound', ok: true, say: 'Sound ready' }]
  await kitchen.changeSettings({ loudnessTried: true })
  const shelf = { things: signal(things), broken: signal([]), unread: signal(null) } as unknown as KitchenShelf
  kitchen.shelf = async () => shelf
  render(<StartScreen kitchen={kitchen} protocolId="dip" />)
  await screen.findByLabelText('stock Y from the shelf')
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const shorts = (): string => plain(document.querySelector('[data-code="short"]')?.textContent)
const bench = (): string => plain(document.querySelector('.start-bench')?.textContent)
const type = (label: string, value: string): void => {
  fireEvent.input(screen.getByLabelText(label), { target: { value } })
}
const choose = (label: string, value: string): void => {
  fireEvent.change(screen.getByLabelText(label), { target: { value } })
}
const press = (name: RegExp): void => {
  forgetTaps()
  fireEvent.click(screen.getByRole('button', { name: (found) => name.test(plain(found)) }))
}
const stock = (id = 'y12'): void => choose('stock Y from the shelf', id)

/** 0.8 % owf on 47.5 g out of 1 %: 38 mL, of which lot 12 has 30 free. */
async function short(): Promise<TestKitchen> {
  const kitchen = await open()
  type('Colourway', 'Plum')
  type('Dry weight', '47.5')
  stock()
  return kitchen
}

beforeEach(() => {
  forgetTaps()
  dropDraft('dip')
})
afterEach(cleanup)

describe('a bottle from the shelf', () => {
  it('brings its name, strength and lot to the bench, and hides what would be typed', async () => {
    await open()
    type('Dry weight', '25')
    stock()
    expect(document.getElementById('start-bottle-stock Y-percent')).toBeNull()
    expect(bench()).toContain('20 mL of stock Y')
    expect(bench()).toContain('from stock Y, lot 12')
    expect(shorts()).toBe('')
  })

  it('is chosen by its label: strength, day it was made, and what is free beside the pots on the stove', async () => {
    await open()
    const options = [...document.querySelectorAll('[id="start-bottle-stock Y-shelf-0"] option')].map((o) =>
      plain(o.textContent)
    )
    expect(options).toEqual([
      'Not on the shelf',
      'stock Y, lot 12: 30 mL free, 1 % w/v, made 2031-06-01',
      'stock Y, lot 13: 100 mL free, 1 % w/v, made 2031-06-10'
    ])
  })

  it('that holds too little is told in mL', async () => {
    await short()
    expect(shorts()).toContain('Plum is 8 mL of stock Y short: 38 mL wanted, 30 mL free.')
    expect(shorts()).toContain('New stock, scale, or a different one.')
  })

  it('is joined by another lot: two lines on the bench that come to the dose, and both in what the pot keeps', async () => {
    const kitchen = await short()
    press(/^The rest from stock Y, lot 13/)
    expect(shorts()).toBe('')
    expect(bench()).toContain('38 mL of stock Y')
    expect(bench()).toContain('30 mL from lot 12')
    expect(bench()).toContain('8 mL from lot 13')
    forgetTaps()
    fireEvent.click(screen.getByText('Start'))
    const go = await screen.findByText('Start all the same')
    forgetTaps()
    fireEvent.click(go)
    await expect.poll(() => kitchen.started).toHaveLength(1)
    const started = kitchen.started[0]
    const kept = started?.programme.given?.materials['stock Y']?.shelf
    expect(kept?.map(({ itemId, upTo }) => [itemId, upTo])).toEqual([
      ['y12', 30],
      ['y13', null]
    ])
    // The same again begins with the same bottles.
    if (started) keepDraft('dip', draftFrom({ ...started.pot }, started.programme))
    expect(draftOf('dip')?.bottles['stock Y']?.shelf).toEqual(['y12', 'y13'])
  })

  it('does for goods that are made lighter', async () => {
    await short()
    press(/^Dye 3\d(\.\d)? g/)
    expect(shorts()).toBe('')
    expect(Number.parseFloat((document.getElementById('start-mass-0') as HTMLInputElement).value)).toBeLessThanOrEqual(
      37.5
    )
    expect(bench()).toContain('30 mL of stock Y')
  })

  it('is left for a different one by its field, and for a new stock by the shelf', async () => {
    const kitchen = await short()
    press(/^A different one/)
    expect(document.activeElement?.id).toBe('start-bottle-stock Y-shelf-0')
    stock('y13')
    expect(shorts()).toBe('')
    stock('y12')
    press(/^New stock/)
    expect(kitchen.route.value).toBe('#/shelf/make/dip/stock%20Y/8')
    expect(draftOf('dip')?.colourway).toBe('Plum')
  })

  it('that is gone since is told at its field, and the pot does not start', async () => {
    const kitchen = await open([thirteen])
    type('Dry weight', '25')
    stock('y13')
    cleanup()
    kitchen.shelf = async () => ({ things: signal([twelve]), unread: signal(null) }) as unknown as KitchenShelf
    render(<StartScreen kitchen={kitchen} protocolId="dip" />)
    await screen.findByLabelText('stock Y from the shelf')
    await screen.findByText(/lot 12/)
    forgetTaps()
    fireEvent.click(screen.getByText('Start'))
    expect(plain(document.body.textContent)).toContain('is not on the shelf any more')
    expect(kitchen.started).toEqual([])
  })
})

describe('a lot of another strength', () => {
  it('gives by its own strength: 8 mL of 1 % are 16 mL of 0.5 %', async () => {
    await open([twelve, stockAt('weak', { lot: '14', percentWV: 0.5 }, { left: 100, free: 100 })])
    type('Dry weight', '47.5')
    stock()
    press(/^The rest from stock Y, lot 14/)
    expect(bench()).toContain('46 mL of stock Y')
    expect(bench()).toContain('30 mL from lot 12')
    expect(bench()).toContain('16 mL from lot 14')
  })
})

describe('a pot from the shelf', () => {
  it('brings its size to the numbers, and the record keeps that it was used', async () => {
    const kitchen = await open()
    type('Dry weight', '47.5')
    choose('Pot from the shelf', 'pot')
    expect((document.getElementById('start-pot-holds') as HTMLInputElement).value).toBe('3000 mL')
    forgetTaps()
    fireEvent.click(screen.getByText('Start'))
    const go = await screen.findByText('Start all the same')
    forgetTaps()
    fireEvent.click(go)
    await expect.poll(() => kitchen.started).toHaveLength(1)
    expect(kitchen.started[0]?.pot.uses).toEqual([
      { kind: 'pot', itemId: 'pot', name: 'Tall pot', lot: '', about: '3000 mL, steel, with a lid' }
    ])
  })
})
