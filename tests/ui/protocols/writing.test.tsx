// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import type { StoredProtocol } from '../../../src/ui/kitchen.ts'
import { forgetTaps, HOLD_MS } from '../../../src/ui/parts/guard.ts'
import { ProtocolsScreen } from '../../../src/ui/screens/protocols/index.tsx'
import type { ProtocolDraft } from '../../../src/ui/writing.ts'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'
import { dip } from '../start/dip.ts'

const NOW = new Date(2031, 5, 14, 12, 0).getTime()
const draft = (id: string, title: string, changedAtMs: number): ProtocolDraft => ({
  id,
  title,
  text: '',
  changedAtMs,
  undo: [],
  redo: []
})

function written(savedAtMs: number, holdFor: string, versions = 2): StoredProtocol {
  const text = `strandline: 1\ntitle: Mine\nsteps:\n  - soak: 10 min\n  - hold: ${holdFor}\n  - rinse\n`
  const read = readProtocol(text)
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  const { protocol } = read
  return { id: 'own-1', file: 'Mine.yaml', text, protocol, from: 'file', written: { savedAtMs, versions } }
}

function open(route = '#/protocols', protocols = [dip()]): TestKitchen {
  const kitchen = aKitchen({ protocols, nowMs: NOW })
  kitchen.signals.route.value = route
  return kitchen
}

async function begun(kitchen: TestKitchen): Promise<ProtocolDraft | null> {
  await waitFor(() => expect(kitchen.route.value).toMatch(/^#\/protocols\/write\//))
  return kitchen.drafts.read(decodeURIComponent(kitchen.route.value.split('/')[3] ?? ''))
}

beforeEach(() => {
  forgetTaps()
})
afterEach(cleanup)

describe('beginning to write', () => {
  it('from nothing gives a protocol that can be run', async () => {
    const kitchen = open()
    render(<ProtocolsScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByText('Write a protocol'))
    const made = await begun(kitchen)
    expect(made).toMatchObject({ title: 'New protocol', changedAtMs: NOW })
    expect(readProtocol(made?.text ?? '')).toMatchObject({ ok: true })
  })

  it('from a built-in copies its text under a title of its own, comments and all', async () => {
    const kitchen = open('#/protocols/dip')
    render(<ProtocolsScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByText('Change a copy'))
    const made = await begun(kitchen)
    expect(made?.title).toBe('Dip gradient, wool, changed')
    expect(made?.text).toContain('Dip gradient, wool, changed')
    const lines = (text = ''): string[] => text.split('\n').filter((line) => !line.startsWith('title:'))
    expect(lines(made?.text)).toEqual(lines(dip().text))
  })

  it('from one that was written here keeps the title: saved, it is its next version', async () => {
    const kitchen = open('#/protocols/own-1', [written(NOW, '6 min')])
    render(<ProtocolsScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByText('Change a copy'))
    expect(await begun(kitchen)).toMatchObject({ title: 'Mine', text: written(NOW, '6 min').text })
  })
})

describe('drafts', () => {
  it('stand above the protocols with when they were changed, and lead back to the writing', async () => {
    const kitchen = open()
    await kitchen.drafts.keep(draft('a b', 'Moss, second try', NOW - 90 * 60_000))
    render(<ProtocolsScreen kitchen={kitchen} />)
    const line = (await screen.findByText('Moss, second try')).closest('button') as HTMLElement
    expect(line.textContent).toContain('Changed today 10:30')
    const order = line.compareDocumentPosition(await screen.findByText('Dip gradient, wool'))
    expect(order & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy()
    fireEvent.click(line)
    expect(kitchen.route.value).toBe('#/protocols/write/a%20b')
  })

  it('are dropped by a hold, not by a tap', async () => {
    const kitchen = open()
    await kitchen.drafts.keep(draft('a', 'Moss', NOW))
    render(<ProtocolsScreen kitchen={kitchen} />)
    const drop = await screen.findByRole('button', { name: 'Drop Moss: press and hold' })
    expect(drop.textContent).toContain('press and hold')
    fireEvent.click(drop)
    expect(await kitchen.drafts.read('a')).not.toBeNull()
    fireEvent.pointerDown(drop)
    await new Promise((resolve) => setTimeout(resolve, HOLD_MS + 100))
    fireEvent.pointerUp(drop)
    expect(await screen.findByText('Moss is dropped.')).toBeTruthy()
    expect(await kitchen.drafts.read('a')).toBeNull()
    expect(screen.queryByText('Drafts')).toBeNull()
  })

  it('that can’t be read are counted and hide no other', async () => {
    const kitchen = open()
    kitchen.drafts.list = async () => ({ drafts: [draft('a', 'Moss', NOW)], unreadable: 2 })
    render(<ProtocolsScreen kitchen={kitchen} />)
    expect(await screen.findByText('Moss')).toBeTruthy()
    expect(screen.getByText('2 drafts can’t be read.')).toBeTruthy()
  })
})

describe('a protocol in several versions', () => {
  const versions = [
    written(NOW, '8 min', 3),
    written(NOW - 3_600_000, '7 min', 3),
    written(NOW - 7_200_000, '6 min', 3)
  ]

  async function read(): Promise<TestKitchen> {
    const kitchen = open('#/protocols/own-1', versions.slice(0, 1))
    kitchen.versions = async () => versions
    render(<ProtocolsScreen kitchen={kitchen} />)
    const details = (await screen.findByText('Earlier versions (2)')).closest('details') as HTMLDetailsElement
    details.open = true
    fireEvent(details, new Event('toggle'))
    await screen.findByLabelText('What changed')
    return kitchen
  }
  const changes = (): string => document.querySelector('.protocols-compare')?.textContent ?? ''

  it('shows what changed from the one before, step by step', async () => {
    await read()
    expect(changes()).toContain('Was Hold 7 min')
    expect(changes()).toContain('Now Hold 8 min')
    expect(changes()).not.toContain('Rinse')
    fireEvent.click(screen.getByText('All steps'))
    expect(changes()).toContain('Rinse')
  })

  it('compares any two, and begins from an older one', async () => {
    const kitchen = await read()
    fireEvent.change(screen.getByLabelText('Was'), { target: { value: '2' } })
    expect(changes()).toContain('Was Hold 6 min')
    fireEvent.click(screen.getByText('Change a copy of what was'))
    expect((await begun(kitchen))?.text).toBe(versions[2]?.text)
  })

  it('is not offered where there is one', async () => {
    const kitchen = open('#/protocols/own-1', [written(NOW, '6 min', 1)])
    render(<ProtocolsScreen kitchen={kitchen} />)
    await screen.findByText('Change a copy')
    expect(screen.queryByText(/Earlier versions/)).toBeNull()
  })
})
