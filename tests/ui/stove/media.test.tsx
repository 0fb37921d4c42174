// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { waitFor, within } from '@testing-library/preact'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { KitchenMedia, PhotoRead, ReadyPhoto, VoiceState } from '../../../src/ui/media.ts'
import type { FixtureKitchen } from './fixtures.ts'
import { noon } from './fixtures.ts'
import { atTheStove, call, open, sent, settle, sheet, tap, text } from './hands.tsx'
import * as made from './pots.ts'

atTheStove()

const photo: ReadyPhoto = {
  sha256: 'a'.repeat(64),
  mime: 'image/jpeg',
  bytes: new ArrayBuffer(3),
  widthPx: 1632,
  heightPx: 1224
}

type Shown = KitchenMedia & { state: { value: VoiceState }; reads: PhotoRead[]; asked: string[] }

function media(): Shown {
  const state = signal<VoiceState>({ kind: 'idle' })
  const asked: string[] = []
  const reads: PhotoRead[] = []
  const say = (what: string) => (): void => void asked.push(what)
  return {
    state,
    reads,
    asked,
    choosePicture: async (from) => {
      asked.push(from)
      return new File(['x'], 'bath.jpg', { type: 'image/jpeg' })
    },
    readPhoto: async () => reads.shift() ?? { ok: true, photo },
    voice: {
      state,
      leftMs: () => 12_000,
      start: (potId) => {
        asked.push(`start ${potId}`)
        state.value = { kind: 'recording', potId }
      },
      end: say('end'),
      again: say('again'),
      dismiss: say('dismiss')
    },
    read: async () => ({ ok: false, say: 'none' }),
    sizes: async () => ({ photos: 0, photoBytes: 0, sounds: 0, soundBytes: 0 })
  }
}

async function inMore(name: string): Promise<{ kitchen: FixtureKitchen; shown: Shown }> {
  const kitchen = await open(made.moss())
  const shown = media()
  kitchen.media = shown
  await tap('Moss: more')
  await tap(name, sheet())
  await waitFor(() => expect(within(sheet()).getAllByRole('button').length).toBeGreaterThan(1))
  await settle()
  return { kitchen, shown }
}

afterEach(() => vi.restoreAllMocks())

describe('a photo at the Stove', () => {
  it('is looked at, said what it shows, and sent with its bytes under one id', async () => {
    const { kitchen, shown } = await inMore('Photo')
    const send = vi.spyOn(kitchen, 'send')
    await tap('Camera', sheet())
    await waitFor(() => expect(sheet().querySelector('img')).not.toBeNull())
    await tap('skein', sheet())
    await tap('Moss: keep the picture', sheet())
    const { sha256, mime, bytes, widthPx, heightPx } = photo
    const named = { sha256, mime, bytes: 3, widthPx, heightPx }
    expect(sent(kitchen)).toEqual([{ type: 'NotePhoto', what: 'skein', media: named }])
    expect(send.mock.calls[0]?.[2]).toMatchObject({ media: [{ sha256, mime, bytes }], commandId: expect.any(String) })
    expect(shown.asked).toEqual(['camera'])
    await waitFor(() => expect(sheet()).toBeNull())
  })

  it('that can’t be read is told of in words, and the one before it is not lost', async () => {
    const { kitchen, shown } = await inMore('Photo')
    shown.reads.push({ ok: false, say: 'bath.jpg is empty.' })
    await tap('From a file', sheet())
    await waitFor(() => expect(text(sheet())).toContain('bath.jpg is empty.'))
    await tap('From a file', sheet())
    await waitFor(() => expect(sheet().querySelector('img')).not.toBeNull())
    shown.reads.push({ ok: false, say: 'worse.jpg is not kept.' })
    await tap('Camera again', sheet())
    await waitFor(() => expect(text(sheet())).toContain('worse.jpg is not kept.'))
    expect(sheet().querySelector('img')).not.toBeNull()
    expect(sent(kitchen)).toEqual([])
  })

  it('stays at hand when it could not be kept', async () => {
    const { kitchen } = await inMore('Photo')
    await tap('Camera', sheet())
    await waitFor(() => expect(sheet().querySelector('img')).not.toBeNull())
    kitchen.failNext = { ok: false, refusal: null, say: 'Not saved.' }
    await tap('Moss: keep the picture', sheet())
    await waitFor(() => expect(text(sheet())).toContain('Not saved.'))
    expect(sheet().querySelector('img')).not.toBeNull()
  })

  it('taken with something else is noted without a picture', async () => {
    const { kitchen } = await inMore('Photo')
    await tap('Taken elsewhere: note it only', sheet())
    const field = within(sheet()).getByLabelText('What the photo shows') as HTMLTextAreaElement
    field.value = 'the skein'
    field.dispatchEvent(new Event('input', { bubbles: true }))
    await settle()
    await tap('Photo noted', sheet())
    expect(sent(kitchen)).toEqual([{ type: 'NotePhoto', what: 'the skein', media: null }])
  })

  it('is not offered where nothing can take it', async () => {
    await open(made.moss())
    await tap('Moss: more')
    expect(within(sheet()).queryByRole('button', { name: 'Photo' })).toBeNull()
  })
})

describe('a voice note at the Stove', () => {
  it('starts and ends with the same pad, and says that the microphone is open', async () => {
    const { shown } = await inMore('Voice note')
    await tap('Moss: speak', sheet())
    expect(text(sheet())).toContain('Microphone open')
    expect(text(sheet())).toContain('12 s')
    await tap('Moss: end the note', sheet())
    expect(shown.asked.map((what) => what.split(' ')[0])).toEqual(['start', 'end'])
  })

  it('says why the microphone stays shut', async () => {
    const { kitchen, shown } = await inMore('Voice note')
    const [pot] = kitchen.pots.value
    shown.state.value = {
      kind: 'failed',
      potId: pot?.potId ?? '',
      say: 'The microphone is not allowed here.',
      again: false
    }
    await settle()
    expect(within(sheet()).getByRole('alert').textContent).toBe('The microphone is not allowed here.')
    expect(within(sheet()).queryByRole('button', { name: /again/ })).toBeNull()
  })

  it('steps aside for a call that comes, and is there again after it', async () => {
    const { kitchen, shown } = await inMore('Voice note')
    await tap('Moss: speak', sheet())
    kitchen.tick(noon + 10 * 60_000)
    await settle()
    expect(call()).not.toBeNull()
    expect(sheet()).toBeNull()
    expect([shown.asked.length, shown.state.value.kind]).toEqual([1, 'recording'])
    await tap('See pots', call())
    expect(call()).toBeNull()
    await waitFor(() => expect(text(sheet())).toContain('Microphone open'))
  })
})
