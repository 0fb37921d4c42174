// @vitest-environment happy-dom
// The series that a skein is judged by as a batch of its own, and what both records say of it.
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { judgementsOf, type SwatchEvent } from '../../../src/core/record/swatch.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { DyeBookScreen } from '../../../src/ui/screens/dye-book/index.tsx'
import { draftOf, type Shot } from '../../../src/ui/screens/swatches/draft.ts'
import Swatches from '../../../src/ui/screens/swatches/index.tsx'
import { movedSeries } from '../../../src/ui/screens/swatches/marks.ts'
import { chooseSeries, toggleTab } from '../../../src/ui/screens/swatches/series.ts'
import type { KitchenSwatches } from '../../../src/ui/swatches.ts'
import { dyed } from '../../browser/stage/kept-batches.ts'
import { judgement, splitEvent } from '../../core/record/judged-skein.ts'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'

const startMs = Date.UTC(2031, 5, 12, 8)
const batch = (potId: string, protocol: string, fibre = 'wool') =>
  dyed({ potId, protocol, goods: '60', startMs, pot: { colourway: potId, batchName: `2031-06-12 ${potId}`, fibre } })
const batches = [
  batch('Steps', 'dilution-series'),
  batch('Moss', 'dip-gradient'),
  batch('Fern', 'dip-gradient', 'nylon')
]

function given(kept: SwatchEvent[] = []): TestKitchen & { told: SwatchEvent[] } {
  const kitchen = Object.assign(aKitchen({ journals: batches, nowMs: startMs }), { told: kept })
  const swatches = {
    keep: async (_: string | null, events: SwatchEvent[]) => {
      kitchen.told.push(...events)
      return { ok: true }
    },
    kept: async () => ({
      comparisons: [],
      readings: [],
      judgements: kitchen.told.flatMap((found) =>
        found.type === 'SwatchJudged' || found.type === 'SwatchSeen' ? [judgement(found)] : []
      ),
      problem: null
    })
  }
  return Object.assign(kitchen, { swatches: async () => swatches as unknown as KitchenSwatches })
}

function open(route = '#/swatches') {
  const kitchen = given()
  kitchen.signals.route.value = route
  render(<Swatches kitchen={kitchen} />)
  return kitchen
}

async function choose(label: string, value: string): Promise<void> {
  const select = await screen.findByLabelText(label)
  await waitFor(() => expect(select.querySelector(`option[value="${value}"]`)).not.toBeNull())
  fireEvent.change(select, { target: { value } })
}
const tabs = (): string[] =>
  within(screen.getByRole('group', { name: 'Tabs that lie there' }))
    .getAllByRole('button')
    .map(({ textContent }) => (textContent ?? '').replaceAll('\u00a0', ' '))
const type = (label: string, value: string): unknown =>
  fireEvent.input(screen.getByLabelText(label, { exact: true }), { target: { value } })

beforeEach(forgetTaps)
afterEach(cleanup)

/** Three readings of one colour, as an instrument strays. */
function thrice(l: number, deg: number): string {
  const [chroma, rad] = [50 - 0.5 * (l - 40), (deg * Math.PI) / 180]
  return [0.1, -0.1, (l % 3) / 30]
    .map(
      (stray) => `${l} ${(chroma * Math.cos(rad) + stray).toFixed(2)} ${(chroma * Math.sin(rad) - stray).toFixed(2)}`
    )
    .join('; ')
}

