// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { bringIn } from '../../../src/app/bring-in.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { ProtocolsScreen } from '../../../src/ui/screens/protocols/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { dip } from '../start/dip.ts'

function open(route = '#/protocols', protocols = [dip()]): TestKitchen {
  const kitchen = aKitchen({ protocols, nowMs: 0 })
  kitchen.bringIn = (file) => bringIn(file, kitchen.drafts, kitchen.newId(), 0)
  kitchen.signals.route.value = route
  render(<ProtocolsScreen kitchen={kitchen} />)
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)

async function choose(name: string, text: BlobPart): Promise<void> {
  const input = (await screen.findByLabelText(/Open a protocol from a file/)) as HTMLInputElement
  Object.defineProperty(input, 'files', { value: [new File([text], name)], configurable: true })
  fireEvent.change(input)
}

beforeEach(() => {
  forgetTaps()
})
afterEach(cleanup)

describe('the list', () => {
  it('tells how long each takes on the clock and by hand, and marks what is invented', async () => {
    open()
    const line = plain((await screen.findByText('Dip gradient, wool')).closest('button')?.textContent)
    expect(line).toMatch(/About \d.* (h|min), hands \d+ min/)
    expect(line).toContain('invented for the demo')
  })

  it('teaches what a protocol is while there is none', async () => {
    open('#/protocols', [])
    expect(await screen.findByText('No protocol yet')).toBeTruthy()
    expect(screen.getByLabelText(/Open a protocol from a file/)).toBeTruthy()
    expect(document.querySelector('details.protocols-bring')?.hasAttribute('open')).toBe(true)
  })
})

describe('reading one', () => {
  it('shows the use, the trouble, the steps with amounts, the strand, and the text itself', async () => {
    open('#/protocols/dip')
    await screen.findByText('Steps')
    for (const words of [
      'To see whether a mixed dye splits',
      'Bands blur',
      '20 mL of white vinegar',
      '3 times',
      'out of the bath at most 3 min'
    ]) {
      expect(page()).toContain(words)
    }
    expect(screen.getByRole('img').querySelectorAll('.knot-mark').length).toBeGreaterThan(8)
    expect(document.querySelector('pre')?.textContent).toBe(dip().text)
  })

  it('gives each caution in full where it is first met and as a line from then on', async () => {
    open('#/protocols/dip')
    await screen.findByText('Steps')
    expect(screen.getAllByText('Heat on')).toHaveLength(1)
    expect(page().split('Stay by the pot. Leaving: heat off first.').length).toBeGreaterThan(2)
    expect(page()).toContain('This is not a safety assessment.')
  })

  it('leads to a pot by it', async () => {
    const kitchen = open('#/protocols/dip')
    fireEvent.click(await screen.findByText('Start a pot'))
    expect(kitchen.route.value).toBe('#/start/dip')
  })

  it('says so where it is not here', async () => {
    open('#/protocols/gone')
    expect(await screen.findByText(/That protocol is not here/)).toBeTruthy()
  })
})

describe('a protocol from elsewhere', () => {
  const title = 'My own'
  const mine = dip().text.replace('Dip gradient, wool', title)

  it('as a file that can be run goes on to where it is kept', async () => {
    const kitchen = open()
    await choose('mine.yaml', mine)
    await waitFor(() => expect(kitchen.route.value).toMatch(/^#\/protocols\/came\//))
    expect((await kitchen.drafts.list()).drafts).toMatchObject([{ title, cameAs: 'mine.yaml' }])
  })

  it('with problems goes on to where it is mended, with nothing of it lost', async () => {
    const kitchen = open()
    const broken = dip().text.replace('- hold:', '- hodl:')
    await choose('mine.yaml', broken)
    await waitFor(() => expect(kitchen.route.value).toMatch(/^#\/protocols\/write\//))
    const [line] = (await kitchen.drafts.list()).drafts
    expect((await kitchen.drafts.read(line?.id ?? ''))?.text).toBe(broken)
  })

  it('that is no text is refused where it was chosen', async () => {
    const kitchen = open()
    await choose('skein.png', new Uint8Array([1, 0, 2, 3, 4, 5, 6, 7]))
    expect((await screen.findByRole('alert')).textContent).toMatch(/skein\.png is no text.*plain text/)
    expect(kitchen.route.value).toBe('#/protocols')
  })

  it('is pasted by a pad where the browser lets a page read the clipboard', async () => {
    const kitchen = open()
    kitchen.signals.sharing.value = { copy: async () => true, paste: async () => mine, share: null }
    fireEvent.click(await screen.findByText('Paste from the clipboard'))
    await waitFor(() => expect(kitchen.route.value).toMatch(/^#\/protocols\/came\//))
    expect((await kitchen.drafts.list()).drafts).toMatchObject([{ title, cameAs: 'pasted text' }])
  })

  it('is pasted into a field where that is refused, and the refusal is told', async () => {
    const kitchen = open()
    kitchen.signals.sharing.value = { copy: async () => true, paste: async () => null, share: null }
    fireEvent.click(await screen.findByText('Paste from the clipboard'))
    await screen.findByText(/did not let this page read the clipboard/)
    fireEvent.input(screen.getByLabelText('Or paste its text here'), { target: { value: mine } })
    fireEvent.click(screen.getByText('Read this text'))
    await waitFor(() => expect(kitchen.route.value).toMatch(/^#\/protocols\/came\//))
  })

  it('has no pad to paste by where there is no clipboard to read', async () => {
    open()
    expect(await screen.findByLabelText('Paste its text here')).toBeTruthy()
    expect(screen.queryByText('Paste from the clipboard')).toBeNull()
  })

  it('stays in the field when it could not be read', async () => {
    const kitchen = open()
    kitchen.bringIn = () => Promise.reject(new Error('no network'))
    fireEvent.input(await screen.findByLabelText('Paste its text here'), { target: { value: mine } })
    fireEvent.click(screen.getByText('Read this text'))
    expect((await screen.findByRole('alert')).textContent).toContain('nothing was read')
    expect((screen.getByLabelText('Paste its text here') as HTMLTextAreaElement).value).toBe(mine)
  })
})
