// @vitest-environment happy-dom
import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { aKitchen } from '../dye-book/a-kitchen.ts'
import { area, kept, open, pad, plain, reopen, row, rows, TEXT, type, wide } from './opened.tsx'

beforeEach(() => {
  forgetTaps()
  wide(390)
})
afterEach(cleanup)

describe('one text with two ways in', () => {
  it('typed into a form is in the text, with everything around it as it was', async () => {
    const kitchen = await open()
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '8 min')
    await waitFor(() => expect(rows()).toContain('Hold 8 min'))
    fireEvent.click(pad('Text'))
    expect(area().value).toBe(TEXT.replace('6 min', '8 min'))
    await waitFor(async () => expect(await kept(kitchen)).toBe(area().value))
  })

  it('typed as text is in the rows', async () => {
    await open()
    fireEvent.click(pad('Text'))
    type(area(), TEXT.replace('- rinse', '- spin'))
    fireEvent.click(pad('Steps'))
    await waitFor(() => expect(rows()).toEqual(['Fill 2 L', 'Add 10 mL of acid', 'Hold 6 min', 'Spin']))
  })

  it('shows one at a time on a phone and both where there is room', async () => {
    await open()
    expect(screen.queryByLabelText('The text of the protocol')).toBeNull()
    cleanup()
    wide(1180)
    await open()
    expect(rows()).toHaveLength(4)
    expect(area().value).toBe(TEXT)
  })

  it('has rows for what is asked, materials and gaps too, each with the form of its kind', async () => {
    await open(`${TEXT}gaps:\n  - {from: a, to: b, at most: 2 h}\ninputs:\n  n: {ask: How many?, kind: count}\n`)
    for (const [start, label] of [
      ['acid', 'Strength'],
      ['a to b', 'At most'],
      ['How many?', 'Ask'],
      ['title', 'Title']
    ] as const) {
      fireEvent.click(row(start))
      expect(screen.getByLabelText(label), start).toBeTruthy()
    }
  })
})

describe('what is wrong', () => {
  it('is told at the field by the reader, and what was typed stays, there and in the draft', async () => {
    const kitchen = await open()
    fireEvent.click(row('Hold'))
    const field = screen.getByLabelText('For') as HTMLInputElement
    type(field, '8 mn ')
    expect(field.value).toBe('8 mn ')
    await waitFor(() => expect(field.getAttribute('aria-invalid')).toBe('true'))
    const told = document.getElementById(`${field.id}-problem`)
    expect(plain(told?.textContent)).toMatch(/mn.*can't be read.*for example 6 min/)
    await waitFor(async () => expect(await kept(kitchen)).toContain('hold: 8 mn'))
    fireEvent.click(row('Hold'))
    fireEvent.click(row('Hold'))
    expect((screen.getByLabelText('For') as HTMLInputElement).value).toBe('8 mn')
  })

  it('goes into the text as typed even where the field can hold no such thing', async () => {
    const kitchen = await open()
    fireEvent.click(row('acid'))
    const field = screen.getByLabelText('Density') as HTMLInputElement
    type(field, 'thick')
    await waitFor(async () => expect(await kept(kitchen)).toContain('density: thick'))
    await waitFor(() => expect(document.querySelector('.workshop-open [role=alert]')).toBeTruthy())
    expect(field.value).toBe('thick')
  })

  it('is listed under the text within 300 ms of the typing, and leads to its line', async () => {
    await open()
    fireEvent.click(pad('Text'))
    expect(screen.getByText('No problems.')).toBeTruthy()
    type(area(), TEXT.replace('- hold:', '- hodl:'))
    await waitFor(() => expect(screen.getByText('One problem:')).toBeTruthy(), { timeout: 300, interval: 10 })
    fireEvent.click(pad('Line 8, column 5 There is no step hodl. Write hold.').closest('button') as HTMLElement)
    expect(document.activeElement).toBe(area())
    expect(area().value.slice(area().selectionStart, area().selectionEnd)).toBe('  - hodl: 6 min # by the clock')
  })

  it('leaves the text whole where it is no YAML: forms are refused with the line, and it leads there', async () => {
    const kitchen = await open(TEXT.replace('- rinse', '- [rinse'))
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '9 min')
    expect(await screen.findByText(/The text has a mistake in line \d+: mend it there first/)).toBeTruthy()
    expect((screen.getByLabelText('For') as HTMLInputElement).value).toBe('9 min')
    fireEvent.click(pad('Text'))
    expect(screen.getByText(/This is not YAML/)).toBeTruthy()
    expect(area().value).toBe(TEXT.replace('- rinse', '- [rinse'))
    await waitFor(async () => expect(await kept(kitchen)).toBe(area().value))
  })
})

