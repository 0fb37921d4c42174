// The ear for whistles between the shell and the screens: open only while it is wanted, deaf while the app itself sounds.
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { Ear } from '../shell/whistle/whistle-ear.ts'
import type { KitchenWhistle, Lamp } from '../ui/kitchen.ts'

export type WhistleParts = {
  ear: Ear
  /** Did the dyer turn it on? */
  on: () => boolean
  /** Is any pot watched by this tab? */
  watched: () => boolean
  onTick: (tick: () => void) => void
  /** Is a voice speaking now? */
  onSpeaking: (listener: (speaking: boolean) => void) => void
  /** The app's own sounds, and how long each takes, ms. */
  onSounding: (listener: (forMs: number) => void) => void
  sayBack: (words: string) => void
}

export type Whistle = { lamp: ReadonlySignal<Lamp | null>; kitchen: KitchenWhistle }

/** While a voice speaks the ear is told to be deaf from tick to tick: nobody knows how long a sentence takes. */
const BETWEEN_TICKS_MS = 600

export function whistle(parts: WhistleParts): Whistle {
  const { ear, on, watched } = parts
  const state = signal(shown(ear))
  const heard = signal<KitchenWhistle['heard']['value']>(null)
  let trying = false
  let speaking = false
  let count = 0
  ear.onState(() => {
    state.value = shown(ear)
  })
  ear.onHeard(({ kind, atMs, lengthMs, semitones }) => {
    count += 1
    heard.value = { no: count, kind, beganMs: atMs - lengthMs, semitones, lengthMs }
  })
  parts.onSpeaking((now) => {
    speaking = now
    if (now) ear.deafFor(BETWEEN_TICKS_MS)
  })
  parts.onSounding((forMs) => ear.deafFor(forMs))
  const look = (): void => {
    if (speaking) ear.deafFor(BETWEEN_TICKS_MS)
    const wanted = trying || (on() && watched())
    const now = ear.state()
    // What was refused or broke waits for a tap: asking again and again would only bother.
    if (wanted && now === 'off') void ear.start()
    if (!wanted && now !== 'off') ear.stop()
  }
  parts.onTick(look)
  return {
    lamp: computed(() => {
      const { open, ok, say } = state.value
      if (!open && ok) return null
      return { id: 'whistle', ok, say, tap: ok ? null : () => void ear.start() }
    }),
    kitchen: {
      ear: state,
      heard,
      sayBack: parts.sayBack,
      try(now) {
        trying = now
        look()
      }
    }
  }
}

/** Off is well: nothing is promised then. */
function shown(ear: Ear): { open: boolean; ok: boolean; say: string } {
  const now = ear.state()
  const open = now === 'listening' || now === 'too-loud'
  return { open, ok: now === 'off' || now === 'asking' || now === 'listening', say: ear.say() }
}
