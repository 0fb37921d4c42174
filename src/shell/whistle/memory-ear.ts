// The ear's twin for tests: hears what it is told to.
import type { Ear, EarState, WhistleHeard } from './whistle-ear.ts'

export type MemoryEar = Ear & {
  hear(heard: WhistleHeard): void
  become(state: EarState, words?: string): void
  /** What it was asked to be deaf for, ms, in order. */
  deaf: number[]
}

export function memoryEar(): MemoryEar {
  const heardBy = new Set<(heard: WhistleHeard) => void>()
  const stateBy = new Set<() => void>()
  let state: EarState = 'off'
  let words = 'off'
  const deaf: number[] = []
  const become = (next: EarState, said: string = next): void => {
    state = next
    words = said
    for (const listener of [...stateBy]) listener()
  }
  return {
    state: () => state,
    say: () => words,
    async start() {
      become('listening')
      return true
    },
    stop: () => become('off'),
    deafFor: (ms) => {
      deaf.push(ms)
    },
    levelDb: () => (state === 'listening' ? -50 : null),
    onHeard(listener) {
      heardBy.add(listener)
      return () => heardBy.delete(listener)
    },
    onState(listener) {
      stateBy.add(listener)
      return () => stateBy.delete(listener)
    },
    // A closed ear hears nothing, whatever sounds.
    hear(heard) {
      if (state === 'listening' || state === 'too-loud') for (const listener of [...heardBy]) listener(heard)
    },
    become,
    deaf
  }
}
