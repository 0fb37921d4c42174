// Speech put together: the pots' words, the device's voice, the gesture it needs.
import { alertsDue } from '../core/pot/alerts-due.ts'
import { lookAhead } from '../core/pot/catch-up.ts'
import type { PotState } from '../core/pot/state.ts'
import { capital } from '../core/protocol/words.ts'
import { alertSentence } from '../core/spoken/alert-sentence.ts'
import { amountWords } from '../core/spoken/amount-words.ts'
import { cuesOf } from '../core/spoken/cues.ts'
import type { ClockPort } from '../session/ports.ts'
import type { PotView } from '../session/types.ts'
import type { RungAlert } from '../shell/rung.ts'
import { patternOf } from '../shell/sound/cadence.ts'
import { lengthMs } from '../shell/sound/patterns.ts'
import type { Words } from '../shell/speech/speaker.ts'
import { type SpeechRung, speechRung } from '../shell/speech/speech-rung.ts'
import { deviceVoice, type Voice } from '../shell/speech/voice.ts'
import type { KeptSettings } from './settings.ts'

/** Between the alarm and the first word. */
const BREATH_MS = 150

export type Speech = SpeechRung & {
  example(): string
  /** The sentence of a call that stands, whole, because it was asked for. True: it was said. */
  sayAgain(potId: string, key: string): Promise<boolean>
}

export type SpeechParts = {
  clock: Pick<ClockPort, 'nowMs'>
  settings: KeptSettings['settings']
  pots: () => readonly Pick<PotView, 'potId' | 'state'>[]
  /** Only the tab that alerts counts down. */
  owns: () => boolean
}

export function speechOf(
  parts: SpeechParts,
  voice: Voice = deviceVoice(document.documentElement.lang || 'en')
): Speech {
  const { settings } = parts
  const toneMs = (alert: RungAlert): number => (settings.value.sound ? lengthMs(patternOf(alert.alert)) + BREATH_MS : 0)
  const words = wordsOf(parts)
  const rung = speechRung(
    voice,
    () => settings.value.voice,
    words,
    () => performance.now(),
    toneMs
  )
  primeOnGesture(voice, settings)
  let repeating: Promise<boolean> | null = null
  return {
    ...rung,
    // Asked for twice while it is said, it is said once.
    sayAgain(potId, key) {
      repeating ??= repeat(parts, rung, words, potId, key).finally(() => {
        repeating = null
      })
      return repeating
    },
    look() {
      try {
        rung.look()
      } catch {
        // The clock goes on to its other listeners: the rungs that do work are there for this.
      }
    },
    example: () => `Plum. Acid two. ${capital(amountWords({ value: 30, unit: 'mL' }, settings.value))} of vinegar.`
  }
}

async function repeat(
  { clock, settings, pots }: SpeechParts,
  rung: SpeechRung,
  words: Words,
  potId: string,
  key: string
): Promise<boolean> {
  const pot = pots().find((each) => each.potId === potId)
  const alert = pot && alertsDue(lookAhead(pot.state, clock.nowMs()), clock.nowMs()).find((each) => each.key === key)
  const text = alert ? words.alert({ potId, colourway: '', alert }, false) : null
  return settings.value.voice === 'off' || text === null ? false : rung.trySpeech(text)
}

function wordsOf({ clock, settings, pots, owns }: SpeechParts): Words {
  return {
    alert({ potId, alert }, again) {
      const stored = pots().find((pot) => pot.potId === potId)?.state
      const state: PotState = stored === undefined ? { status: 'idle' } : lookAhead(stored, clock.nowMs())
      if (state.status !== 'running' && state.status !== 'held') return null
      return alertSentence(state, alert, { units: settings.value, guide: settings.value.voice === 'guide', again })
    },
    cues() {
      if (!owns()) return []
      const nowMs = clock.nowMs()
      return pots().flatMap(({ potId, state }) =>
        cuesOf(state, nowMs, settings.value).map((cue) => ({ ...cue, potId }))
      )
    },
    nowMs: clock.nowMs
  }
}

/** A voice is turned on by a tap too: it is looked at before the tap does its work and after. */
function primeOnGesture(voice: Voice, settings: KeptSettings['settings']): void {
  const prime = (): void => {
    if (settings.value.voice !== 'off' && voice.state() === 'locked') voice.prime()
  }
  for (const type of ['pointerup', 'click', 'keydown'])
    for (const capture of [true, false]) document.addEventListener(type, prime, { capture, passive: true })
}
