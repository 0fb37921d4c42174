// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { StoredProtocol } from '../../../src/ui/kitchen.ts'
import { dayName } from '../../../src/ui/parts/day-name.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { draftOf, dropDraft } from '../../../src/ui/parts/start-draft.ts'
import { byDay } from '../../../src/ui/screens/dye-book/days.ts'
import { DyeBookScreen } from '../../../src/ui/screens/dye-book/index.tsx'
import { type Bench, T0 } from '../../core/pot/given.ts'
import { mossFinished, mossRun } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const journal = (bench: Bench): { potId: string; entries: Bench['entries'] } => ({
  potId: 'pot-a',
  entries: bench.entries
})
const stored = {
  id: 'dip',
  file: 'dip.yaml',
  text: 'strandline: 1',
  from: 'built-in',
  protocol: { title: 'Dip gradient' }
} as StoredProtocol

function open(bench: Bench, route = '#/dye-book/pot-a', damaged: { index: number; why: string }[] = []): TestKitchen {
  const kitchen = aKitchen({ journals: [journal(bench)], protocols: [stored], nowMs: T0 + 3 * 3_600_000, damaged })
  kitchen.signals.route.value = route
  render(<DyeBookScreen kitchen={kitchen} />)
  return kitchen
}

const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)

beforeEach(() => {
  forgetTaps()
  HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
    this.open = true
  }
})
afterEach(cleanup)

describe('the Dye book', () => {
  it('says what will be here while nothing is', async () => {
    const kitchen = aKitchen({ nowMs: T0 })
    kitchen.signals.route.value = '#/dye-book'
    render(<DyeBookScreen kitchen={kitchen} />)
    expect(await screen.findByText('Nothing dyed yet')).toBeTruthy()
    fireEvent.click(screen.getByText('Start a pot'))
    expect(kitchen.route.value).toBe('#/start')
  })

  it('lists each pot under the dyer’s own day, with how it ended', async () => {
    open(mossFinished(), '#/dye-book')
    const line = await screen.findByText('Moss')
    const words = plain(line.closest('li')?.textContent ?? '')
    for (const word of ['Test', '100 g', 'done']) expect(words).toContain(word)
    expect(line.closest('section')?.querySelector('h2')?.textContent).toBe('Today')
    expect(line.closest('a')?.getAttribute('href')).toBe('#/dye-book/pot-a')
  })

  it('groups by local midnight, not by 24 hours', () => {
    const at = (d: number, h: number): number => new Date(2031, 5, d, h).getTime()
    expect(dayName(at(14, 0), at(14, 23))).toBe('Today')
    expect(dayName(at(13, 23), at(14, 0))).toBe('Yesterday')
    expect(dayName(at(12, 23), at(14, 0))).toBe('Thursday 12 June 2031')
    const line = (startedAtMs: number) => ({ startedAtMs }) as Parameters<typeof byDay>[0][number]
    expect(byDay([line(at(14, 9)), line(at(14, 1)), line(at(13, 22))], at(14, 10)).map((d) => d.lines.length)).toEqual([
      2, 1
    ])
  })
})

