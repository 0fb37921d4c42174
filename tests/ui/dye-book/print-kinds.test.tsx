// @vitest-environment happy-dom
// Tags, cards, the day sheet and the record as they are drawn; how they come out on paper is tested in the browser.
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { metricUnits } from '../../../src/core/quantity/index.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import type { SkeinCardText } from '../../../src/core/record/skein-card.ts'
import { clockOf } from '../../../src/ui/parts/day-name.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { actsOfDay } from '../../../src/ui/screens/dye-book/print/day-lines.ts'
import { PrintPage } from '../../../src/ui/screens/dye-book/print/index.tsx'
import { Rows } from '../../../src/ui/screens/dye-book/print/rows.tsx'
import { Bench, T0 } from '../../core/pot/given.ts'
import { act, dose, programme, wait } from '../../core/pot/programmes.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')

/** The pot as it was started, with other skeins. */
function withSkeins(
  skeins: { tag: string; massG: number }[],
  change: (pot: Record<string, unknown>) => void = () => {}
) {
  const bench = mossFinished()
  const entries = structuredClone(bench.entries)
  const [first] = entries
  if (first?.event.type === 'PotStarted') {
    first.event.pot.skeins = skeins
    change(first.event.pot as unknown as Record<string, unknown>)
  }
  return entries
}

function open(entries: Bench['entries'], more: Partial<TestKitchen> = {}): TestKitchen {
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries }], nowMs: T0 + 9 * 3_600_000 })
  Object.assign(kitchen, more)
  render(<PrintPage kitchen={kitchen} potId="pot-a" />)
  return kitchen
}

const choose = async (kind: string): Promise<void> => {
  await screen.findByRole('article')
  forgetTaps()
  fireEvent.click(screen.getByText(kind))
}
const tags = (): string[] => [...document.querySelectorAll('.print-tag-skein')].map((tag) => plain(tag.textContent))

beforeEach(forgetTaps)
afterEach(cleanup)

describe('a tag', () => {
  it('is one for each skein, and says which of how many; a single one counts nothing', async () => {
    open(
      withSkeins([
        { tag: 'A1', massG: 60 },
        { tag: 'A2', massG: 40 }
      ])
    )
    await choose('Tag')
    await waitFor(() => expect(tags()).toEqual(['A1  60 g, 1 of 2', 'A2  40 g, 2 of 2']))
    cleanup()
    open(withSkeins([{ tag: 'A1', massG: 100 }]))
    await choose('Tag')
    await waitFor(() => expect(tags()).toEqual(['A1  100 g']))
  })

  it('is one all the same for a batch that names no skein', async () => {
    open(withSkeins([]))
    await choose('Tag')
    await waitFor(() => expect(tags()).toHaveLength(1))
  })

  it('cuts a name that is too long to be read, with a mark, to 48 signs', async () => {
    open(
      withSkeins([{ tag: 'A1', massG: 100 }], (pot) => {
        pot.colourway = 'x'.repeat(60)
      })
    )
    await choose('Tag')
    await waitFor(() => expect(document.querySelector('.print-tag-name')?.textContent).toBe(`${'x'.repeat(47)}…`))
  })
})

describe('a sheet of tags', () => {
  it('goes through the skeins again where more are asked for, and refuses a count that is none', async () => {
    open(
      withSkeins([
        { tag: 'A1', massG: 60 },
        { tag: 'A2', massG: 40 }
      ])
    )
    await choose('Sheet of tags')
    const field = await screen.findByLabelText('How many tags')
    fireEvent.input(field, { target: { value: '5' } })
    const one = 'A1  60 g, 1 of 2'
    const two = 'A2  40 g, 2 of 2'
    await waitFor(() => expect(tags()).toEqual([one, two, one, two, one]))
    for (const wrong of ['0', '271', '2.5', '', 'many']) {
      fireEvent.input(field, { target: { value: wrong } })
      await screen.findByText('Write a whole number from 1 to 270.')
      expect(tags()).toEqual([one, two])
      expect((field as HTMLInputElement).value).toBe(wrong)
    }
    fireEvent.input(field, { target: { value: '270' } })
    await waitFor(() => expect(tags()).toHaveLength(270))
    fireEvent.input(screen.getByLabelText('First place on the sheet'), { target: { value: '28' } })
    await screen.findByText('Write a whole number from 1 to 27.')
  })
})

describe('a skein card', () => {
  const text: SkeinCardText = { fibre: 'wool', metres: '', care: 'cool', bleed: 'trace' }
  const facts = (): string[] => [...document.querySelectorAll('.print-card dt')].map((fact) => plain(fact.textContent))

  it('says of a bleed that it is indicative, and nothing of what was not written', async () => {
    open(withSkeins([{ tag: 'A1', massG: 100 }]), {
      skeinCards: { read: async () => text, keep: async () => ({ ok: true }) }
    })
    await choose('Skein card')
    await screen.findByText('trace (indicative)')
    expect(facts()).toEqual(['Fibre', 'Weight', 'Dye lot', 'Care', 'Bleed'])
  })

  it('is kept letter by letter in the order they were written, however long each takes', async () => {
    const kept: string[] = []
    const waits = [30, 1, 1]
    open(mossFinished().entries, {
      skeinCards: {
        read: async () => text,
        keep: async (_, { care }) => {
          await new Promise((resolve) => setTimeout(resolve, waits.shift()))
          kept.push(care)
          return { ok: true }
        }
      }
    })
    await choose('Skein card')
    const care = await screen.findByLabelText('Care')
    for (const value of ['c', 'co', 'coo']) fireEvent.input(care, { target: { value } })
    await waitFor(() => expect(kept).toEqual(['c', 'co', 'coo']))
  })

  it('says so where what was written before can’t be read, and begins from the record', async () => {
    open(mossFinished().entries, {
      skeinCards: { read: () => Promise.reject(new Error('gone')), keep: async () => ({ ok: true }) }
    })
    await choose('Skein card')
    await screen.findByText('What was written for this card before can’t be read.')
    expect((screen.getByLabelText('Fibre, with shares') as HTMLInputElement).value).toBe('wool')
  })
})