describe('a text without rows', () => {
  it('says that nothing is lost, and where to mend it', async () => {
    await open('just words\n')
    expect(screen.getByText(/can’t be shown while the text has this mistake. Nothing is lost/)).toBeTruthy()
    fireEvent.click(pad('Go to line 1'))
    expect(area().value).toBe('just words\n')
  })
})

describe('the pads of a step', () => {
  it('add, duplicate, move, wrap, unwrap and remove; and undo goes all the way back', async () => {
    const kitchen = await open()
    fireEvent.click(row('Add 10'))
    fireEvent.click(pad('Add a step after'))
    fireEvent.click(within(screen.getByRole('dialog')).getByText('enter'))
    // Drawn together with what was done: no moment in which a place holds another step.
    expect(rows()[2]).toMatch(/^Enter/)
    // The row that stood there before was a hold: its form must not stay.
    expect(screen.getByLabelText('What')).toBeTruthy()
    expect(screen.queryByLabelText('For')).toBeNull()
    fireEvent.click(pad('Move down'))
    await waitFor(() => expect(rows()[3]).toMatch(/^Enter/))
    fireEvent.click(pad('Move up'))
    await waitFor(() => expect(rows()[2]).toMatch(/^Enter/))
    fireEvent.click(pad('Duplicate'))
    await waitFor(() => expect(rows().filter((one) => one.startsWith('Enter'))).toHaveLength(2))
    fireEvent.click(pad('Wrap in'))
    fireEvent.click(pad('2'))
    fireEvent.click(within(screen.getByRole('dialog')).getByText('repeat'))
    await waitFor(() => expect(rows()[3]).toMatch(/^Repeat 4 times/))
    await waitFor(async () => expect(await kept(kitchen)).toContain('- repeat:'))
    fireEvent.click(pad('Unwrap'))
    await waitFor(() => expect(rows().join()).not.toContain('Repeat'))
    fireEvent.click(row('Rinse'))
    fireEvent.click(pad('Remove'))
    await waitFor(() => expect(rows().join()).not.toContain('Rinse'))
    for (let i = 0; i < 7; i++) fireEvent.click(pad('Undo'))
    await waitFor(async () => expect(await kept(kitchen)).toBe(TEXT))
    expect((pad('Undo') as HTMLButtonElement).disabled).toBe(true)
    for (let i = 0; i < 7; i++) fireEvent.click(pad('Redo'))
    await waitFor(() => expect(rows().join()).not.toContain('Rinse'))
  })

  it('move a step out of a loop at its end', async () => {
    await open(`${TEXT}  - repeat:\n      times: 2\n      steps:\n        - spin\n        - dry\n`)
    fireEvent.click(row('Dry'))
    fireEvent.click(pad('Move down'))
    fireEvent.click(row('Spin'))
    expect((pad('Move up') as HTMLButtonElement).disabled).toBe(false)
    await waitFor(() =>
      expect(document.querySelectorAll('[style*="--depth: 1"], [style*="--depth:1"]')).toHaveLength(1)
    )
  })

  it('say every word of the language, with a line of what it does', async () => {
    await open()
    fireEvent.click(pad('Add a step at the end'))
    const words = within(screen.getByRole('dialog')).getAllByRole('listitem')
    expect(words.length).toBeGreaterThanOrEqual(28)
    for (const word of words) expect(word.querySelector('.workshop-about')?.textContent).toMatch(/\w{3}/)
  })

  it('rename a material only when the name is whole, and refuse one that is taken', async () => {
    const kitchen = await open(TEXT.replace('steps:', '  salt: powder\nsteps:'))
    fireEvent.click(row('acid'))
    const name = screen.getByLabelText('Name')
    type(name, 'salt')
    fireEvent.change(name)
    expect(await screen.findByText('salt is there already.')).toBeTruthy()
    type(name, 'vinegar')
    expect(await kept(kitchen)).not.toContain('vinegar')
    fireEvent.change(name)
    await waitFor(async () => expect(await kept(kitchen)).toContain('vinegar: {kind: acid'))
  })
})

