// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Found, foundIn } from '../../../src/core/record/find.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import type { StoredProtocol } from '../../../src/ui/kitchen.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { draftOf, dropDraft } from '../../../src/ui/parts/start-draft.ts'
import { againChange, changeable } from '../../../src/ui/screens/dye-book/again/change.ts'
import { compareRoute, severalIn } from '../../../src/ui/screens/dye-book/compare/routes.ts'
import { DyeBookScreen } from '../../../src/ui/screens/dye-book/index.tsx'
import { type Bench, T0 } from '../../core/pot/given.ts'
import { mossFinished } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const HOUR = 3_600_000
const stored = {
  id: 'dip',
  file: 'dip.yaml',
  text: 'strandline: 1',
  from: 'built-in',
  protocol: { title: 'Dip gradient' }
} as StoredProtocol

/** The same pot under another name, with what was changed in it. */
function another(
  potId: string,
  change: (bench: Bench) => void = () => undefined
): { potId: string; entries: Bench['entries'] } {
  const bench = mossFinished()
  change(bench)
  const entries = structuredClone(bench.entries)
  const [first] = entries
  if (first?.event.type === 'PotStarted') {
    first.event.pot.potId = potId
    first.event.pot.batchName = potId
    first.event.pot.colourway = potId
  }
  return { potId, entries }
}

function open(journals: { potId: string; entries: Bench['entries'] }[], route: string): TestKitchen {
  const kitchen = aKitchen({ journals, protocols: [stored], nowMs: T0 + 20 * HOUR })
  const kept = new Map<string, Found>()
  kitchen.found = async () => ({
    kept: async () => new Map(kept),
    lookThrough: async (lines, each) => {
      for (const { potId, entries } of lines) {
        const found = foundIn(potId, journals.find((one) => one.potId === potId)?.entries ?? [], entries)
        kept.set(potId, found)
        if (!each([found])) return
      }
    }
  })
  kitchen.signals.route.value = route
  render(<DyeBookScreen kitchen={kitchen} />)
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)

beforeEach(() => {
  forgetTaps()
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
})
afterEach(cleanup)

describe('results in a record', () => {
  it('are written as found when the batch ended, and sent with that time', async () => {
    const kitchen = open([another('pot-a')], '#/dye-book/pot-a')
    fireEvent.click(await screen.findByText('Write a result'))
    const sheet = within(screen.getByRole('dialog'))
    fireEvent.change(sheet.getByLabelText('What'), { target: { value: 'ph' } })
    fireEvent.input(sheet.getByLabelText('Final pH'), { target: { value: '15' } })
    fireEvent.click(sheet.getByText('When the batch ended'))
    fireEvent.click(sheet.getByText('Write it down'))
    expect(await sheet.findByRole('alert')).toHaveProperty('textContent', 'Final pH: a number from 0 to 14.')
    expect(kitchen.sent).toEqual([])
    forgetTaps()
    fireEvent.input(sheet.getByLabelText('Final pH'), { target: { value: '5.2' } })
    fireEvent.click(sheet.getByText('Write it down'))
    await waitFor(() => expect(kitchen.sent).toHaveLength(1))
    const record = recordOf(another('pot-a').entries)
    expect(kitchen.sent[0]).toMatchObject({
      command: { type: 'TellResult', what: 'ph', own: false, value: { kind: 'number', value: 5.2, unit: '' } },
      agoMs: T0 + 20 * HOUR - (record?.identity.endedAtMs ?? 0)
    })
  })

  it('show a late entry as late, and the earlier one beside the last', async () => {
    const told = another('pot-a', (bench) => {
      bench.do({ type: 'TellResult', what: 'rinses', own: false, value: { kind: 'number', value: 3, unit: '' } })
      bench.pass(120)
      bench.do({ type: 'TellResult', what: 'rinses', own: false, value: { kind: 'number', value: 4, unit: '' } }, HOUR)
    })
    open([told], '#/dye-book/pot-a')
    const results = plain((await screen.findByText('Rinses')).parentElement?.textContent)
    expect(results).toContain('4')
    expect(results).toContain('late entry, written 1 h later')
    expect(results).toContain('before: 3')
  })

  it('the temperature says what it was read from', async () => {
    const heated = another('pot-a', (bench) => {
      for (const { event } of bench.entries) if (event.type === 'TemperatureRead') event.tempC = 70
      const [reading] = bench.entries.filter(({ event }) => event.type === 'TemperatureRead')
      if (!reading) throw new Error('no reading')
      const again = structuredClone(reading)
      bench.entries.push({
        ...again,
        seq: 900,
        atMs: reading.atMs + 20 * 60_000,
        event: { ...again.event, tempC: 90 } as never
      })
    })
    open([heated], '#/dye-book/pot-a')
    await screen.findByText('Temperature')
    expect(page()).toContain('At 60 °C and more for 20 min. At 80 °C and more for 10 min.')
    expect(page()).toContain('between 2 readings, from 09:31 to 09:51; before and after them nothing is counted')
  })
})

