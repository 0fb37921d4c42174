// From the rate of the browser's sound to 16 kHz, so that one recogniser serves every device. A context made at 16 kHz
// would do it too, but not every browser lets a microphone into one.
export const RATE_HZ = 16_000

/** What lies above this would be folded down into the band of whistles. */
const PASS_HZ = 7_000
/** Periods of the lower rate to each side of the filter's middle. */
const REACH = 16
/** Places between two samples at which the filter is known. */
const PLACES = 64

export type Resampler = (samples: Float32Array) => Float32Array

/** Linear phase: a sinc under a Blackman window. It holds `REACH` periods back; those are its delay. */
export function createResampler(fromHz: number): Resampler {
  if (!(fromHz >= RATE_HZ)) throw new RangeError(`sound at ${fromHz} Hz: at least ${RATE_HZ} Hz is needed`)
  if (fromHz === RATE_HZ) return (samples) => samples
  const step = fromHz / RATE_HZ
  const reach = Math.ceil(REACH * step)
  const taps = filters(fromHz, reach)
  const width = 2 * reach
  let held = new Float32Array(0)
  /** Where the next sample that is given out lies, in samples of `held`. */
  let at = reach
  return (samples) => {
    const all = new Float32Array(held.length + samples.length)
    all.set(held)
    all.set(samples, held.length)
    const given: number[] = []
    while (Math.floor(at) + reach < all.length) {
      const whole = Math.floor(at)
      const filter = taps[Math.round((at - whole) * PLACES)] as Float64Array
      let sum = 0
      const first = whole - reach + 1
      for (let nth = 0; nth < width; nth++) sum += (all[first + nth] as number) * (filter[nth] as number)
      given.push(sum)
      at += step
    }
    const gone = Math.max(0, Math.floor(at) - reach)
    held = all.slice(gone)
    at -= gone
    return Float32Array.from(given)
  }
}

/** One filter for each place between two samples, each passing a steady level unchanged. */
function filters(fromHz: number, reach: number): Float64Array[] {
  const cut = (2 * PASS_HZ) / fromHz
  return Array.from({ length: PLACES + 1 }, (_, place) => {
    const filter = Float64Array.from({ length: 2 * reach }, (_, nth) => {
      const away = nth - reach + 1 - place / PLACES
      return sinc(cut * away) * blackman(away / reach)
    })
    const sum = filter.reduce((whole, tap) => whole + tap, 0)
    return filter.map((tap) => tap / sum)
  })
}

function sinc(at: number): number {
  return Math.abs(at) < 1e-9 ? 1 : Math.sin(Math.PI * at) / (Math.PI * at)
}

/** From -1 to 1; nothing outside. */
function blackman(at: number): number {
  return Math.abs(at) >= 1 ? 0 : 0.42 + 0.5 * Math.cos(Math.PI * at) + 0.08 * Math.cos(2 * Math.PI * at)
}
