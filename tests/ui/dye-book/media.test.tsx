// @vitest-environment happy-dom
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { KitchenMedia } from '../../../src/ui/media.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { DyeBookScreen } from '../../../src/ui/screens/dye-book/index.tsx'
import { SettingsScreen } from '../../../src/ui/screens/settings/index.tsx'
import { mossRun } from '../../core/record/moss.ts'
import { aKitchen, type TestKitchen } from './a-kitchen.ts'

const sha256 = 'a'.repeat(64)
const other = 'b'.repeat(64)
const picture = { sha256, mime: 'image/jpeg', bytes: 600_000, widthPx: 1632, heightPx: 1224 }
const speech = { sha256: other, mime: 'audio/webm', bytes: 90_000, lengthMs: 12_400 }

function withMedia(read: KitchenMedia['read']): TestKitchen {
  const bench = mossRun()
  bench.do({ type: 'NotePhoto', what: 'the bath', media: picture })
  bench.do({ type: 'NoteVoice', media: speech })
  const kitchen = aKitchen({ journals: [{ potId: 'pot-a', entries: bench.entries }], nowMs: bench.nowMs })
  const sizes = async () => ({ photos: 3, photoBytes: 1_840_000, sounds: 1, soundBytes: 90_400 })
  kitchen.media = { read, sizes } as KitchenMedia
  kitchen.go('#/dye-book/pot-a')
  return kitchen
}

const found: KitchenMedia['read'] = async () => ({ ok: true, blob: new Blob(['x']) })

beforeEach(forgetTaps)
afterEach(cleanup)

describe('the pictures and voice notes of a record', () => {
  it('stand at their step and time, and say in words what can’t be seen', async () => {
    render(<DyeBookScreen kitchen={withMedia(found)} />)
    const image = await screen.findByRole('img', { name: /^Moss, Heat off, \d\d:\d\d, the bath$/ })
    expect(image.getAttribute('src')).toMatch(/^blob:/)
    const audio = await waitFor(() => document.querySelector('audio') as HTMLAudioElement)
    expect(audio.getAttribute('aria-label')).toMatch(/^Moss, Heat off, \d\d:\d\d, voice note, 12 s$/)
    expect(audio.hasAttribute('controls')).toBe(true)
    // Among the readings it would be told twice.
    const readings = document.getElementById('book-readings')?.parentElement?.textContent
    expect(readings).not.toContain('the bath')
  })

  it('say why where their bytes are missing or damaged', async () => {
    render(<DyeBookScreen kitchen={withMedia(async () => ({ ok: false, say: 'It is damaged and can’t be shown.' }))} />)
    expect(await screen.findAllByText('It is damaged and can’t be shown.')).toHaveLength(2)
  })

  it('are let go by a held pad, with the reason, and the record says that they were there', async () => {
    const kitchen = withMedia(found)
    render(<DyeBookScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByRole('img', { name: /the bath$/ }))
    fireEvent.click(await screen.findByText('private'))
    const hold = screen.getByRole('button', { name: /Let this picture go/ })
    fireEvent.click(hold)
    expect(kitchen.sent).toEqual([])
    fireEvent.keyDown(hold, { key: 'Enter' })
    await waitFor(() => expect(kitchen.sent).toHaveLength(1), { timeout: 2_000 })
    expect(kitchen.sent[0]?.command).toEqual({ type: 'TrimMedia', sha256, why: 'private' })
    await screen.findByText('Let go: private')
    expect(screen.queryByRole('img', { name: /the bath$/ })).toBeNull()
    expect(document.querySelector('audio')).not.toBeNull()
  })

  it('stay, in words, where letting go could not be stored', async () => {
    const kitchen = withMedia(found)
    render(<DyeBookScreen kitchen={kitchen} />)
    fireEvent.click(await screen.findByRole('img', { name: /the bath$/ }))
    kitchen.failNext = { ok: false, refusal: null, say: 'Not saved. The storage is full.' }
    fireEvent.keyDown(await screen.findByRole('button', { name: /Let this picture go/ }), { key: 'Enter' })
    expect((await screen.findByRole('alert', {}, { timeout: 2_000 })).textContent).toContain('Not saved.')
  })
})

describe('settings', () => {
  it('tell the bytes of photos and of sound apart', async () => {
    render(<SettingsScreen kitchen={withMedia(found)} />)
    const line = await screen.findByText(/3 photos/)
    expect(line.textContent?.replaceAll('\u00a0', ' ')).toContain('3 photos, 1.8 MB, and 1 voice note, 91 kB.')
  })

  it('say so where the store can’t be read', async () => {
    const kitchen = withMedia(found)
    kitchen.media = { sizes: () => Promise.reject(new Error('lost')) } as unknown as KitchenMedia
    render(<SettingsScreen kitchen={kitchen} />)
    await screen.findByText(/can’t be read now/)
  })
})