describe('batches side by side', () => {
  const silk = another('pot-b')
  if (silk.entries[0]?.event.type === 'PotStarted') silk.entries[0].event.pot.fibre = 'silk'

  it('answer the question about their start, and show what differed first', async () => {
    open([another('pot-a'), silk], compareRoute(['pot-a', 'pot-b']))
    expect(await screen.findByText('No. These differed:')).toBeTruthy()
    const differed = screen.getByRole('region', { name: 'What differed' })
    expect(
      within(differed)
        .getAllByRole('row')
        .map((row) => plain(row.textContent))
    ).toContain('Fibrewoolsilk')
    expect(screen.getByLabelText('Laid together at')).toBeTruthy()
  })

  it('of the same start say yes', async () => {
    open([another('pot-a'), another('pot-b')], compareRoute(['pot-a', 'pot-b']))
    expect(await screen.findByText('Yes.')).toBeTruthy()
    expect(page()).toContain('Nothing differed.')
  })

  it('say what is missing where there are too few', async () => {
    open([another('pot-a')], compareRoute(['pot-a', 'nowhere']))
    expect(await screen.findByText('Choose two to eight batches in the Dye book.')).toBeTruthy()
    expect(page()).toContain('One of them can’t be read here.')
  })

  it('are chosen by a tap each', async () => {
    const kitchen = open([another('pot-a'), silk], '#/dye-book')
    fireEvent.click(await screen.findByText('Choose several to compare'))
    fireEvent.click(screen.getByLabelText('Choose pot-a'))
    expect(screen.getByText('Side by side').closest('button')?.disabled).toBe(true)
    fireEvent.click(screen.getByLabelText('Choose pot-b'))
    fireEvent.click(screen.getByText('Side by side'))
    expect(severalIn(kitchen.route.value)).toEqual({ page: 'compare', potIds: ['pot-a', 'pot-b'] })
  })

  it('have an address that any id survives', () => {
    expect(severalIn(compareRoute(['a/b', 'c,d', 'é']))).toEqual({ page: 'compare', potIds: ['a/b', 'c,d', 'é'] })
    expect(severalIn('#/dye-book/compare')).toBeNull()
  })
})

describe('finding', () => {
  it('looks into notes and results of journals, and shows what fits', async () => {
    const cloudy = another('pot-a', (bench) => bench.do({ type: 'WriteNote', text: 'foam on top' }))
    open([cloudy, another('pot-b')], '#/dye-book')
    fireEvent.input(await screen.findByLabelText('Find a batch'), { target: { value: 'FOAM' } })
    expect(await screen.findByText('One batch fits.')).toBeTruthy()
    await waitFor(() => expect(screen.queryByText('pot-b')).toBeNull())
    expect(screen.getByText('pot-a')).toBeTruthy()
    fireEvent.click(screen.getByText('Show all'))
    expect(await screen.findByText('pot-b')).toBeTruthy()
  })
})

describe('finding in a book that can’t be read to its end', () => {
  it('says so, with why, and keeps what was found by name', async () => {
    const kitchen = aKitchen({ journals: [another('pot-a'), another('pot-b')], nowMs: T0 + 20 * HOUR })
    kitchen.found = async () => ({
      kept: async () => new Map(),
      lookThrough: () => Promise.reject(new Error('the disk is gone'))
    })
    kitchen.signals.route.value = '#/dye-book'
    render(<DyeBookScreen kitchen={kitchen} />)
    fireEvent.input(await screen.findByLabelText('Find a batch'), { target: { value: 'pot-b' } })
    await waitFor(() => expect(page()).toContain('could not be looked through to its end (the disk is gone)'))
    expect(page()).toContain('One batch fits.')
  })
})

describe('again, but', () => {
  it('dyes over: the start is filled in with this batch as the one before', async () => {
    const kitchen = open([another('pot-a')], '#/dye-book/pot-a')
    fireEvent.click(await screen.findByText('Again, but…'))
    fireEvent.click(screen.getByText('Dye its yarn over'))
    fireEvent.click(screen.getByText('Fill in the start'))
    await waitFor(() => expect(kitchen.route.value).toContain('#/start/'))
    const id = decodeURIComponent(kitchen.route.value.replace('#/start/', ''))
    expect(draftOf(id)).toMatchObject({ yarnOf: 'pot-a', bathOf: '' })
    dropDraft(id)
  })

  it('scales skeins, goes on in the bath, and changes one thing alone', () => {
    const record = recordOf(another('pot-a').entries)
    if (!record) throw new Error('no record')
    const draft = {
      skeins: [],
      values: { depth: '1 %', dips: '8' },
      fibre: 'wool',
      bathOf: '',
      yarnOf: '',
      bottles: {}
    } as never
    const again = { factor: 2.5, field: 'input depth', value: '2 %' }
    expect(againChange(record, { way: 'scaled', ...again })(draft).skeins).toEqual([{ tag: 'S1', mass: '250 g' }])
    expect(againChange(record, { way: 'bath', ...again })(draft)).toMatchObject({ bathOf: 'pot-a', yarnOf: '' })
    expect(againChange(record, { way: 'changed', ...again })(draft)).toMatchObject({
      values: { depth: '2 %', dips: '8' },
      fibre: 'wool'
    })
    expect(changeable(record).map(({ field }) => field)).toContain('fibre')
  })
})
