// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import type { StoredProtocol } from '../../../src/ui/kitchen.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { ProtocolsScreen } from '../../../src/ui/screens/protocols/index.tsx'
import type { Came } from '../../../src/ui/writing.ts'
import { aKitchen, type TestKitchen } from '../dye-book/a-kitchen.ts'

const text = (times: number, title = 'Rinses'): string =>
  `strandline: 1\ntitle: ${title}\nsteps:\n${'- rinse\n'.repeat(times)}`

function stored(more: Partial<StoredProtocol> & { text: string }): StoredProtocol {
  const read = readProtocol(more.text)
  if (!read.ok) throw new Error('a protocol of a test can be read')
  return { id: 'known', file: 'known.yaml', protocol: read.protocol, from: 'file', ...more }
}

type Saved = { text: string; came: Came | undefined }

async function open(
  draft: string,
  protocols: StoredProtocol[] = []
): Promise<{ kitchen: TestKitchen; saved: Saved[] }> {
  const kitchen = aKitchen({ protocols, nowMs: 0 })
  const saved: Saved[] = []
  kitchen.saveProtocol = async (given, came) => {
    saved.push({ text: given, came })
    return { ok: true, stored: stored({ id: 'own-1', text: given }) }
  }
  const shared = { id: 'd 1', title: 'Rinses', changedAtMs: 0, undo: [], redo: [] }
  await kitchen.drafts.keep({ ...shared, text: draft, cameAs: 'mine.yaml' })
  kitchen.signals.route.value = '#/protocols/came/d%201'
  render(<ProtocolsScreen kitchen={kitchen} />)
  return { kitchen, saved }
}

const pad = (name: string | RegExp): Promise<HTMLElement> => screen.findByRole('button', { name })

beforeEach(forgetTaps)
afterEach(cleanup)

