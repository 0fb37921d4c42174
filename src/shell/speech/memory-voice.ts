import type { Voice, VoiceState } from './voice.ts'

export type MemoryVoice = Voice & {
  /** All that was begun, in order. */
  said: string[]
  /** What is being said now. */
  now(): string | null
  /** Most sentences that were heard at one time. */
  most(): number
  /** The sentence is over; false: the device gave none. */
  end(said?: boolean): void
  become(state: VoiceState): void
}

/** A voice that only writes down what it would have said, and speaks until it is told to end. */
export function memoryVoice(state: VoiceState = 'ready'): MemoryVoice {
  const said: string[] = []
  const listeners = new Set<() => void>()
  let running: { text: string; onEnd: (said: boolean) => void }[] = []
  let most = 0
  const become = (next: VoiceState): void => {
    state = next
    for (const listener of [...listeners]) listener()
  }
  return {
    said,
    become,
    state: () => state,
    now: () => running.at(-1)?.text ?? null,
    most: () => most,
    prime: () => {
      if (state === 'locked') become('ready')
    },
    say(text, onEnd) {
      const sentence = { text, onEnd }
      said.push(text)
      running.push(sentence)
      most = Math.max(most, running.length)
      return () => {
        running = running.filter((each) => each !== sentence)
      }
    },
    end(heard = true) {
      const sentence = running.pop()
      sentence?.onEnd(heard)
    },
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
