import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { microphone } from '../../src/shell/media/recorder.ts'

class Track {
  stopped = 0
  onended: (() => void) | null = null
  stop(): void {
    this.stopped += 1
  }
}

/** A recorder that hands over a piece a second, as long as the clock of the test goes. */
class Recorder {
  static last: Recorder
  static isTypeSupported = (kind: string): boolean => kind.startsWith('audio/webm')
  state = 'inactive'
  mimeType: string
  ondataavailable: ((event: { data: Blob }) => void) | null = null
  onstop: (() => void) | null = null
  #beat: ReturnType<typeof setInterval> | null = null

  constructor(_: unknown, { mimeType }: { mimeType: string }) {
    this.mimeType = mimeType
    Recorder.last = this
  }

  start(pieceMs: number): void {
    this.state = 'recording'
    this.#beat = setInterval(() => this.piece(), pieceMs)
  }

  piece(): void {
    this.ondataavailable?.({ data: new Blob(['s']) })
  }

  stop(): void {
    if (this.#beat !== null) clearInterval(this.#beat)
    this.state = 'inactive'
    this.piece()
    this.onstop?.()
  }
}

const track = new Track()
/** What the system is told the sound is for. */
const session = { type: 'playback' }
const devices = (get: () => Promise<unknown>): MediaDevices => ({ getUserMedia: get }) as unknown as MediaDevices
const open = devices(async () => ({ getTracks: () => [track] }))
const start = async () => {
  const started = await microphone(open, session).start(30_000)
  if (!started.ok) throw new Error(started.say)
  return started.recording
}

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] })
  vi.stubGlobal('MediaRecorder', Recorder)
  Object.assign(track, { stopped: 0, onended: null })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('the microphone', () => {
  it('is open until the note is ended, and shut from then on', async () => {
    const recording = await start()
    vi.advanceTimersByTime(4_500)
    expect([track.stopped, recording.leftMs(), session.type]).toEqual([0, 25_500, 'play-and-record'])
    recording.end()
    expect(track.stopped).toBe(1)
    const heard = await recording.done
    expect(heard).toMatchObject({ ok: true, take: { mime: 'audio/webm;codecs=opus', lengthMs: 4_500 } })
    expect(heard.ok && heard.take.bytes.byteLength).toBe(5)
    recording.end()
    expect([track.stopped, session.type]).toEqual([1, 'playback'])
  })

  it('shuts by itself within 30 s', async () => {
    const recording = await start()
    vi.advanceTimersByTime(30_000)
    expect(track.stopped).toBe(1)
    const heard = await recording.done
    if (!heard.ok) throw new Error(heard.say)
    expect(heard.take.lengthMs).toBe(29_900)
  })

  it('keeps no more than 30 s where the timer came late', async () => {
    const recording = await start()
    Recorder.last.stop = () => {}
    vi.advanceTimersByTime(45_000)
    Recorder.prototype.stop.call(Recorder.last)
    const heard = await recording.done
    if (!heard.ok) throw new Error(heard.say)
    expect([heard.take.lengthMs, heard.take.bytes.byteLength]).toEqual([30_000, 30])
  })

  it('that is pulled out ends the note and keeps what was heard', async () => {
    const recording = await start()
    vi.advanceTimersByTime(3_000)
    track.onended?.()
    expect(await recording.done).toMatchObject({ ok: true, take: { lengthMs: 3_000 } })
  })

  it('that heard nothing leaves nothing behind but words', async () => {
    const recording = await start()
    Recorder.last.piece = () => {}
    recording.end()
    expect(await recording.done).toEqual({ ok: false, say: expect.stringContaining('Nothing was heard') })
  })

  it.each([
    ['NotAllowedError', /not allowed here/],
    ['NotFoundError', /No microphone was found/],
    ['NotReadableError', /Another program holds/],
    ['TypeError', /can’t be opened/]
  ])('that answers %s is told of in words', async (name, say) => {
    const refusing = devices(() => Promise.reject(Object.assign(new Error('no'), { name })))
    expect(await microphone(refusing, session).start(30_000)).toEqual({ ok: false, say: expect.stringMatching(say) })
    expect(session.type).toBe('playback')
  })

  it('that a browser does not have is told of in words', async () => {
    expect(await microphone({} as MediaDevices, session).start(30_000)).toMatchObject({
      ok: false,
      say: /gives no microphone/
    })
  })

  it('is shut where the recorder can’t start', async () => {
    Recorder.isTypeSupported = () => {
      throw new Error('no recorder')
    }
    expect(await microphone(open, session).start(30_000)).toMatchObject({ ok: false })
    expect(track.stopped).toBe(1)
    Recorder.isTypeSupported = (kind) => kind.startsWith('audio/webm')
  })
})
