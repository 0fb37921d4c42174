// Three patterns, in the spirit of IEC 60601-1-8, ISO 7731 and ISO 24500 (secondary sources; no conformity is claimed):
// pulses of about 150 ms with soft edges, a fundamental of 500 to 1000 Hz and three harmonics up to 3 kHz, so that a fan
// of 60 to 65 dB does not drown all of them at once.
export type Pattern = 'soon' | 'now' | 'late'

type Pulse = { atMs: number; hz: number }

export const PULSE_MS = 150
export const RAMP_MS = 20

const three = (startMs: number, hz: number): Pulse[] => [0, 1, 2].map((nth) => ({ atMs: startMs + nth * 300, hz }))
const two = (startMs: number, hz: number): Pulse[] => [0, 1].map((nth) => ({ atMs: startMs + nth * 300, hz }))
const threeAndTwo = (startMs: number): Pulse[] => [...three(startMs, 740), ...two(startMs + 1_200, 740)]

/** soon: one pulse. now: three. late: three and two, given twice. */
export const pulses: Record<Pattern, Pulse[]> = {
  soon: [{ atMs: 0, hz: 550 }],
  now: three(0, 660),
  late: [...threeAndTwo(0), ...threeAndTwo(2_800)]
}

export function lengthMs(pattern: Pattern): number {
  return Math.max(...pulses[pattern].map(({ atMs }) => atMs)) + PULSE_MS
}
