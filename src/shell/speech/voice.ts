// A local voice of the device. One sentence at a time: a new one breaks off the one before.
import { AFTER_CANCEL_MS, type Ending, speakOnce } from './utterance.ts'

/** 'none': no voice of the page's language lives on this device. 'locked': no gesture yet, or it fell silent. */
export type VoiceState = 'none' | 'locked' | 'ready'

export type Voice = {
  state(): VoiceState
  /** Call inside a tap: browsers let a page speak only from there on. */
  prime(): void
  /** `onEnd` comes once, and later: true when the sentence was said, false when the device gave none. Returns the way to
   * break it off; then `onEnd` does not come. */
  say(text: string, onEnd: (said: boolean) => void): () => void
  onState(changed: () => void): () => void
}

/** A little slower than usual: a fan takes the consonants. */
const RATE = 0.9
const UNHEARD_MOST = 2

type Utter = (text: string) => SpeechSynthesisUtterance

/** `language` is that of the page, which all its words are in. */
export function deviceVoice(
  language = 'en',
  synth: SpeechSynthesis | undefined = globalThis.speechSynthesis,
  utter: Utter = (text) => new SpeechSynthesisUtterance(text)
): Voice {
  const gate = gateOf(synth, language)
  let running: { cut: () => void; onEnd: (said: boolean) => void } | null = null
  let cancelledMs = Number.NEGATIVE_INFINITY
  const cut = (): void => {
    running?.cut()
    running = null
    synth?.cancel()
    cancelledMs = performance.now()
  }
  return {
    state: gate.state,
    onState: gate.onState,
    prime: () => gate.prime((text) => utter(text)),
    say(text, onEnd) {
      const before = running
      // What another part of the page, or a tab before this one, left in the browser's own queue would be heard first.
      if (before !== null || synth?.speaking || synth?.pending) cut()
      before?.onEnd(false)
      const voice = gate.voice()
      if (synth === undefined || voice === null || gate.state() !== 'ready') return refused(onEnd)
      const make = (): SpeechSynthesisUtterance => Object.assign(utter(text), { voice, lang: voice.lang, rate: RATE })
      const sentence = { cut: () => {}, onEnd }
      const waitMs = Math.max(0, AFTER_CANCEL_MS - (performance.now() - cancelledMs))
      running = sentence
      sentence.cut = speakOnce({
        synth,
        text,
        make,
        waitMs,
        onEnd(how) {
          if (running === sentence) running = null
          gate.heard(how)
          onEnd(how === 'said')
        }
      })
      return () => {
        if (running === sentence) cut()
      }
    }
  }
}

function refused(onEnd: (said: boolean) => void): () => void {
  const timer = setTimeout(() => onEnd(false), 0)
  return () => clearTimeout(timer)
}

type Gate = Pick<Voice, 'state' | 'onState'> & {
  voice(): SpeechSynthesisVoice | null
  prime(utter: Utter): void
  heard(how: Ending): void
}

/** Which voice there is, and whether the page may use it. */
function gateOf(synth: SpeechSynthesis | undefined, language: string): Gate {
  const listeners = new Set<() => void>()
  let chosen = chosenFrom(synth, language)
  let primed = false
  let unheard = 0
  const state = (): VoiceState => (chosen === null ? 'none' : primed ? 'ready' : 'locked')
  const changing = (change: () => void): void => {
    const before = state()
    change()
    if (state() !== before) for (const listener of [...listeners]) listener()
  }
  const lock = (): void =>
    changing(() => {
      primed = false
    })
  const choose = (): void =>
    changing(() => {
      chosen = chosenFrom(synth, language)
    })
  // Voices come late in some browsers, and an old Safari has the event without the way to listen for it.
  synth?.addEventListener?.('voiceschanged', choose)
  return {
    state,
    voice: () => chosen,
    prime(utter) {
      choose()
      if (primed || synth === undefined || chosen === null) return
      const unheardOne = Object.assign(utter('a'), { voice: chosen, lang: chosen.lang, volume: 0 })
      unheardOne.onerror = ({ error }) => {
        if (error === 'not-allowed') lock()
      }
      synth.speak(unheardOne)
      unheard = 0
      changing(() => {
        primed = true
      })
    },
    heard(how) {
      unheard = how === 'said' ? 0 : unheard + 1
      // Twice nothing came: the lamp says so, and a tap lets it try again.
      if (how === 'refused' || unheard >= UNHEARD_MOST) lock()
    },
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}

/** A voice that lives on the device and speaks the page's language, in the dyer's own kind of it where there is one:
 * remote voices want a network, and are cut at 15 s. Android writes "en_GB". */
function chosenFrom(synth: SpeechSynthesis | undefined, language: string): SpeechSynthesisVoice | null {
  const codeOf = (lang: string): string => lang.replace('_', '-').toLowerCase()
  const local = (synth?.getVoices() ?? []).filter(({ localService, lang }) => {
    return localService && codeOf(lang).split('-')[0] === codeOf(language).split('-')[0]
  })
  const own = codeOf(globalThis.navigator?.language ?? language)
  return local.find(({ lang }) => codeOf(lang) === own) ?? local.find((voice) => voice.default) ?? local[0] ?? null
}
