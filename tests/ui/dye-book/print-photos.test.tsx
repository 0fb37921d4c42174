// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor, within } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { KitchenMedia } from '../../../src/ui/media.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { PrintPage } from '../../../src/ui/screens/dye-book/print/index.tsx'
import type { Bench } from '../../core/pot/given.ts'
import { mossRun } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const named = (nth: number) => ({
  sha256: String(nth).padStart(64, '0'),
  mime: 'image/jpeg',
  bytes: 600_000,
  widthPx: 1632,
  heightPx: 1224
})

function withPhotos(count: number): Bench {
  const bench = mossRun()
  for (let nth = 0; nth < count; nth++) bench.do({ type: 'NotePhoto', what: `sight ${nth}`, media: named(nth) })
  return bench
}

function open(bench: Bench, read?: KitchenMedia['read']): TestKitchen {
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries: bench.entries }], nowMs: bench.nowMs })
  if (read) kitchen.media = { read } as KitchenMedia
  render(<PrintPage kitchen={kitchen} potId="pot-a" />)
  return kitchen
}

const found: KitchenMedia['read'] = async () => ({ ok: true, blob: new Blob(['x']) })
const paper = async () => within(await screen.findByRole('article'))
const pad = () => screen.getByRole('button', { name: 'Print' }) as HTMLButtonElement

beforeEach(forgetTaps)
afterEach(cleanup)

describe('photos on paper', () => {
  it('have step, time and what they show under them', async () => {
    open(withPhotos(2), found)
    const captions = await (await paper()).findAllByText(/^Heat off, \d\d:\d\d: sight \d$/)
    expect(captions.map(({ textContent }) => textContent?.slice(-7))).toEqual(['sight 0', 'sight 1'])
    await waitFor(() => expect(screen.getAllByRole('img', { name: /sight/ })).toHaveLength(2))
  })

  it('are waited for: nothing is printed while one is being opened', async () => {
    open(withPhotos(1), found)
    const image = await (await paper()).findByRole('img', { name: /sight 0$/ })
    await waitFor(() => expect(pad().disabled).toBe(true))
    expect(screen.getByText('Opening the photos.')).toBeTruthy()
    fireEvent.load(image)
    await waitFor(() => expect(pad().disabled).toBe(false))
    expect(screen.queryByText('Opening the photos.')).toBeNull()
  })

  it('keep nothing waiting on a tag, where there are none', async () => {
    open(withPhotos(1), found)
    await waitFor(() => expect(pad().disabled).toBe(true))
    fireEvent.click(screen.getByText('Tag'))
    await waitFor(() => expect(pad().disabled).toBe(false))
  })

  it('say in their place why they can’t be shown, and hold up nothing', async () => {
    open(withPhotos(1), async () => ({ ok: false, say: 'It is damaged and can’t be shown.' }))
    expect(await (await paper()).findByText('It is damaged and can’t be shown.')).toBeTruthy()
    await waitFor(() => expect(pad().disabled).toBe(false))
    cleanup()
    open(withPhotos(1))
    expect(await (await paper()).findByText('It can’t be shown here.')).toBeTruthy()
    await waitFor(() => expect(pad().disabled).toBe(false))
  })

  it('that no browser can draw say so too', async () => {
    open(withPhotos(1), found)
    fireEvent.error(await (await paper()).findByRole('img', { name: /sight 0$/ }))
    expect(await (await paper()).findByText('It can’t be shown here.')).toBeTruthy()
    await waitFor(() => expect(pad().disabled).toBe(false))
  })

  it('that were let go say why, those that were undone are not among them, and none at all has no title', async () => {
    const bench = withPhotos(2)
    bench.do({ type: 'Undo' })
    bench.do({ type: 'TrimMedia', sha256: named(0).sha256, why: 'private' })
    open(bench, found)
    expect(await (await paper()).findByText('Let go: private')).toBeTruthy()
    expect((await paper()).queryByText(/^Heat off, .*sight 1$/)).toBeNull()
    await waitFor(() => expect(pad().disabled).toBe(false))
    cleanup()
    open(mossRun(), found)
    expect((await paper()).queryByText('Photos')).toBeNull()
  })

  it('past two dozen are counted', async () => {
    open(withPhotos(30), found)
    expect(await (await paper()).findByText('and 6 more photos: see the record on the device')).toBeTruthy()
    expect((await paper()).getByText(/sight 0$/)).toBeTruthy()
    expect((await paper()).getByText(/sight 29$/)).toBeTruthy()
    expect((await paper()).queryByText(/sight 15$/)).toBeNull()
  })
})
