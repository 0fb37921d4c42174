import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { deviceVoice } from '../../../src/shell/speech/voice.ts'

type Heard = { text: string; volume: number; lang: string; rate: number }
type Way = 'well' | 'no end' | 'nothing' | 'refused'

const voiceOf = (lang: string, more: Partial<SpeechSynthesisVoice> = {}): SpeechSynthesisVoice => ({
  lang,
  name: lang,
  voiceURI: lang,
  localService: true,
  default: false,
  ...more
})

/** A browser's speech with its known faults: it says a sentence in two seconds, or in one of its bad ways. */
function fakeSynth(voices: SpeechSynthesisVoice[], ways: Way[] = []) {
  const heard: Heard[] = []
  const events = new EventTarget()
  let queue: SpeechSynthesisUtterance[] = []
  let cancelledMs = Number.NEGATIVE_INFINITY
  let cancels = 0
  const finish = (utterance: SpeechSynthesisUtterance): void => {
    queue = queue.filter((each) => each !== utterance)
  }
  const synth = {
    get speaking() {
      return queue.length > 0
    },
    pending: false,
    getVoices: () => voices,
    resume() {},
    cancel() {
      cancels++
      cancelledMs = performance.now()
      queue = []
    },
    speak(utterance: SpeechSynthesisUtterance) {
      // Chromium: what comes right after a cancel is swallowed without a word.
      if (performance.now() - cancelledMs < 50) return
      const way = utterance.volume === 0 ? 'well' : (ways.shift() ?? 'well')
      if (way === 'nothing') return
      heard.push({ text: utterance.text, volume: utterance.volume, lang: utterance.lang, rate: utterance.rate })
      if (way === 'refused') {
        setTimeout(() => utterance.onerror?.({ error: 'not-allowed' } as SpeechSynthesisErrorEvent), 1)
        return
      }
      queue.push(utterance)
      setTimeout(() => queue.includes(utterance) && utterance.onstart?.({} as SpeechSynthesisEvent), 10)
      if (way === 'no end') return
      setTimeout(
        () => {
          if (!queue.includes(utterance)) return
          finish(utterance)
          utterance.onend?.({} as SpeechSynthesisEvent)
        },
        utterance.volume === 0 ? 20 : 2_000
      )
    },
    addEventListener: events.addEventListener.bind(events)
  }
  return {
    synth: synth as unknown as SpeechSynthesis,
    heard: () => heard.filter(({ volume }) => volume > 0),
    all: heard,
    cancels: () => cancels,
    brings(found: SpeechSynthesisVoice[]) {
      voices = found
      events.dispatchEvent(new Event('voiceschanged'))
    }
  }
}

const utter = (text: string): SpeechSynthesisUtterance =>
  ({
    text,
    volume: 1,
    rate: 1,
    lang: '',
    onstart: null,
    onend: null,
    onerror: null
  }) as unknown as SpeechSynthesisUtterance

const SAY = 'Plum. Acid two. Eight millilitres of vinegar.'
const english = [voiceOf('en-GB')]

function primed(browser: ReturnType<typeof fakeSynth>) {
  const voice = deviceVoice('en', browser.synth, utter)
  voice.prime()
  vi.advanceTimersByTime(100)
  return voice
}

beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance', 'Date'] }))
afterEach(() => vi.useRealTimers())

