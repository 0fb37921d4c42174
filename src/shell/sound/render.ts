import { lengthMs, type Pattern, PULSE_MS, pulses, RAMP_MS } from './patterns.ts'

/** The fundamental and its harmonics, no louder ever than 1 together. */
const harmonics = [0.4, 0.25, 0.2, 0.15]

/** A pattern as samples between -1 and 1. */
export function render(pattern: Pattern, sampleRateHz: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.ceil((lengthMs(pattern) / 1000) * sampleRateHz))
  for (const { atMs, hz } of pulses[pattern]) addPulse(samples, sampleRateHz, atMs, hz)
  return samples
}

function addPulse(samples: Float32Array, sampleRateHz: number, atMs: number, hz: number): void {
  const first = Math.round((atMs / 1000) * sampleRateHz)
  const count = Math.round((PULSE_MS / 1000) * sampleRateHz)
  for (let nth = 0; nth < count && first + nth < samples.length; nth++) {
    const sec = nth / sampleRateHz
    let sum = 0
    harmonics.forEach((part, index) => {
      sum += part * Math.sin(2 * Math.PI * hz * (index + 1) * sec)
    })
    samples[first + nth] = sum * edge(sec * 1000)
  }
}

/** Rises and falls along a half cosine: a hard edge clicks and startles. */
function edge(atMs: number): number {
  const fromEdgeMs = Math.min(atMs, PULSE_MS - atMs)
  return fromEdgeMs >= RAMP_MS ? 1 : 0.5 - 0.5 * Math.cos((Math.PI * Math.max(0, fromEdgeMs)) / RAMP_MS)
}
