import type { Pattern } from './patterns.ts'
import { render } from './render.ts'

/** One pattern on its way into the speaker. */
export type Sounding = { began(): boolean; stop(): void }

export function soundAt(
  context: AudioContext,
  { pattern, level, inMs }: { pattern: Pattern; level: number; inMs: number },
  ended: () => void
): Sounding {
  const samples = render(pattern, context.sampleRate)
  const buffer = context.createBuffer(1, samples.length, context.sampleRate)
  buffer.copyToChannel(samples, 0)
  const source = context.createBufferSource()
  source.buffer = buffer
  const gain = context.createGain()
  gain.gain.value = Math.min(1, Math.max(0, level))
  source.connect(gain).connect(context.destination)
  source.onended = ended
  const atSec = context.currentTime + Math.max(0, inMs) / 1_000
  source.start(atSec)
  return { began: () => context.currentTime >= atSec, stop: () => source.stop() }
}