describe('the voice of a device', () => {
  it('is a local one of the page’s language; a remote one or another language is none', () => {
    const state = (...voices: SpeechSynthesisVoice[]) => deviceVoice('en', fakeSynth(voices).synth, utter).state()
    expect(state()).toBe('none')
    expect(state(voiceOf('en-US', { localService: false }))).toBe('none')
    expect(state(voiceOf('de-DE'))).toBe('none')
    expect(state(voiceOf('de-DE'), voiceOf('en_GB'))).toBe('locked')
    expect(deviceVoice('en', undefined, utter).state()).toBe('none')
  })

  it('may come after the page has loaded, and the lamp is told', () => {
    const browser = fakeSynth([])
    const voice = deviceVoice('en', browser.synth, utter)
    const seen: string[] = []
    voice.onState(() => seen.push(voice.state()))
    browser.brings(english)
    voice.prime()
    browser.brings([])
    expect(seen).toEqual(['locked', 'ready', 'none'])
  })

  it('is unlocked by a tap with a sentence nobody hears, once', () => {
    const browser = fakeSynth(english)
    const voice = deviceVoice('en', browser.synth, utter)
    voice.prime()
    voice.prime()
    expect(browser.all.map(({ volume }) => volume)).toEqual([0])
    expect(voice.state()).toBe('ready')
  })

  it('says nothing before that tap', () => {
    const browser = fakeSynth(english)
    const ended = vi.fn()
    deviceVoice('en', browser.synth, utter).say(SAY, ended)
    expect(ended).not.toHaveBeenCalled()
    vi.advanceTimersByTime(1)
    expect(ended.mock.calls).toEqual([[false]])
    expect(browser.heard()).toEqual([])
  })

  it('says a sentence in that voice and tells its end once', () => {
    const browser = fakeSynth([voiceOf('de-DE'), voiceOf('en-AU')])
    const ended = vi.fn()
    primed(browser).say(SAY, ended)
    vi.advanceTimersByTime(1_900)
    expect(ended).not.toHaveBeenCalled()
    vi.advanceTimersByTime(60_000)
    expect(ended.mock.calls).toEqual([[true]])
    expect(browser.heard()).toMatchObject([{ text: SAY, lang: 'en-AU' }])
  })

  it('takes a sentence as ended after three times its length when the browser never tells', () => {
    const browser = fakeSynth(english, ['no end'])
    const ended = vi.fn()
    primed(browser).say(SAY, ended)
    // Seven words at two and a half a second, three times: 8.4 s.
    vi.advanceTimersByTime(8_300)
    expect(ended).not.toHaveBeenCalled()
    vi.advanceTimersByTime(200)
    expect(ended.mock.calls).toEqual([[true]])
    expect(browser.synth.speaking).toBe(false)
  })

  it('speaks a swallowed sentence once more, after a cancel and a breath', () => {
    const browser = fakeSynth(english, ['nothing'])
    const ended = vi.fn()
    primed(browser).say(SAY, ended)
    vi.advanceTimersByTime(1_000)
    expect(browser.heard()).toEqual([])
    vi.advanceTimersByTime(10_000)
    expect(browser.heard()).toHaveLength(1)
    expect(ended.mock.calls).toEqual([[true]])
  })

  it('is heard again right after one was broken off: what follows a cancel waits a breath', () => {
    const browser = fakeSynth(english)
    const voice = primed(browser)
    const first = vi.fn()
    const second = vi.fn()
    const cut = voice.say(SAY, first)
    vi.advanceTimersByTime(500)
    cut()
    voice.say('Moss. Lift.', second)
    vi.advanceTimersByTime(200)
    expect(browser.heard().map(({ text }) => text)).toEqual([SAY, 'Moss. Lift.'])
    vi.advanceTimersByTime(5_000)
    expect([first.mock.calls, second.mock.calls]).toEqual([[], [[true]]])
  })

  it('never says two at once: a new sentence breaks off the one before', () => {
    const browser = fakeSynth(english)
    const voice = primed(browser)
    const first = vi.fn()
    voice.say(SAY, first)
    vi.advanceTimersByTime(500)
    voice.say('Moss. Lift.', () => {})
    expect(first.mock.calls).toEqual([[false]])
    expect(browser.synth.speaking).toBe(false)
  })

  it('that falls silent twice asks for a tap again, and one that is refused at once', () => {
    const silent = primed(fakeSynth(english, ['nothing', 'nothing', 'nothing', 'nothing']))
    for (const state of ['ready', 'locked']) {
      silent.say(SAY, () => {})
      vi.advanceTimersByTime(10_000)
      expect(silent.state()).toBe(state)
    }
    silent.prime()
    expect(silent.state()).toBe('ready')
    const refused = primed(fakeSynth(english, ['refused']))
    const ended = vi.fn()
    refused.say(SAY, ended)
    vi.advanceTimersByTime(500)
    expect(refused.state()).toBe('locked')
    expect(ended.mock.calls).toEqual([[false]])
  })
})
