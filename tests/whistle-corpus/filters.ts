// What sounds are shaped with. All at 16 kHz.
export const RATE_HZ = 16_000

export type Filter = (sample: number) => number

/** Two poles: rings at `hz`, `bandHz` wide, 1 at its middle or near it. */
export type Resonator = Filter & { tune(hz: number, bandHz: number): void }

export function resonator(hz: number, bandHz: number): Resonator {
  let a = 0
  let b = 0
  let gain = 0
  let last = 0
  let before = 0
  const filter = (sample: number): number => {
    const now = gain * sample + b * last + a * before
    before = last
    last = now
    return now
  }
  const tune = (toHz: number, wideHz: number): void => {
    const radius = Math.exp((-Math.PI * wideHz) / RATE_HZ)
    a = -radius * radius
    b = 2 * radius * Math.cos((2 * Math.PI * toHz) / RATE_HZ)
    // At the middle: (1 - r) times |1 - r e^(-2j w)|.
    gain =
      (1 - radius) *
      Math.hypot(
        1 - radius * Math.cos((4 * Math.PI * toHz) / RATE_HZ),
        radius * Math.sin((4 * Math.PI * toHz) / RATE_HZ)
      )
  }
  tune(hz, bandHz)
  return Object.assign(filter, { tune })
}

export function lowPass(hz: number): Filter {
  const share = 1 - Math.exp((-2 * Math.PI * hz) / RATE_HZ)
  let level = 0
  return (sample) => {
    level += (sample - level) * share
    return level
  }
}

export function highPass(hz: number): Filter {
  const low = lowPass(hz)
  return (sample) => sample - low(sample)
}

/** Root of the mean square. */
export function levelOf(samples: Float32Array, first = 0, last = samples.length): number {
  let sum = 0
  for (let nth = first; nth < last; nth++) sum += (samples[nth] as number) ** 2
  return Math.sqrt(sum / Math.max(1, last - first))
}

export function fromDb(db: number): number {
  return 10 ** (db / 20)
}

/** 0 to 1 and back along half cosines. `at`, `length` and the edges in one unit. */
export function edges(at: number, length: number, attack: number, release: number): number {
  if (at < 0 || at > length) return 0
  const rise = at < attack ? 0.5 - 0.5 * Math.cos((Math.PI * at) / attack) : 1
  const left = length - at
  return rise * (left < release ? 0.5 - 0.5 * Math.cos((Math.PI * left) / release) : 1)
}