describe('a record', () => {
  it('shows planned and done, what came late and why, in words', async () => {
    open(mossFinished())
    await screen.findByText('Planned and done')
    expect(page()).toContain('Acid 2 came 5 min late, after All in took 2 min more.')
    const strand = screen.getByRole('img', { name: /^Planned above/ })
    expect(strand.querySelectorAll('.strand-thread').length).toBeGreaterThan(4)
    expect(strand.querySelectorAll('.strand-thread-late').length).toBe(
      document.querySelectorAll('.book-late li').length
    )
    expect(page()).toContain('Done in 1 h. Bath stored.')
  })

  it('shows amounts planned and added, readings, judgements, notes, cautions', async () => {
    open(mossFinished())
    const amounts = await screen.findByText('Amounts')
    const table = plain(amounts.closest('section')?.textContent ?? '')
    for (const word of ['Acid 1', '30 mL', '33 mL', '10 % more', 'not added']) expect(table).toContain(word)
    for (const word of [
      '81 °C',
      'bath: half, what is left is yellow',
      'Cloudy at the start.',
      'Cautions shown: Mild acid.'
    ]) {
      expect(page()).toContain(word)
    }
  })

  it('takes a note after the pot has ended', async () => {
    const kitchen = open(mossFinished())
    fireEvent.click(await screen.findByText('Note'))
    fireEvent.click(screen.getByText('Write it down'))
    expect(page()).toContain('The note is empty.')
    forgetTaps()
    fireEvent.input(screen.getByLabelText('What you saw'), { target: { value: 'Greener when dry.' } })
    fireEvent.click(screen.getByText('Write it down'))
    await waitFor(() => expect(page()).toContain('Greener when dry.'))
    expect(kitchen.sent.at(-1)?.command).toEqual({ type: 'WriteNote', text: 'Greener when dry.' })
    expect(screen.queryByText('Write it down')).toBeNull()
  })

  it('takes a correction only with a reason, and keeps the old value', async () => {
    const kitchen = open(mossFinished())
    fireEvent.click(await screen.findByText('Correct'))
    const which = screen.getByLabelText('Which entry') as HTMLSelectElement
    const reading = [...which.options].find((o) => plain(o.textContent).includes('Temperature: 81 °C'))
    fireEvent.change(which, { target: { value: reading?.value } })
    fireEvent.input(screen.getByLabelText('It should say'), { target: { value: '84' } })
    fireEvent.click(screen.getByText('Correct it'))
    expect(page()).toContain('Say why')
    expect(kitchen.sent).toHaveLength(0)
    forgetTaps()
    fireEvent.input(screen.getByLabelText('Why'), { target: { value: 'misread' } })
    fireEvent.click(screen.getByText('Correct it'))
    await waitFor(() => expect(page()).toContain('temperature, °C: 81 becomes 84. misread'))
    expect(kitchen.sent.at(-1)?.command).toMatchObject({ type: 'Correct', field: 'tempC', was: '81', now: '84' })
    expect(plain(screen.getByText('Readings').closest('section')?.textContent ?? '')).toContain('84 °C')
  })

  it('says what was refused, and keeps what was typed', async () => {
    const kitchen = open(mossFinished())
    fireEvent.click(await screen.findByText('Note'))
    fireEvent.input(screen.getByLabelText('What you saw'), { target: { value: 'Kept.' } })
    kitchen.failNext = { ok: false, refusal: null, say: 'Not saved. The store is full.' }
    fireEvent.click(screen.getByText('Write it down'))
    await waitFor(() => expect(page()).toContain('Not saved. The store is full.'))
    expect((screen.getByLabelText('What you saw') as HTMLTextAreaElement).value).toBe('Kept.')
  })

  it('exports the record as one JSON file', async () => {
    const kitchen = open(mossFinished())
    fireEvent.click(await screen.findByText('Record as JSON'))
    await waitFor(() => expect(kitchen.saved).toHaveLength(1))
    const [file] = kitchen.saved
    expect(file).toMatchObject({ name: '2031-06-14 Moss.json', mime: 'application/json' })
    expect(JSON.parse(file?.text ?? '')).toMatchObject({ format: 'strandline-batch-record', version: 4 })
  })

  it('opens the whole journal, with what was undone and what was written later marked', async () => {
    const bench = mossRun()
    bench.do({ type: 'MarkDone', path: 'off' })
    bench.do({ type: 'Undo' })
    bench.pass(6)
    bench.do({ type: 'WriteNote', text: 'Stirred.' }, 5 * 60_000)
    open(bench)
    const paper = (await screen.findByText('Every entry')).closest('details') as HTMLDetailsElement
    expect(paper.textContent).not.toContain('Stirred.')
    paper.open = true
    fireEvent(paper, new Event('toggle'))
    await waitFor(() => expect(paper.textContent).toContain('Stirred.'))
    expect(paper.textContent).toContain('(undone)')
    expect(plain(paper.textContent)).toContain('written 5 min later')
  })

  it('reads the rest on where entries are damaged, and says which', async () => {
    open(mossRun(), undefined, [{ index: 4, why: 'the checksum does not fit' }])
    expect(await screen.findByText(/One entry is damaged/)).toBeTruthy()
    expect(page()).toContain('Entry 5: the checksum does not fit.')
    expect(page()).toContain('Planned and done')
  })

  it('shows every line that reads where the start itself is lost', async () => {
    const bench = mossRun()
    bench.entries.shift()
    const kitchen = aKitchen({ journals: [], nowMs: T0 })
    kitchen.entries = async () => ({ entries: bench.entries, damaged: [{ index: 0, why: 'cut' }] })
    kitchen.signals.route.value = '#/dye-book/pot-a'
    render(<DyeBookScreen kitchen={kitchen} />)
    expect(await screen.findByText(/The start of this record can’t be read/)).toBeTruthy()
    expect(page()).toContain('Cloudy at the start.')
  })

  it('says so when there is no such record', async () => {
    const kitchen = aKitchen({ nowMs: T0 })
    kitchen.signals.route.value = '#/dye-book/%E0%A4%A'
    render(<DyeBookScreen kitchen={kitchen} />)
    expect(await screen.findByText('There is no such record.')).toBeTruthy()
  })

  it('shows markup in a note as the text it is', async () => {
    const bench = mossRun()
    bench.do({ type: 'WriteNote', text: '<img src=x onerror=alert(1)>' })
    open(bench)
    await screen.findByText('Notes')
    expect(document.querySelector('.book-said img')).toBeNull()
    expect(page()).toContain('<img src=x onerror=alert(1)>')
  })
})

