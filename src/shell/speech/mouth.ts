// One mouth: what is being said, and for whom.
import type { Turn } from './turns.ts'
import type { Voice } from './voice.ts'

/** `turn` null: a sentence of no pot. */
export type Saying = { turn: Turn | null }

export type Mouth = {
  saying(): Saying | null
  say(turn: Turn | null, text: string, ended: (said: boolean) => void): void
  /** Breaks it off; `ended` does not come. */
  cut(): void
  onSpeaking(listener: (speaking: boolean) => void): () => void
}

export function mouthOf(voice: Voice): Mouth {
  const listeners = new Set<(speaking: boolean) => void>()
  let now: (Saying & { cut: () => void }) | null = null
  const become = (next: typeof now): void => {
    const changed = (next === null) !== (now === null)
    now = next
    if (changed) for (const listener of [...listeners]) listener(next !== null)
  }
  return {
    saying: () => now,
    say(turn, text, ended) {
      const own = { turn, cut: () => {} }
      // Known before it sounds: a microphone is deaf from here on.
      become(own)
      own.cut = voice.say(text, (said) => {
        if (now !== own) return
        become(null)
        ended(said)
      })
    },
    cut() {
      now?.cut()
      become(null)
    },
    onSpeaking(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
