// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { ProtocolsScreen } from '../../../src/ui/screens/protocols/index.tsx'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { dip } from '../start/dip.ts'

let files = 0

function open(route = '#/protocols', protocols = [dip()]): TestKitchen {
  const kitchen = aKitchen({ protocols, nowMs: 0 })
  kitchen.openProtocolFile = async (file) => {
    const text = await file.text()
    const read = readProtocol(text)
    if (!read.ok) return read
    return { ok: true, stored: { id: `file-${++files}`, file: file.name, text, protocol: read.protocol, from: 'file' } }
  }
  kitchen.signals.route.value = route
  render(<ProtocolsScreen kitchen={kitchen} />)
  return kitchen
}

const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ')
const page = (): string => plain(document.body.textContent)

async function choose(name: string, text: string): Promise<void> {
  const input = (await screen.findByLabelText('Open a protocol from a file')) as HTMLInputElement
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
    expect(screen.getByLabelText('Open a protocol from a file')).toBeTruthy()
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

describe('a file from disk', () => {
  it('is read at once when it is good, and can be run', async () => {
    const kitchen = open()
    await choose('mine.yaml', dip().text.replace('Dip gradient, wool', 'My own'))
    await waitFor(() => expect(kitchen.route.value).toBe(`#/protocols/file-${files}`))
    await screen.findByText('My own')
    fireEvent.click(screen.getByText('Start a pot'))
    expect(kitchen.route.value).toBe(`#/start/file-${files}`)
  })

  it('lists every problem with its line, its column, and what would be right', async () => {
    open()
    await choose('mine.yaml', dip().text.replace('- hold:', '- hodl:').replace('heat: off', 'heat: of'))
    await screen.findByText(/mine.yaml can’t be run: \d problems/)
    const lines = [...document.querySelectorAll('.protocols-problems li')].map((li) => plain(li.textContent))
    expect(lines.length).toBeGreaterThanOrEqual(2)
    for (const line of lines) expect(line).toMatch(/^Line \d+, column \d+: .+/)
    expect(lines.join()).toContain('hold')
  })

  it('is never run and never drawn: markup in it stays text', async () => {
    const kitchen = open()
    await choose('<b>x</b>.yaml', dip().text.replace('Dip gradient, wool', '<img src=x onerror=alert(1)>'))
    await waitFor(() => expect(kitchen.route.value).toBe(`#/protocols/file-${files}`))
    await screen.findByText('Steps')
    expect(document.querySelector('img, b')).toBeNull()
    expect(page()).toContain('<img src=x onerror=alert(1)>')
  })

  it('with thousands of problems shows a hundred and counts the rest', async () => {
    const kitchen = open()
    kitchen.openProtocolFile = async () => ({
      ok: false,
      problems: Array.from({ length: 5000 }, (_, i) => ({
        code: 'x',
        line: i + 1,
        column: 1,
        where: '',
        what: 'wrong',
        instead: 'right'
      }))
    })
    await choose('bomb.yaml', '')
    expect(await screen.findByText('And 4900 more.')).toBeTruthy()
    expect(document.querySelectorAll('.protocols-problems li')).toHaveLength(100)
  })
})