describe('the same again', () => {
  it('fills the form in from the list at one tap', async () => {
    dropDraft('dip')
    const kitchen = open(mossFinished(), '#/dye-book')
    const line = (await screen.findByText('Moss')).closest('li') as HTMLElement
    fireEvent.click(within(line).getByText('Same again'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/start/dip'))
    expect(draftOf('dip')).toMatchObject({
      colourway: 'Moss',
      fibre: 'wool',
      skeins: [{ tag: 'S1', mass: '100 g' }],
      setOut: []
    })
  })

  it('runs by the very text of the old pot where the protocol has changed since', async () => {
    const kitchen = open(mossFinished())
    const read: string[] = []
    kitchen.protocols = async () => [{ ...stored, text: 'strandline: 1\ntitle: newer' }]
    kitchen.protocolAgain = async (_title, text) => {
      read.push(text)
      return { ok: true, stored: { ...stored, id: 'file-1', from: 'file' } }
    }
    fireEvent.click(await screen.findByText('Same again'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/start/file-1'))
    expect(read).toEqual(['strandline: 1'])
  })
})

describe('a record, for another pot,', () => {
  it('is made a protocol of, which is then shown among the protocols', async () => {
    const kitchen = open(mossFinished())
    const asked: string[] = []
    kitchen.makeProtocol = async (potId) => {
      asked.push(potId)
      return { ok: true, stored: { ...stored, id: 'file-1', from: 'file' } }
    }
    fireEvent.click(await screen.findByText('Make a protocol of this'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/file-1'))
    expect(asked).toEqual(['pot-a'])
  })

  it('that no protocol can be made of says why, and stays', async () => {
    const kitchen = open(mossFinished())
    kitchen.makeProtocol = async () => ({ ok: false, say: 'Its start can’t be read.' })
    fireEvent.click(await screen.findByText('Make a protocol of this'))
    expect(await screen.findByText('Its start can’t be read.')).toBeTruthy()
    expect(kitchen.route.value).toBe('#/dye-book/pot-a')
  })
})