describe('an id typed into a form', () => {
  const REFERRED = TEXT.replace('fill: 2 L', 'fill: {liquor: 2 L, id: A1}')
    .replace('6 min', '6 min after A1')
    .replace('hold:', 'wait:')

  it('is taken when it is whole, with what refers to it, and undone as one', async () => {
    const kitchen = await open(REFERRED)
    fireEvent.click(row('Fill'))
    const id = screen.getByLabelText('Id')
    for (const typed of ['A', '', 'f', 'filled']) type(id, typed)
    expect(await kept(kitchen)).toBe(REFERRED)
    fireEvent.change(id)
    await waitFor(async () => expect(await kept(kitchen)).toBe(REFERRED.replaceAll('A1', 'filled')))
    await waitFor(() => expect(rows()).toContain('Wait 6 min after filled'))
    fireEvent.click(pad('Undo'))
    await waitFor(async () => expect(await kept(kitchen)).toBe(REFERRED))
  })

  it('that is taken already is refused, and stays in the field', async () => {
    await open(REFERRED.replace('- rinse', '- rinse: {id: last}'))
    fireEvent.click(row('Fill'))
    const id = screen.getByLabelText('Id') as HTMLInputElement
    type(id, 'last')
    fireEvent.change(id)
    expect(await screen.findByText('last is there already.')).toBeTruthy()
    expect(id.value).toBe('last')
  })

  it('may be emptied', async () => {
    const kitchen = await open(TEXT.replace('fill: 2 L', 'fill: {liquor: 2 L, id: A1}'))
    fireEvent.click(row('Fill'))
    type(screen.getByLabelText('Id'), '')
    fireEvent.change(screen.getByLabelText('Id'))
    await waitFor(async () => expect(await kept(kitchen)).toContain('fill: {liquor: 2 L}'))
  })
})

describe('fields with more than one value', () => {
  it('take several of a few, and several texts, and let them go', async () => {
    const kitchen = await open()
    fireEvent.click(row('Hold'))
    fireEvent.click(within(screen.getByRole('group', { name: 'Record' })).getByText('temperature'))
    fireEvent.click(within(screen.getByRole('group', { name: 'Record' })).getByText('ph'))
    await waitFor(async () => expect(await kept(kitchen)).toMatch(/record: ?\[temperature, ph\]|record:\n/))
    fireEvent.click(pad('Until: add one'))
    type(await screen.findByLabelText('Until 1'), '40 °C')
    await waitFor(async () => expect(await kept(kitchen)).toContain('40 °C'))
    fireEvent.click(pad('Take away Until 1'))
    await waitFor(async () => expect(await kept(kitchen)).not.toContain('until'))
  })
})

describe('what it comes to', () => {
  it('is worked out while it is written, and waits for mending where it can’t be', async () => {
    await open()
    const live = screen.getByRole('region', { name: 'What it comes to' })
    expect(plain(live.textContent)).toContain('likely 13 min')
    expect(plain(live.textContent)).toContain('10 mL of acid')
    expect(within(live).getByText('Dye tools only')).toBeTruthy()
    fireEvent.click(row('Hold'))
    type(screen.getByLabelText('For'), '16 min')
    await waitFor(() => expect(plain(live.textContent)).toContain('likely 23 min'))
    type(screen.getByLabelText('For'), 'soon')
    await within(live).findByText(/as soon as the problems are mended/)
  })
})

