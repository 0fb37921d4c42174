import type { Alert } from '../../../src/core/pot/due.ts'
import type { RungAlert } from '../../../src/shell/rung.ts'
import { memoryVoice } from '../../../src/shell/speech/memory-voice.ts'
import type { Words } from '../../../src/shell/speech/speaker.ts'
import type { PotCue } from '../../../src/shell/speech/turns.ts'
import { call as standing } from '../calling.ts'

export const call = (potId: string, change: Partial<Alert> = {}): RungAlert => standing(change, potId)

export const late = (potId: string, change: Partial<Alert> = {}): RungAlert =>
  call(potId, { urgency: 'late', lateMs: 60_000, ...change })

export const grave = (potId: string, change: Partial<Alert> = {}): RungAlert =>
  late(potId, { escalates: true, ...change })

export const count = (potId: string, atMs: number, change: Partial<PotCue> = {}): PotCue => ({
  potId,
  atMs,
  key: `count ${atMs}`,
  say: 'Three. Two. One. Lower.',
  urgency: 'now',
  pot: potId,
  calls: 'acid',
  ...change
})

export const ahead = (potId: string, atMs: number): PotCue =>
  count(potId, atMs, { key: `ahead ${atMs}`, say: `${potId}. Lower in ten.`, urgency: 'soon', pot: null, calls: null })

/** A kitchen of sounds only: its clock goes as the test says, and every sentence takes three seconds. */
export function earshot(options: { sentenceMs?: number } = {}) {
  const sentenceMs = options.sentenceMs ?? 3_000
  const voice = memoryVoice()
  const heard: string[] = []
  const clock = { ms: 0 }
  const coming: { cues: PotCue[] } = { cues: [] }
  const words: Words = {
    alert: ({ potId, alert }, again) => `${potId} ${alert.key} ${alert.urgency}${again ? ' again' : ''}`,
    cues: () => coming.cues,
    nowMs: () => clock.ms
  }
  let begunMs = 0
  let begun = 0
  return {
    voice,
    heard,
    clock,
    coming,
    words,
    /** Until `untilMs`, looking four times a second: what was begun, each with its second. */
    run(untilMs: number, look: () => void): void {
      for (; clock.ms <= untilMs; clock.ms += 250) {
        if (voice.now() !== null && clock.ms - begunMs >= sentenceMs) voice.end()
        look()
        for (; begun < voice.said.length; begun++) {
          heard.push(`${clock.ms / 1000} ${voice.said[begun]}`)
          begunMs = clock.ms
        }
      }
    }
  }
}