describe('a series that was dyed as a batch', () => {
  it('gives its tabs with the depths that went in, and those that do not lie there are pressed away', async () => {
    open()
    await choose('The series was batch', 'Steps')
    await screen.findByText('Tabs that lie there')
    expect(tabs()).toEqual(['J1 2 % ✓', 'J2 1 % ✓', 'J3 0.5 % ✓', 'J4 0.25 % ✓', 'J5 0.13 % ✓', 'J6 0.063 % ✓'])
    fireEvent.click(screen.getByText(/^J6/))
    expect(tabs()[5]).toBe('J6 0.063 %')
    expect(screen.getByText(/5 to mark, in this order/)).toBeTruthy()
  })

  it('is told from one that is none, and from one that can’t be read, and the choice stays', async () => {
    const kitchen = open()
    await choose('The series was batch', 'Moss')
    expect(await screen.findByText(/2031-06-12 Moss dyed no series: fewer than three jars/)).toBeTruthy()
    expect((screen.getByLabelText('The series was batch') as HTMLSelectElement).value).toBe('Moss')
    kitchen.entries = () => Promise.reject(new Error('closed'))
    await choose('The series was batch', 'Steps')
    expect(await screen.findByText('Its record can’t be read (closed).')).toBeTruthy()
  })

  it('is laid out by the address that its record leads to', async () => {
    open('#/swatches/series/Steps')
    await screen.findByText('Tabs that lie there')
    expect((screen.getByLabelText('The series was batch') as HTMLSelectElement).value).toBe('Steps')
  })

  it('wants a line for each tab of an instrument, and is kept with the verdict and its own doubts', async () => {
    const kitchen = open()
    await choose('Batch', 'Fern')
    fireEvent.click(screen.getByText('An instrument'))
    await choose('The series was batch', 'Steps')
    await screen.findByText('Tabs that lie there')
    const lines = [40, 47, 54, 61, 68].map((l) => thrice(l, 20))
    type('Undyed yarn', '88 0 12')
    type('Dilution series', lines.join('\n'))
    type('Skein', [42, 47, 52, 57, 62].map((l, nth) => thrice(l, 20 + 6 * nth)).join('\n'))
    fireEvent.click(screen.getByText('Dry'))
    fireEvent.click(screen.getByText('One fibre'))
    expect(screen.getByText(/^5 lines for 6 tabs\. Type one for each/)).toBeTruthy()
    expect(screen.queryByText('Verdict')).toBeNull()
    fireEvent.click(screen.getByText(/^J6/))
    await screen.findByText('Verdict')
    expect(await screen.findByText(/The series is of wool, the skein of nylon/)).toBeTruthy()
    const rows = within(screen.getByRole('region', { name: 'Tabs in figures' })).getAllByRole('row')
    expect(rows.map(({ textContent }) => textContent).slice(1, 3)).toEqual(['J12clear40.020', 'J21clear47.020'])
    fireEvent.click(screen.getByText('Keep it in the record'))
    await screen.findByText('Kept in the batch’s record.')
    const series = { batchId: 'Steps', name: '2031-06-12 Steps' }
    expect(kitchen.told).toMatchObject([{ type: 'SwatchJudged', batchId: 'Fern', series }])
    expect(kitchen.told[0]).toMatchObject({ series: { tabs: [{ jar: 'J1' }, {}, {}, {}, { depthPercent: 0.13 }] } })
    expect(screen.getByRole('link', { name: '2031-06-12 Steps' }).getAttribute('href')).toBe('#/dye-book/Steps')
  })

  it('is kept with what an eye saw beside it, and not where it was let go again', async () => {
    const kitchen = open()
    fireEvent.click(await screen.findByText('My eye'))
    await choose('The series was batch', 'Steps')
    await screen.findByText('Tabs that lie there')
    fireEvent.click(screen.getByText('Only lighter'))
    type('In your words', 'Paler to the tip.')
    fireEvent.click(screen.getByText('Dry'))
    fireEvent.click(screen.getByText('Keep this'))
    await waitFor(() => expect(kitchen.told).toMatchObject([{ type: 'SwatchSeen', series: { batchId: 'Steps' } }]))
    await choose('The series was batch', '')
    // A press right after another is taken for a drop.
    forgetTaps()
    fireEvent.click(screen.getByText('Keep this'))
    await waitFor(() => expect(kitchen.told).toHaveLength(2))
    expect(kitchen.told[1]).not.toHaveProperty('series')
  })
})

it('marks that are put stay with their tabs when one is pressed away', async () => {
  const kitchen = given()
  const draft = draftOf(kitchen)
  await chooseSeries(kitchen, draft, 'Steps')
  const places = { 'series 0': { x: 0.2, y: 0.5 }, 'series 1': { x: 0.3, y: 0.5 }, 'series 2': { x: 0.4, y: 0.5 } }
  const shot = { id: 's', name: 's', photo: {} as Shot['photo'], places, read: null, problem: null }
  draft.value = { ...draft.value, shots: [shot] }
  toggleTab(draft, 'J2')
  expect(draft.value.shape).toMatchObject({ series: 5 })
  expect(draft.value.shape.tabs?.[1]).toMatch(/^J3/)
  expect(draft.value.shots[0]?.places).toEqual({ 'series 0': places['series 0'], 'series 1': places['series 2'] })
})

describe('the record of a series', () => {
  it('says which skeins were judged by it, and what was found', async () => {
    const link = { batchId: 'Steps', name: '2031-06-12 Steps', tabs: [] }
    const kitchen = given([{ ...splitEvent('Moss'), series: link }, splitEvent('Fern')])
    kitchen.signals.route.value = '#/dye-book/Steps'
    render(<DyeBookScreen kitchen={kitchen} />)
    const judged = await screen.findByRole('list', { name: 'Judged by this series' })
    expect(judged.textContent).toBe('2031-06-15 08:30: 2031-06-12 Moss. Split. Turns yellower from band 4.')
    expect(within(judged).getByRole('link').getAttribute('href')).toBe('#/dye-book/Moss')
    fireEvent.click(screen.getByText('Judge a skein by it'))
    expect(kitchen.route.value).toBe('#/swatches/series/Steps')
  })
})

it('marks keep the places of their own tabs when one of them is left out or laid there again', () => {
  const at = (x: number) => ({ x, y: 0.5 })
  const places = { grey: at(0.1), 'series 0': at(0.2), 'series 1': at(0.3), 'series 2': at(0.4) }
  const fewer = movedSeries(places, ['J1', 'J2', 'J3'], ['J1', 'J3'])
  expect(fewer).toEqual({ grey: at(0.1), 'series 0': at(0.2), 'series 1': at(0.4) })
  expect(movedSeries(fewer, ['J1', 'J3'], ['J1', 'J2', 'J3'])).toEqual({
    grey: at(0.1),
    'series 0': at(0.2),
    'series 2': at(0.4)
  })
})

it('a verdict from before a series could be told still opens', () => {
  const { series: _, ...old } = { ...splitEvent('Moss'), series: undefined }
  const entry = {
    event: old,
    atMs: 1,
    tzOffsetMin: 0,
    by: { kind: 'clock' },
    writerId: 'w',
    seq: 1,
    streamId: 'swatch/Moss'
  }
  expect(judgementsOf([entry as never])[0]?.found).toEqual(old)
})
