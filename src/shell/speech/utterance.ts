// One sentence on its way through the browser's speech, with the watchdogs it needs: events that never come, and
// sentences that are swallowed.
import { slowSeconds } from '../../core/spoken/phrase.ts'

/** Chromium swallows what is spoken right after a cancel. */
export const AFTER_CANCEL_MS = 80
/** A sentence that has not begun by then is spoken once more. */
const BEGIN_MOST_MS = 2_000
const TRIES_MOST = 2
/** The end may never be told: a sentence is taken as ended after so many times its length. */
const LENGTHS_MOST = 3
const SHORTEST_MS = 1_000

/** 'silent': nothing was heard of it. 'refused': the browser wants a gesture first. */
export type Ending = 'said' | 'silent' | 'refused'

export type Speech = {
  synth: SpeechSynthesis
  text: string
  /** A new utterance for each try: one that was cancelled is spent. */
  make: () => SpeechSynthesisUtterance
  waitMs: number
  onEnd: (how: Ending) => void
}

/** `onEnd` comes once and never at once. Returns the way to break it off, after which `onEnd` does not come. */
export function speakOnce({ synth, text, make, waitMs, onEnd }: Speech): () => void {
  // The closures of the timers hold the utterance: a browser may else forget it before it told its end.
  let spoken: SpeechSynthesisUtterance | null = null
  let begun = false
  let tries = 0
  let timers: ReturnType<typeof setTimeout>[] = []
  const later = (act: () => void, ms: number): void => void timers.push(setTimeout(act, ms))
  const quiet = (): void => {
    for (const timer of timers) clearTimeout(timer)
    timers = []
    spoken = null
  }
  const finish = (how: Ending): void => {
    quiet()
    onEnd(how)
  }
  const cancel = (): void => {
    quiet()
    synth.cancel()
  }
  const tryAgain = (): void => {
    if (begun) return
    cancel()
    if (tries < TRIES_MOST) later(speak, AFTER_CANCEL_MS)
    else onEnd('silent')
  }
  const speak = (): void => {
    tries++
    const utterance = make()
    spoken = utterance
    const heed = (act: () => void) => (): void => {
      if (utterance === spoken) act()
    }
    utterance.onstart = heed(() => {
      begun = true
    })
    utterance.onend = heed(() => finish('said'))
    utterance.onerror = (event) => heed(() => finish(event.error === 'not-allowed' ? 'refused' : 'silent'))()
    // Left paused by a locked screen it would wait for ever.
    synth.resume()
    synth.speak(utterance)
    later(tryAgain, BEGIN_MOST_MS)
    later(() => {
      cancel()
      onEnd(begun ? 'said' : 'silent')
    }, longestMs(text))
  }
  later(speak, waitMs)
  return cancel
}

export function longestMs(text: string): number {
  return LENGTHS_MOST * Math.max(SHORTEST_MS, slowSeconds(text) * 1_000)
}
