// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { about } from '../../../src/core/chemistry/index.ts'
import type { Settings } from '../../../src/ui/kitchen.ts'
import Sums from '../../../src/ui/screens/sums/index.tsx'
import { sums } from '../../../src/ui/screens/sums/sums.ts'
import { forgetTyped } from '../../../src/ui/screens/sums/typed.ts'
import { fixtureKitchen } from '../stove/fixtures.ts'

type Given = { id?: string; settings?: Partial<Settings>; copy?: (text: string) => Promise<boolean> }

function open({ id = '', settings = {}, copy }: Given): ReturnType<typeof render> {
  const kitchen = fixtureKitchen([], 0)
  const all = { ...kitchen.settings.value, ...settings }
  return render(
    <Sums
      kitchen={{
        route: signal(`#/shelf/sums${id === '' ? '' : `/${id}`}`),
        settings: signal(all),
        sharing: signal(copy ? { copy, paste: null, share: null } : null)
      }}
    />
  )
}

const field = (label: string): HTMLInputElement => screen.getByLabelText(label)
const type = (label: string, text: string): void => {
  fireEvent.input(field(label), { target: { value: text } })
}
const leave = (label: string): void => {
  fireEvent.change(field(label))
}
const answer = (): string => (document.querySelector('.sum-head')?.textContent ?? '').replaceAll('\u00a0', ' ')

beforeEach(() => vi.useFakeTimers())
afterEach(() => {
  cleanup()
  vi.useRealTimers()
  for (const { id } of sums) forgetTyped(id)
})

describe('the list', () => {
  it('leads to every sum, and narrows to what is looked for', () => {
    open({})
    const links = (): (string | null)[] =>
      screen
        .queryAllByRole('link')
        .map((link) => link.getAttribute('href'))
        .filter((to) => to !== '#/shelf')
    expect(links()).toEqual(sums.map(({ id }) => `#/shelf/sums/${id}`))
    type('Find', 'regain')
    expect(links()).toEqual(['dry-weight', 'regain', 'moisture'].map((id) => `#/shelf/sums/${id}`))
    type('Find', 'zebra')
    expect(links()).toEqual([])
    expect(screen.getByText(/No sum answers to “zebra”/)).toBeTruthy()
  })

  it('says so where an address names no sum', () => {
    open({ id: 'nonsense' })
    expect(screen.getByRole('alert').textContent).toMatch(/No sum is called “nonsense”/)
  })
})

describe('one sum', () => {
  it.each(sums)(
    '$id is drawn by the form, every field with its label, formula and source folded',
    ({ id, title, fields, uses }) => {
      open({ id })
      expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(title)
      const named = [...document.querySelectorAll<HTMLInputElement>('.sum-form :is(input, select)')]
      expect(named.length).toBeGreaterThan(0)
      for (const each of named) expect(each.labels?.[0]?.textContent || each.getAttribute('aria-label')).toBeTruthy()
      for (const each of Object.values(fields))
        if (!each.when) expect(screen.getAllByText(each.label).length).toBeGreaterThan(0)
      const how = document.querySelector('details')
      expect(how?.open).toBe(false)
      for (const name of uses) expect(how?.textContent).toContain(about[name].source)
    }
  )

  it('is worked out with each letter, and says what is missing until then', () => {
    open({ id: 'stock' })
    expect(answer()).toBe('Still wanted: dry weight of the goods, depth of shade.')
    type('Dry weight of the goods', '5')
    expect(answer()).toBe('Still wanted: depth of shade.')
    type('Depth of shade', '1')
    expect(answer()).toMatch(/^Stock5 mL/)
    type('Dry weight of the goods', '50')
    expect(answer()).toMatch(/^Stock50 mL/)
    expect(screen.getByText('50 g × 1 ÷ 1 = 50 mL of stock')).toBeTruthy()
  })

  it('leaves half a number alone while it is typed, and tells what is wrong when the fingers rest or leave', () => {
    open({ id: 'stock' })
    type('Dry weight of the goods', '50 fu')
    expect(screen.queryByRole('alert')).toBeNull()
    expect(answer()).toBe('Not worked out yet. Look at: dry weight of the goods.')
    vi.advanceTimersByTime(5_000)
    return Promise.resolve().then(() => {
      expect(screen.getByRole('alert').textContent).toMatch(/“50 fu” can’t be read/)
      expect(field('Dry weight of the goods').getAttribute('aria-invalid')).toBe('true')
      type('Dry weight of the goods', '50 fur')
      expect(screen.queryByRole('alert')).toBeNull()
      leave('Dry weight of the goods')
      expect(screen.getByRole('alert').textContent).toMatch(/“50 fur” can’t be read/)
    })
  })

  it('takes the unit chosen beside the field, or typed into it', () => {
    open({ id: 'stock' })
    type('Depth of shade', '1')
    type('Dry weight of the goods', '2')
    const unit = (): HTMLSelectElement => screen.getByLabelText('Unit of Dry weight of the goods')
    fireEvent.change(unit(), { target: { value: 'oz' } })
    expect(answer()).toMatch(/^Stock56.7 mL/)
    expect(screen.getByText('= 56.7 g')).toBeTruthy()
    type('Dry weight of the goods', '3 lb')
    expect(unit().value).toBe('lb')
    fireEvent.change(unit(), { target: { value: 'g' } })
    expect(field('Dry weight of the goods').value).toBe('3')
  })

  it('asks only what the choice asks for', () => {
    open({ id: 'boil' })
    expect(screen.queryByLabelText('The barometer reads')).toBeNull()
    fireEvent.click(screen.getByText('a barometer'))
    expect(screen.queryByLabelText('Height above the sea')).toBeNull()
    type('The barometer reads', '1013.25')
    expect(answer()).toMatch(/^Water boils at100 °C/)
  })

  it('adds a row and takes one away', () => {
    open({ id: 'mix' })
    fireEvent.click(screen.getByText('Add: dye 3'))
    const row = (n: number): HTMLElement => screen.getByRole('listitem', { name: `Dye ${n}` })
    fireEvent.input(within(row(3)).getByLabelText('Dye'), { target: { value: 'moss' } })
    fireEvent.click(screen.getByLabelText('Remove dye 1'))
    expect((within(row(2)).getByLabelText('Dye') as HTMLInputElement).value).toBe('moss')
    expect(screen.queryByRole('listitem', { name: 'Dye 3' })).toBeNull()
  })
})

