import { describe, expect, it } from 'vitest'
import type { PotCommand } from '../../../src/core/pot/commands.ts'
import type { PhotoMedia, VoiceMedia } from '../../../src/core/pot/media.ts'
import { Bench } from './given.ts'
import { MIN, programme, wait } from './programmes.ts'

const sha256 = '0123456789abcdef'.repeat(4)
const picture: PhotoMedia = { sha256, mime: 'image/jpeg', bytes: 600_000, widthPx: 1632, heightPx: 1224 }
const speech: VoiceMedia = { sha256, mime: 'audio/webm;codecs=opus', bytes: 90_000, lengthMs: 29_900 }
const photo = (change: Partial<PhotoMedia>): PotCommand => {
  return { type: 'NotePhoto', what: 'the bath', media: { ...picture, ...change } }
}
const voice = (change: Partial<VoiceMedia>): PotCommand => ({ type: 'NoteVoice', media: { ...speech, ...change } })
const soaking = (): Bench => Bench.start(programme([wait('soak', 10 * MIN), wait('rest', 10 * MIN)]))

describe('photos and voice notes', () => {
  it('are told with the step that is open and what names their bytes', () => {
    const bench = soaking()
    expect(bench.do(photo({}))).toEqual([{ type: 'PhotoNoted', what: 'the bath', path: 'soak', media: picture }])
    bench.pass(10)
    expect(bench.do(voice({}))).toEqual([{ type: 'VoiceNoted', path: 'rest', media: speech }])
  })

  it('may be noted of a pot that has ended, and of a photo taken with something else', () => {
    const bench = soaking()
    bench.do({ type: 'Abort', reason: 'no time' })
    expect(bench.do(photo({}))).toMatchObject([{ path: null }])
    expect(bench.do(voice({}))).toMatchObject([{ path: null }])
    expect(bench.do({ type: 'NotePhoto', what: 'the skein' })).toMatchObject([{ media: null }])
    expect(bench.do({ type: 'TrimMedia', sha256, why: 'to make room' })).toEqual([
      { type: 'MediaTrimmed', sha256, why: 'to make room' }
    ])
  })

  it.each<[string, PotCommand, string]>([
    ['of more than 2 megapixels', photo({ widthPx: 2001, heightPx: 1000 }), 'out-of-range'],
    ['without a width', photo({ widthPx: 0 }), 'out-of-range'],
    ['of half a pixel', photo({ widthPx: 0.5 }), 'out-of-range'],
    ['of no bytes', photo({ bytes: 0 }), 'empty'],
    ['of more bytes than two megapixels have', photo({ bytes: 10_000_001 }), 'out-of-range'],
    ['that is a sound', photo({ mime: 'audio/webm' }), 'out-of-range'],
    ['under no hash', photo({ sha256: 'x' }), 'no-such-media'],
    ['that shows nothing', { type: 'NotePhoto', what: ' ', media: picture }, 'empty']
  ])('a photo %s is refused', (_, command, code) => {
    expect(soaking().try(command)).toMatchObject({ ok: false, refusal: { code } })
  })

  it('takes exactly 2 megapixels and exactly 30 s', () => {
    expect(soaking().do(photo({ widthPx: 2000, heightPx: 1000 }))).toHaveLength(1)
    expect(soaking().do(voice({ lengthMs: 30_000 }))).toHaveLength(1)
  })

  it.each<[string, PotCommand, string]>([
    ['longer than 30 s', voice({ lengthMs: 30_001 }), 'too-long'],
    ['of no length', voice({ lengthMs: 0 }), 'empty'],
    ['of no known length', voice({ lengthMs: Number.NaN }), 'empty'],
    ['of no bytes', voice({ bytes: 0 }), 'empty'],
    ['that is a picture', voice({ mime: 'image/png' }), 'out-of-range'],
    ['under no hash', voice({ sha256: sha256.toUpperCase() }), 'no-such-media']
  ])('a voice note %s is refused', (_, command, code) => {
    expect(soaking().try(command)).toMatchObject({ ok: false, refusal: { code } })
  })

  it('are let go only by name and with a reason', () => {
    expect(soaking().try({ type: 'TrimMedia', sha256: '', why: 'x' })).toMatchObject({
      refusal: { code: 'no-such-media' }
    })
    expect(soaking().try({ type: 'TrimMedia', sha256, why: ' ' })).toMatchObject({ refusal: { code: 'needs-reason' } })
  })

  it('answer a step that wants a photo or a note recorded', () => {
    const bench = soaking()
    bench.do(photo({}))
    bench.do(voice({}))
    expect(Object.keys(bench.run.recorded).sort()).toEqual(['note', 'photo'])
  })

  it('can be undone, but not their letting go', () => {
    const bench = soaking()
    bench.do(photo({}))
    bench.do({ type: 'TrimMedia', sha256, why: 'blurred' })
    bench.do({ type: 'Undo' })
    expect(bench.entries.at(-1)?.event).toMatchObject({ type: 'Withdrawn', entries: [{ seq: 3 }] })
    expect(bench.entries[2]?.event.type).toBe('PhotoNoted')
  })
})
