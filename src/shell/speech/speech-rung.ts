import type { Rung, RungAlert } from '../rung.ts'
import { speaker, type Words } from './speaker.ts'
import type { Voice } from './voice.ts'

/** off: nothing is said. calls: what calls is said. guide: the way to an act is counted down too. */
export type SpeechMode = 'off' | 'calls' | 'guide'

export type SpeechRung = Rung & {
  /** To be asked at every look at the clock: a cue comes when nothing calls. */
  look(): void
  /** Says an example; true: it was said. Call inside a tap. */
  trySpeech(example: string): Promise<boolean>
  /** True while something is said, from just before it sounds: a microphone would hear it. */
  onSpeaking(listener: (speaking: boolean) => void): () => void
}

/** `nowMs`: real time, monotonic. `toneMs`: how long an alert sounds before words can be understood. */
export function speechRung(
  voice: Voice,
  mode: () => SpeechMode,
  words: Words,
  nowMs: () => number,
  toneMs: (alert: RungAlert) => number = () => 0
): SpeechRung {
  const guided: Words = { ...words, cues: () => (mode() === 'guide' ? words.cues() : []) }
  const mouth = speaker(voice, guided, nowMs, toneMs)
  const stand = (alerts: readonly RungAlert[]): void => {
    mouth.stand(mode() === 'off' ? [] : alerts)
    mouth.look()
  }
  return {
    id: 'speech',
    works: () => mode() !== 'off' && voice.state() === 'ready',
    lamp() {
      if (mode() === 'off') return null
      const state = voice.state()
      if (state === 'ready') return { ok: true, say: 'Voice ready', tap: null }
      if (state === 'none') return { ok: false, say: 'No voice on this device: sounds and the screen only', tap: null }
      return { ok: false, say: 'No voice yet: tap to let it speak', tap: () => voice.prime() }
    },
    onLamp: voice.onState,
    raise: stand,
    rest: () => stand([]),
    look: () => mouth.look(),
    trySpeech(example) {
      voice.prime()
      return mouth.once(example)
    },
    onSpeaking: mouth.onSpeaking
  }
}