describe('what was typed', () => {
  it('is there again after leaving, and after a reload of the tab', async () => {
    const first = open({ id: 'stock' })
    type('Dry weight of the goods', '50')
    first.unmount()
    open({ id: 'stock' })
    expect(field('Dry weight of the goods').value).toBe('50')
    cleanup()
    vi.resetModules()
    const { keptTyped } = await import('../../../src/ui/screens/sums/typed.ts')
    const [sum] = sums
    expect(sum && keptTyped(sum)).toMatchObject({ goodsG: { text: '50', unit: 'g' } })
  })

  it('stays the weight it was when the dyer turns to other units', () => {
    open({ id: 'stock' }).unmount()
    const first = open({ id: 'stock' })
    type('Dry weight of the goods', '50')
    type('Depth of shade', '1')
    first.unmount()
    open({ id: 'stock', settings: { mass: 'us' } })
    expect(answer()).toMatch(/^Stock50 mL/)
    fireEvent.click(screen.getByText('Clear the form'))
    expect(field('Dry weight of the goods').value).toBe('')
    expect((screen.getByLabelText('Unit of Dry weight of the goods') as HTMLSelectElement).value).toBe('oz')
  })

  it('of another version of a sum is let go', () => {
    sessionStorage.setItem('strandline sum stock', '{"goodsKilo":{"text":"5","unit":"kg"}}')
    open({ id: 'stock' })
    expect(answer()).toMatch(/^Still wanted: dry weight of the goods/)
  })
})

describe('copying', () => {
  const filled = (): void => {
    type('Dry weight of the goods', '50')
    type('Depth of shade', '0,8')
  }

  it('gives the question, the answer and the sum as plain text', async () => {
    const copied: string[] = []
    open({ id: 'stock', copy: async (text) => copied.push(text) > 0 })
    filled()
    fireEvent.click(screen.getByText('Copy the result'))
    await vi.waitFor(() => expect(screen.getByText('Copied.')).toBeTruthy())
    expect(copied).toEqual([
      `Stock for a depth
Dry weight of the goods: 50 g
Depth of shade: 0,8 % owf
Stock: 1 % w/v

Stock: 40 mL
Dye in it: 0.4 g

50 g × 0.8 ÷ 100 = 0.4 g of dye
50 g × 0.8 ÷ 1 = 40 mL of stock
`
    ])
    type('Depth of shade', '1')
    expect(screen.queryByText('Copied.')).toBeNull()
  })

  it('shows the text, chosen, where the browser refuses', async () => {
    open({ id: 'stock', copy: async () => false })
    filled()
    fireEvent.click(screen.getByText('Copy the result'))
    await vi.waitFor(() => expect(screen.getByLabelText('The text of Stock for a depth')).toBeTruthy())
  })
})