describe('saving', () => {
  it('refuses while there are problems and leads to the first', async () => {
    const kitchen = await open(TEXT.replace('6 min', '6 mn'))
    let asked = 0
    kitchen.saveProtocol = async () => {
      asked++
      return { ok: false, problems: [], say: 'no' }
    }
    fireEvent.click(pad('Save'))
    expect(await screen.findByText(/^Not saved yet. Mend line 8 first/)).toBeTruthy()
    expect(document.activeElement).toBe(area())
    expect(asked).toBe(0)
  })

  it('says the first problem as a sentence, and how many more there are', async () => {
    await open(TEXT.replace('hold: 6 min', 'heet: 6 min').replace('- rinse', '- rinze'))
    fireEvent.click(pad('Save'))
    expect(plain((await screen.findByText(/^Not saved yet/)).textContent)).toMatch(
      /Mend line 8 first: [^.]*heet[^.,]*\. And 1 more\.$/
    )
  })

  it('is led up to by the count of the problems: it goes to the first', async () => {
    await open(TEXT.replace('6 min', '6 mn'))
    fireEvent.click(pad('One problem to mend: go to it'))
    await waitFor(() => expect(document.activeElement).toBe(area()))
    const { selectionStart, selectionEnd, value } = area()
    expect(value.slice(selectionStart, selectionEnd)).toContain('hold: 6 mn')
  })

  it('of what was brought in leads to where the dyer says what becomes of it, as it stands now', async () => {
    const kitchen = aKitchen({ nowMs: 1_000 })
    const draft = { id: 'd', title: 'Mine', text: TEXT, changedAtMs: 0, undo: [], redo: [], cameAs: 'mine.docx' }
    await kitchen.drafts.keep(draft)
    const { keep } = kitchen.drafts
    kitchen.drafts.keep = async (changed) => {
      await new Promise((written) => setTimeout(written, 20))
      return keep(changed)
    }
    await reopen(kitchen)
    expect(screen.getByText(/From mine\.docx, not kept yet\. Its name ends in \.docx/)).toBeTruthy()
    type(area(), `${TEXT}  - spin\n`)
    fireEvent.click(pad('Save'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/came/d'))
    expect(await kitchen.drafts.read('d')).toMatchObject({ text: `${TEXT}  - spin\n`, cameAs: 'mine.docx' })
  })

  it('makes it a protocol, lets the draft go, and leads to it', async () => {
    const kitchen = await open()
    const saved: string[] = []
    kitchen.saveProtocol = async (text) => {
      saved.push(text)
      return { ok: true, stored: { id: 'own-1', file: '', text, protocol: {} as never, from: 'file' } }
    }
    fireEvent.click(pad('Save'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/own-1'))
    expect(saved).toEqual([TEXT])
    expect(await kitchen.drafts.read('d')).toBeNull()
  })

  it('takes nobody back who went elsewhere meanwhile', async () => {
    const kitchen = await open()
    kitchen.saveProtocol = async (text) => {
      kitchen.go('#/book')
      return { ok: true, stored: { id: 'own-1', file: '', text, protocol: {} as never, from: 'file' } }
    }
    const { drop } = kitchen.drafts
    let dropped: (() => void) | null = null
    const gone = new Promise<void>((done) => (dropped = done))
    kitchen.drafts.drop = async (id) => {
      const answer = await drop(id)
      dropped?.()
      return answer
    }
    fireEvent.click(pad('Save'))
    await gone
    await new Promise((done) => setTimeout(done))
    expect(kitchen.route.value).toBe('#/book')
    expect(await kitchen.drafts.read('d')).toBeNull()
  })

  it('that fails keeps the draft and says so', async () => {
    const kitchen = await open()
    fireEvent.click(pad('Save'))
    expect(await screen.findByText('no store in this test')).toBeTruthy()
    await waitFor(async () => expect(await kept(kitchen)).toBe(TEXT))
  })
})
