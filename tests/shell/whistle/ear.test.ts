import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Hearing, HearingEvents } from '../../../src/shell/whistle/hearing.ts'
import { memoryEar } from '../../../src/shell/whistle/memory-ear.ts'
import { type Microphone, openMicrophone, whatIsOn } from '../../../src/shell/whistle/microphone.ts'
import { type Ear, type WhistleHeard, whistleEar } from '../../../src/shell/whistle/whistle-ear.ts'

type Track = {
  muted: boolean
  stopped: boolean
  onended: (() => void) | null
  onmute: (() => void) | null
  stop(): void
}

/** A microphone and a sound graph that do as they are told. */
function stage(more: { refuse?: string; disobeyed?: string; fails?: boolean } = {}) {
  const track: Track = {
    muted: false,
    stopped: false,
    onended: null,
    onmute: null,
    stop() {
      track.stopped = true
    }
  }
  let events: HearingEvents | null = null
  let given: ((microphone: Microphone) => void) | null = null
  let closed = 0
  const deaf: number[] = []
  const stream = { getTracks: () => [track], getAudioTracks: () => [track] } as unknown as MediaStream
  const microphone: Microphone = { stream, disobeyed: more.disobeyed ?? '' }
  const hearing: Hearing = {
    listenTo: async () => {
      if (more.fails) throw new Error('no worklets here')
    },
    deafFor: (ms) => deaf.push(ms),
    close: () => {
      closed += 1
    }
  }
  const ear = (slow = false): Ear =>
    whistleEar({
      nowMs: Date.now,
      openMicrophone: () => {
        if (more.refuse) return Promise.reject(new DOMException('', more.refuse))
        return slow ? new Promise((resolve) => (given = resolve)) : Promise.resolve(microphone)
      },
      openHearing: (_, told) => {
        events = told
        return hearing
      }
    })
  return {
    ear,
    track,
    deaf,
    closed: () => closed,
    give: () => given?.(microphone),
    tell: (message: Parameters<HearingEvents['onMessage']>[0]) => events?.onMessage(message),
    running: (on: boolean) => events?.onRunning(on),
    fail: () => events?.onFailure()
  }
}

const quiet = { type: 'now', tooLoud: false, levelDb: -60, nowMs: 0 } as const
const loud = { ...quiet, tooLoud: true }
const rise = { type: 'heard', heard: { kind: 'rise', atMs: 5_000, semitones: 7, lengthMs: 500 }, agoMs: 120 } as const

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

