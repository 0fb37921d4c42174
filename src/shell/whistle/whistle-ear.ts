// The ear for whistles: off until somebody switches it on, and says at every moment whether it hears.
import { openHearing } from './hearing.ts'
import { beginListening, type Listening, type Ways, type WhistleHeard } from './listening.ts'
import { openMicrophone } from './microphone.ts'

export type { WhistleHeard } from './listening.ts'
export type EarState = 'off' | 'asking' | 'listening' | 'too-loud' | 'refused' | 'broken'

export type Ear = {
  state(): EarState
  /** The state in words for the screen. */
  say(): string
  /** Call inside a tap. True: it listens. The microphone is open from then until `stop`. */
  start(): Promise<boolean>
  stop(): void
  /** The app is about to sound for so long, and must not answer itself. */
  deafFor(ms: number): void
  /** How loud the band of whistles is, dB under full scale; null while nothing is heard. */
  levelDb(): number | null
  onHeard(listener: (heard: WhistleHeard) => void): () => void
  onState(listener: () => void): () => void
}

/** `whistleDb`: how loud this person's whistle comes in, dB under full scale, if it was tried. */
export type EarOptions = Partial<Ways>

/** Sound takes a moment from the speaker through the room into the recogniser: about 0.1 s, and longer over radio. */
const DEAF_AFTER_MS = 400

const words: Record<Exclude<EarState, 'refused' | 'broken'>, string> = {
  off: 'Whistles are not listened for. The microphone is closed.',
  asking: 'The browser asks whether the microphone may be used.',
  listening: 'Listening: a rising whistle for done, a falling one to hear it again.',
  'too-loud': 'Too loud to hear you.'
}

export function whistleEar(options: EarOptions = {}): Ear {
  const ways: Ways = { nowMs: Date.now, openMicrophone, openHearing, ...options }
  const heardBy = new Set<(heard: WhistleHeard) => void>()
  const stateBy = new Set<() => void>()
  let state: EarState = 'off'
  let trouble = ''
  let now: Listening | null = null

  const become = (next: EarState, why = ''): void => {
    if (state === next && trouble === why) return
    state = next
    trouble = why
    for (const listener of [...stateBy]) listener()
  }
  const begin = (): Listening => {
    become('asking')
    return beginListening(ways, {
      onHeard: (heard) => {
        for (const listener of [...heardBy]) listener(heard)
      },
      onState: become,
      onOver(next, why) {
        now = null
        become(next, why)
      }
    })
  }
  return {
    state: () => state,
    say() {
      if (state === 'refused' || state === 'broken') return trouble
      const disobeyed = state === 'listening' || state === 'too-loud' ? (now?.disobeyed() ?? '') : ''
      return disobeyed === '' ? words[state] : `${words[state]} ${disobeyed}`
    },
    start() {
      // What is broken but still open is begun anew: a sound graph that stands may never go on by itself.
      if (state === 'broken') now?.close()
      if (now === null || state === 'broken') now = begin()
      return now.started
    },
    stop() {
      now?.close()
      now = null
      become('off')
    },
    deafFor: (ms) => now?.deafFor(ms + DEAF_AFTER_MS),
    levelDb: () => now?.levelDb() ?? null,
    onHeard(listener) {
      heardBy.add(listener)
      return () => heardBy.delete(listener)
    },
    onState(listener) {
      stateBy.add(listener)
      return () => stateBy.delete(listener)
    }
  }
}