describe('a protocol that was brought in', () => {
  it('is read before it is kept, and kept by one press where nothing of its title is here', async () => {
    const { kitchen, saved } = await open(text(2))
    fireEvent.click(await pad('Keep it'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/own-1'))
    expect(saved).toEqual([{ text: text(2), came: { cameAs: 'mine.yaml', joins: null } }])
    expect((await kitchen.drafts.list()).drafts).toEqual([])
  })

  it('pressed again while it is being kept is kept once', async () => {
    const { kitchen, saved } = await open(text(2))
    const { drop } = kitchen.drafts
    let dropNow = (): void => {}
    const given = new Promise<void>((done) => (dropNow = done))
    kitchen.drafts.drop = async (id) => given.then(() => drop(id))
    const keep = await pad('Keep it')
    fireEvent.click(keep)
    await waitFor(() => expect(saved).toHaveLength(1))
    // The store has answered, and the draft is still to go.
    await Promise.resolve()
    forgetTaps()
    fireEvent.click(keep)
    dropNow()
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/own-1'))
    expect(saved).toHaveLength(1)
  })

  it('takes nobody back who went elsewhere while it was being kept', async () => {
    const { kitchen, saved } = await open(text(2))
    const { drop } = kitchen.drafts
    let dropped = false
    kitchen.drafts.drop = async (id) => {
      kitchen.go('#/start')
      const answer = await drop(id)
      dropped = true
      return answer
    }
    fireEvent.click(await pad('Keep it'))
    await waitFor(() => expect(dropped).toBe(true))
    // What is known is read again after that, and only then the way would lead on.
    await new Promise((done) => setTimeout(done))
    expect(kitchen.route.value).toBe('#/start')
    expect(saved).toHaveLength(1)
  })

  it('of the title of another is kept only as what the dyer says: its next version', async () => {
    const own = stored({ id: 'own-1', text: text(2), written: { savedAtMs: 0, versions: 3 } })
    const { saved } = await open(text(4), [own])
    await screen.findByText(/Another Rinses is here: version 3, saved/)
    expect(screen.queryByRole('button', { name: 'Keep it' })).toBeNull()
    fireEvent.click(await pad('Keep it as version 4 of Rinses'))
    await waitFor(() => expect(saved).toEqual([{ text: text(4), came: { cameAs: 'mine.yaml', joins: null } }]))
  })

  it('or another protocol, under a title that nothing has', async () => {
    const own = stored({ id: 'own-1', text: text(2), written: { savedAtMs: 0, versions: 3 } })
    const { saved } = await open(text(4), [own, stored({ id: 'own-2', text: text(1, 'Rinses, 2') })])
    const field = (await screen.findByLabelText('Its title as another protocol')) as HTMLInputElement
    expect(field.value).toBe('Rinses, 3')
    fireEvent.input(field, { target: { value: ' rinses ' } })
    fireEvent.click(await pad('Keep it as another protocol'))
    await screen.findByText(/There is one of that title too/)
    expect(saved).toEqual([])
    fireEvent.input(field, { target: { value: 'Their rinses' } })
    // So soon after the last a tap counts for nothing.
    forgetTaps()
    fireEvent.click(await pad('Keep it as another protocol'))
    await waitFor(() =>
      expect(saved).toEqual([{ text: text(4, 'Their rinses'), came: { cameAs: 'mine.yaml', joins: null } }])
    )
  })

  it('meeting one without versions takes it with it as the first of them', async () => {
    const { saved } = await open(text(4), [stored({ id: 'file-1', text: text(2) })])
    fireEvent.click(await pad('Keep it as version 2 of Rinses'))
    await waitFor(() => expect(saved[0]?.came).toEqual({ cameAs: 'mine.yaml', joins: 'file-1' }))
  })

  it('meeting both one with versions and one without is the next version of the one that has them', async () => {
    const own = stored({ id: 'own-1', text: text(3), written: { savedAtMs: 0, versions: 1 } })
    const { saved } = await open(text(4), [stored({ id: 'file-1', text: text(2) }), own])
    fireEvent.click(await pad('Keep it as version 2 of Rinses'))
    await waitFor(() => expect(saved[0]?.came).toEqual({ cameAs: 'mine.yaml', joins: null }))
  })

  it('of the title of a built-in can only stand beside it', async () => {
    await open(text(4), [stored({ id: 'rinses', text: text(2), from: 'built-in' })])
    await screen.findByText(/Another Rinses is built in, and stays as it is/)
    expect(screen.queryByRole('button', { name: /version/ })).toBeNull()
    expect(await pad('Keep it as another protocol')).toBeTruthy()
  })

  it('that is here already, word for word, leads there and leaves no draft of it', async () => {
    const { kitchen } = await open(text(2), [stored({ id: 'file-1', text: text(2) })])
    fireEvent.click(await pad('Open the one that is here'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/file-1'))
    expect((await kitchen.drafts.list()).drafts).toEqual([])
  })

  it.each([
    ['refused', async () => ({ ok: false, refusal: null, say: 'no room' }) as const],
    ['broken', () => Promise.reject(new Error('no store'))]
  ])('leads there also where dropping the draft is %s', async (_, drop) => {
    const { kitchen } = await open(text(2), [stored({ id: 'file-1', text: text(2) })])
    kitchen.drafts.drop = drop
    fireEvent.click(await pad('Open the one that is here'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/file-1'))
  })

  it('that could not be kept says so, stays a draft, and can be used all the same', async () => {
    const { kitchen } = await open(text(2))
    kitchen.saveProtocol = async () => ({ ok: false, problems: [], say: 'Not saved: no room.' })
    fireEvent.click(await pad('Keep it'))
    await screen.findByText('Not saved: no room.')
    forgetTaps()
    expect((await kitchen.drafts.list()).drafts).toHaveLength(1)
    fireEvent.click(await pad('Use it until this page is closed'))
    await waitFor(() => expect(kitchen.route.value).toBe('#/protocols/came-d%201'))
    expect(await pad('Start a pot')).toBeTruthy()
  })

  it('with problems, or gone, says so and where to go on', async () => {
    const { kitchen } = await open('strandline: 1\ntitle: Rinses\nsteps:\n- hoover\n- heet\n')
    await screen.findByText(/Rinses can’t be run yet. Line 4: .*hoover.* And 1 more/)
    fireEvent.click(await pad('Mend it'))
    expect(kitchen.route.value).toBe('#/protocols/write/d%201')
    kitchen.signals.route.value = '#/protocols/came/other'
    await screen.findByText('That draft is not here any more.')
  })
})