describe('the ear', () => {
  it('is off, with the microphone closed, until it is switched on', async () => {
    const { ear, track, closed } = stage()
    const it = ear()
    expect(it.state()).toBe('off')
    expect(await it.start()).toBe(true)
    expect(it.state()).toBe('listening')
    it.stop()
    expect([it.state(), track.stopped, closed()]).toEqual(['off', true, 1])
  })

  it('tells what it heard with the time by the wall clock, and after it is off nothing', async () => {
    const { ear, tell } = stage()
    const it = ear()
    const heard: WhistleHeard[] = []
    it.onHeard((each) => heard.push(each))
    await it.start()
    tell(rise)
    expect(heard).toEqual([{ kind: 'rise', atMs: Date.now() - 120, semitones: 7, lengthMs: 500 }])
    it.stop()
    tell(rise)
    expect(heard).toHaveLength(1)
  })

  it('says when it is too loud, and when it hears again', async () => {
    const { ear, tell } = stage()
    const it = ear()
    await it.start()
    tell(loud)
    expect([it.state(), it.say()]).toEqual(['too-loud', 'Too loud to hear you.'])
    tell(quiet)
    expect(it.state()).toBe('listening')
  })

  it('says what the browser does to the sound against its wish', async () => {
    const { ear } = stage({ disobeyed: whatIsOn({ echoCancellation: false, noiseSuppression: true }) })
    const it = ear()
    await it.start()
    expect(it.say()).toContain('does not switch off: noise suppression')
    expect(it.say()).toContain('does not tell whether it is off: gain control')
  })

  it.each([
    ['NotAllowedError', 'refused', /not allowed/],
    ['NotFoundError', 'broken', /No microphone was found/],
    ['NotReadableError', 'broken', /Another program/],
    ['NotSupportedError', 'broken', /https/]
  ])('after %s is %s, in words, and may be tried again', async (name, state, words) => {
    const { ear, closed } = stage({ refuse: name })
    const it = ear()
    expect(await it.start()).toBe(false)
    expect(it.state()).toBe(state)
    expect(it.say()).toMatch(words)
    expect(closed()).toBe(1)
    expect(await it.start()).toBe(false)
    expect(closed()).toBe(2)
  })

  it('closes the microphone when the browser can not run the recogniser', async () => {
    const { ear, track } = stage({ fails: true })
    const it = ear()
    expect(await it.start()).toBe(false)
    expect([it.state(), track.stopped]).toEqual(['broken', true])
    expect(it.say()).toContain('no worklets here')
  })

  it('gives a microphone back that comes after it was switched off', async () => {
    const { ear, track, give } = stage()
    const it = ear(true)
    const started = it.start()
    expect(it.state()).toBe('asking')
    it.stop()
    give()
    expect(await started).toBe(false)
    expect([it.state(), track.stopped]).toEqual(['off', true])
  })

  it('says so when the microphone is gone, is muted, or gives no sound, and when the browser stops its sound', async () => {
    const { ear, track, tell, running, fail } = stage()
    const it = ear()
    await it.start()
    running(false)
    expect([it.state(), it.say()]).toEqual(['broken', 'The browser has stopped its sound: no whistle is heard.'])
    tell(quiet)
    expect(it.state()).toBe('listening')
    track.muted = true
    track.onmute?.()
    expect([it.state(), it.say()]).toEqual(['broken', 'The microphone is muted.'])
    tell(quiet)
    expect(it.state()).toBe('broken')
    track.muted = false
    tell(quiet)
    expect(it.state()).toBe('listening')
    vi.advanceTimersByTime(6_000)
    expect([it.state(), it.say()]).toEqual(['broken', 'No sound comes from the microphone.'])
    tell(quiet)
    track.onended?.()
    expect([it.state(), track.stopped]).toEqual(['broken', true])
    expect(await it.start()).toBe(true)
    fail()
    expect(it.say()).toMatch(/recogniser has failed/)
  })

  it('is deaf for the app and for the echo of it', async () => {
    const { ear, deaf } = stage()
    const it = ear()
    it.deafFor(500)
    await it.start()
    it.deafFor(500)
    expect(deaf).toEqual([900])
  })
})

describe('the microphone', () => {
  afterEach(() => {
    vi.unstubAllGlobals()
  })
  const bare = { echoCancellation: false, noiseSuppression: false, autoGainControl: false }
  const browser = (getUserMedia: (wanted: MediaStreamConstraints) => Promise<unknown>) => {
    const audioSession = { type: 'playback' }
    vi.stubGlobal('navigator', { mediaDevices: { getUserMedia }, audioSession })
    return audioSession
  }

  it('is asked for with nothing done to its sound, and the session goes back to playing once it is closed', async () => {
    const asked: MediaStreamConstraints[] = []
    const session = browser(async (wanted) => {
      asked.push(wanted)
      return { getAudioTracks: () => [{ getSettings: () => bare }] }
    })
    const { disobeyed, closed } = await openMicrophone()
    expect(asked).toEqual([{ audio: { ...bare, channelCount: 1 } }])
    expect([disobeyed, session.type]).toEqual(['', 'play-and-record'])
    closed?.()
    expect(session.type).toBe('playback')
  })

  it('that is refused leaves the session as it was', async () => {
    const session = browser(() => Promise.reject(new DOMException('', 'NotAllowedError')))
    await expect(openMicrophone()).rejects.toThrow()
    expect(session.type).toBe('playback')
  })

  it('is missed in words where the browser has none to give', async () => {
    vi.stubGlobal('navigator', {})
    await expect(openMicrophone()).rejects.toThrow('no microphone')
  })
})

describe("the ear's twin", () => {
  it('hears only while it listens', async () => {
    const it = memoryEar()
    const heard: string[] = []
    it.onHeard(({ kind }) => heard.push(kind))
    const whistle = { kind: 'rise', atMs: 0, semitones: 7, lengthMs: 500 } as const
    it.hear(whistle)
    await it.start()
    it.hear(whistle)
    it.become('broken', 'The microphone is muted.')
    it.hear(whistle)
    expect([heard, it.say()]).toEqual([['rise'], 'The microphone is muted.'])
  })
})
