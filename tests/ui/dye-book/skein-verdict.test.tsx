// @vitest-environment happy-dom
// The verdict on a skein where a batch is looked at: on paper, side by side, and in finding.
import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Judgement, judgementsOf } from '../../../src/core/record/swatch.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { compareRoute } from '../../../src/ui/screens/dye-book/compare/routes.ts'
import { DyeBookScreen } from '../../../src/ui/screens/dye-book/index.tsx'
import { PrintPage } from '../../../src/ui/screens/dye-book/print/index.tsx'
import type { KeptSwatches, KitchenSwatches } from '../../../src/ui/swatches.ts'
import { T0 } from '../../core/pot/given.ts'
import { judgement, seenEvent, splitEvent, T1 } from '../../core/record/judged-skein.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

function another(potId: string) {
  const entries = structuredClone(mossFinished().entries)
  if (entries[0]?.event.type === 'PotStarted') {
    entries[0].event.pot.potId = potId
    entries[0].event.pot.colourway = potId
  }
  return { potId, entries }
}

const latestFirst = (all: Judgement[]): Judgement[] => [...all].sort((one, other) => other.atMs - one.atMs)

function given(judgements: Judgement[], problem: string | null = null): TestKitchen {
  const kitchen = aKitchen({ journals: [another('pot-a'), another('pot-b')], nowMs: T0 })
  const kept = async (batchId: string | null): Promise<KeptSwatches> => ({
    judgements: latestFirst(judgements.filter(({ found }) => batchId === null || found.batchId === batchId)),
    comparisons: [],
    readings: [],
    read: null,
    problem
  })
  Object.assign(kitchen, { swatches: async () => ({ kept }) as unknown as KitchenSwatches })
  return kitchen
}

function open(route: string, judgements: Judgement[]): void {
  const kitchen = given(judgements)
  kitchen.signals.route.value = route
  render(<DyeBookScreen kitchen={kitchen} />)
}

function print(potId: string, problem: string | null = null): void {
  render(<PrintPage kitchen={given([first, later], problem)} potId={potId} />)
}

const first = judgement(seenEvent('pot-a'), T1)
const later = judgement(splitEvent('pot-a'), T1 + 60_000)
const paper = async (): Promise<string> => (await screen.findByRole('article')).textContent ?? ''

beforeEach(forgetTaps)
afterEach(cleanup)

describe('on paper, the verdict on a skein', () => {
  it('stands in the record, all of them, the latest first, with its reason and by what it was found', async () => {
    print('pot-a')
    await screen.findByText('Verdict on the skein')
    const [one, other] = within(await screen.findByRole('article'))
      .getAllByRole('row')
      .map(({ textContent }) => textContent ?? '')
      .filter((row) => /Split|By eye/.test(row))
    expect(one).toBe(
      '2031-06-15 08:31Split. Turns yellower from band 4. It turns yellower from band 4. By 0 photos. Indicative.'
    )
    expect(other).toContain('By eye: only lighter')
  })

  it('is on the tag in a few words, only the latest, and never on the card for a customer', async () => {
    print('pot-a')
    fireEvent.click(await screen.findByText('Tag'))
    expect(await paper()).toContain('Split, yellower from 4')
    expect(await paper()).not.toContain('By eye')
    fireEvent.click(screen.getByText('Skein card'))
    await screen.findByLabelText('Care')
    expect(await paper()).not.toMatch(/split|yellower|lighter/i)
  })

  it('leaves no trace where there is none, and what can’t be read is said', async () => {
    print('pot-b', 'Two entries are damaged.')
    await screen.findByText('Two entries are damaged. The paper lacks them.')
    expect(await paper()).not.toContain('Verdict on the skein')
  })
})

describe('in the book, the verdict on a skein', () => {
  it('is a row of what differed between batches', async () => {
    open(compareRoute(['pot-a', 'pot-b']), [later, judgement(seenEvent('pot-b'))])
    const differed = await screen.findByRole('region', { name: 'What differed' })
    const rows = within(differed)
      .getAllByRole('row')
      .map(({ textContent }) => textContent)
    expect(rows).toContain('Verdict on the skeinSplit. Turns yellower from band 4By eye: only lighter')
  })

  it('finds the batches that have it as their latest', async () => {
    open('#/dye-book', [first, later, judgement(seenEvent('pot-b'))])
    const more = (await screen.findByText(/^By date, stock/)).parentElement as HTMLDetailsElement
    more.open = true
    fireEvent(more, new Event('toggle'))
    const choose = await screen.findByLabelText('Skein')
    expect([...choose.querySelectorAll('option')].map(({ value }) => value)).toEqual(['', 'Only lighter', 'Split'])
    fireEvent.change(choose, { target: { value: 'Only lighter' } })
    expect(await screen.findByText('One batch fits.')).toBeTruthy()
    expect(screen.queryByText('pot-a')).toBeNull()
    expect(screen.getByText('pot-b')).toBeTruthy()
  })
})

it('of streams as they lie in the journal, the latest is the one that happened last', () => {
  const entry = (found: Judgement['found'], seq: number, atMs: number) =>
    ({
      event: found,
      atMs,
      tzOffsetMin: 0,
      by: { kind: 'clock' },
      writerId: 'w',
      seq,
      streamId: 'swatch/pot-a'
    }) as never
  const read = judgementsOf([entry(splitEvent('pot-a'), 1, T1 + 5), entry(seenEvent('pot-a'), 2, T1)])
  expect(read[0]?.found.type).toBe('SwatchJudged')
})
