import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { voiceNotes } from '../../src/app/voice-notes.ts'
import type { Recorder, TakeRead } from '../../src/shell/media/recorder.ts'
import type { Kitchen, SendOptions, Sent } from '../../src/ui/kitchen.ts'

/** At once: the browser's own takes its time elsewhere. */
const sha256Of = async (bytes: ArrayBuffer): Promise<string> =>
  createHash('sha256').update(new Uint8Array(bytes)).digest('hex')

const take = { mime: 'audio/webm', bytes: new Uint8Array([1, 2]).buffer, lengthMs: 4_000 }

function bench(answers: Sent[] = [], started: Awaited<ReturnType<Recorder['start']>> | null = null) {
  let finish: (read: TakeRead) => void = () => {}
  let opened = 0
  const done = new Promise<TakeRead>((resolve) => {
    finish = resolve
  })
  const sent: { potId: string; type: string; options: SendOptions | undefined }[] = []
  const send: Kitchen['send'] = async (potId, command, options) => {
    sent.push({ potId, type: command.type, options })
    return answers.shift() ?? { ok: true }
  }
  const recording = { end: () => finish({ ok: true, take }), leftMs: () => 12_000, done }
  const recorder: Recorder = {
    start: async () => {
      opened += 1
      return started ?? { ok: true, recording }
    }
  }
  let ids = 0
  const voice = voiceNotes({ send, newId: () => `id${++ids}`, recorder: async () => recorder, sha256Of })
  return { voice, sent, finish: (read: TakeRead) => finish(read), opened: () => opened }
}

/** All that needs no time. */
const settle = (): Promise<void> => new Promise((done) => setTimeout(done))

describe('a voice note', () => {
  it('goes from the pad to the journal with its bytes, under their hash', async () => {
    const { voice, sent } = bench()
    voice.start('moss')
    expect(voice.state.value).toEqual({ kind: 'asking', potId: 'moss' })
    await settle()
    expect([voice.state.value, voice.leftMs()]).toEqual([{ kind: 'recording', potId: 'moss' }, 12_000])
    voice.end()
    await settle()
    expect(voice.state.value).toEqual({ kind: 'stored', potId: 'moss', lengthMs: 4_000 })
    const sha256 = await sha256Of(take.bytes)
    expect(sent).toMatchObject([
      { potId: 'moss', type: 'NoteVoice', options: { media: [{ sha256, bytes: take.bytes }] } }
    ])
  })

  it('is one at a time: a second start while it runs opens no second microphone', async () => {
    const { voice, opened } = bench()
    voice.start('moss')
    voice.start('plum')
    await settle()
    voice.start('plum')
    await settle()
    expect([opened(), voice.state.value]).toEqual([1, { kind: 'recording', potId: 'moss' }])
  })

  it('is kept at hand where nobody answered, and sent again under the same id', async () => {
    const { voice, sent } = bench([{ ok: false, refusal: null, say: 'no answer' }])
    voice.start('moss')
    await settle()
    voice.end()
    await settle()
    expect(voice.state.value).toEqual({ kind: 'failed', potId: 'moss', say: 'no answer', again: true })
    voice.again()
    await settle()
    expect(voice.state.value.kind).toBe('stored')
    expect(new Set(sent.map(({ options }) => options?.commandId))).toEqual(new Set(['id1']))
  })

  it('that is refused is not offered again', async () => {
    const refusal = { code: 'no-room', say: 'full' } as const
    const { voice, sent } = bench([{ ok: false, refusal, say: 'full' }])
    voice.start('moss')
    await settle()
    voice.end()
    await settle()
    expect(voice.state.value).toMatchObject({ kind: 'failed', say: 'full', again: false })
    voice.dismiss()
    voice.again()
    await settle()
    expect([voice.state.value.kind, sent.length]).toEqual(['idle', 1])
  })

  it('says why where the microphone stays shut or nothing was heard', async () => {
    const shut = bench([], { ok: false, say: 'not allowed' })
    shut.voice.start('moss')
    await settle()
    expect(shut.voice.state.value).toMatchObject({ kind: 'failed', say: 'not allowed' })
    const silent = bench()
    silent.voice.start('moss')
    await settle()
    silent.finish({ ok: false, say: 'nothing' })
    await settle()
    expect(silent.voice.state.value).toMatchObject({ kind: 'failed', say: 'nothing', again: false })
    expect(silent.sent).toEqual([])
  })
})