describe('the foot of a sheet', () => {
  const foot = (): string => document.documentElement.style.getPropertyValue('--print-foot')

  it('is the batch, as a string that no name can break out of, and is gone with the page', async () => {
    const entries = withSkeins([{ tag: 'A1', massG: 100 }], (pot) => {
      pot.colourway = 'a"; content: url(x) \\'
    })
    open(entries)
    await screen.findByRole('article')
    await waitFor(() => expect(foot()).toContain('batch 2031-06-14 Moss'))
    expect(foot()).toBe('"a\\"; content: url(x) \\\\ · batch 2031-06-14 Moss"')
    cleanup()
    expect(foot()).toBe('')
  })
})

describe('the paper', () => {
  it('that could not be kept as a choice says so', async () => {
    open(mossFinished().entries, { changeSettings: async () => ({ ok: false, refusal: null, say: 'Not kept: full.' }) })
    await screen.findByRole('article')
    fireEvent.click(screen.getByText('US Letter'))
    await screen.findByText('Not kept: full.')
  })
})

describe('a printed record', () => {
  it('says how many entries of it are damaged', async () => {
    const { entries } = mossFinished()
    const kitchen = aKitchen({
      journals: [{ potId: 'pot-a', entries }],
      damaged: [{ index: 4, why: 'cut' }],
      nowMs: T0
    })
    render(<PrintPage kitchen={kitchen} potId="pot-a" />)
    await within(await screen.findByRole('article')).findByText('1 damaged entries could not be read.')
  })

  it('has the first rows, what was left out, and the last, each once', () => {
    const room = { lines: 4, letters: 100, photos: 0 }
    const all = Array.from({ length: 9 }, (_, nth) => nth)
    const row = (one: number, index: number) => (
      <tr key={one}>
        <td>{`${one} at ${index}`}</td>
      </tr>
    )
    render(<Rows title="Readings" what="readings" heads={['What']} all={all} room={room} row={row} />)
    const cells = [...document.querySelectorAll('tbody td')].map(({ textContent }) => textContent)
    expect(cells).toEqual(['0 at 0', '1 at 1', 'and 5 more readings: see the file', '7 at 7', '8 at 8'])
  })
})

describe('the acts of a day', () => {
  const record = recordOf(mossFinished().entries) as BatchRecord
  const linesOf = (fromMs: number, toMs: number, gather = false) =>
    actsOfDay([record], { fromMs, toMs }, metricUnits, gather)

  it('leave out those of the day before, and say which are the next day’s', () => {
    const all = linesOf(0, Number.POSITIVE_INFINITY)
    expect(all.length).toBeGreaterThan(4)
    expect(all.map(({ atMs }) => atMs)).toEqual(all.map(({ atMs }) => atMs).sort((a, b) => a - b))
    expect(all.some(({ time }) => time.includes('next day'))).toBe(false)
    const midnight = all[3]?.atMs ?? 0
    const later = all.filter(({ atMs }) => atMs >= midnight)
    expect(linesOf(midnight, Number.POSITIVE_INFINITY)).toEqual(later)
    const next = linesOf(0, midnight).filter(({ time }) => time.endsWith(' next day'))
    expect(next.map(({ key }) => key)).toEqual(later.map(({ key }) => key))
  })

  const steps = [1, 2, 3, 4].flatMap((nth) => [
    act(`d${nth}`, { word: 'lower', knot: `Dip ${nth}` }),
    wait(`w${nth}`, 5 * 60_000, { knot: 'Hold' })
  ])
  const dipped = (): Bench => Bench.start(programme([dose('S', 2, 'brine'), dose('salt', 3, 'Salt'), ...steps]))
  const wordsOf = ({ entries }: Bench): string[] =>
    actsOfDay([recordOf(entries) as BatchRecord], { fromMs: 0, toMs: Number.POSITIVE_INFINITY }, metricUnits, true).map(
      ({ words }) => plain(words)
    )

  it('name once what goes in, and share a line where they differ only in their number', () => {
    expect(wordsOf(dipped())).toEqual([
      'S: 2 mL of brine',
      'salt: 3 mL',
      `Dip 1 to 4, 4 times, about every 5 min 30 s, until ${clockOf(T0 + 17.5 * 60_000)}`
    ])
  })

  it('stand each for itself where some are done and some are not', () => {
    const bench = dipped()
    for (const path of ['S', 'salt', 'd1']) bench.do({ type: 'MarkDone', path })
    expect(wordsOf(bench).slice(2)).toEqual(['d1', 'd2', 'd3', 'd4'])
  })
})
