// The power of each frequency in a stretch of sound.

export type Spectrum = {
  /** Windowed (Hann) power of bins 0 to size / 2. The array is used again by the next call. */
  powerOf(samples: ArrayLike<number>): Float64Array
  /** The plain transform of real samples, no window: bins 0 to size / 2. Used again by the next call. */
  transform(samples: ArrayLike<number>): { re: Float64Array; im: Float64Array }
}

/** `size` is a power of two, 8 or more. */
export function createSpectrum(size: number): Spectrum {
  if (size < 8 || !Number.isInteger(Math.log2(size))) throw new RangeError(`no power of two from 8 on: ${size}`)
  const half = size / 2
  const place = reversedBits(half)
  const [cos, sin] = turns(size)
  const hann = Float64Array.from({ length: size }, (_, nth) => 0.5 - 0.5 * Math.cos((2 * Math.PI * nth) / size))
  const re = new Float64Array(half)
  const im = new Float64Array(half)
  const outRe = new Float64Array(half + 1)
  const outIm = new Float64Array(half + 1)
  const power = new Float64Array(half + 1)
  const windowed = new Float64Array(size)

  /** Even samples as real parts and odd ones as imaginary parts: half the work for sound, which has no imaginary part. */
  const transform = (samples: ArrayLike<number>): { re: Float64Array; im: Float64Array } => {
    for (let nth = 0; nth < half; nth++) {
      const to = place[nth] as number
      re[to] = samples[2 * nth] as number
      im[to] = samples[2 * nth + 1] as number
    }
    butterflies(re, im, cos, sin)
    unpack(re, im, cos, sin, outRe, outIm)
    return { re: outRe, im: outIm }
  }
  return {
    transform,
    powerOf(samples) {
      for (let nth = 0; nth < size; nth++) windowed[nth] = (samples[nth] as number) * (hann[nth] as number)
      transform(windowed)
      for (let bin = 0; bin <= half; bin++) {
        power[bin] = (outRe[bin] as number) ** 2 + (outIm[bin] as number) ** 2
      }
      return power
    }
  }
}

function turns(size: number): [Float64Array, Float64Array] {
  const angle = (nth: number): number => (-2 * Math.PI * nth) / size
  return [
    Float64Array.from({ length: size / 2 }, (_, nth) => Math.cos(angle(nth))),
    Float64Array.from({ length: size / 2 }, (_, nth) => Math.sin(angle(nth)))
  ]
}

function reversedBits(count: number): Uint32Array {
  const bits = Math.log2(count)
  return Uint32Array.from({ length: count }, (_, nth) => {
    let turned = 0
    for (let bit = 0; bit < bits; bit++) turned |= ((nth >> bit) & 1) << (bits - 1 - bit)
    return turned
  })
}

/** Cooley and Tukey's scheme, decimation in time, in place; the samples lie in bit-reversed order already. */
function butterflies(re: Float64Array, im: Float64Array, cos: Float64Array, sin: Float64Array): void {
  const count = re.length
  for (let span = 1; span < count; span *= 2) {
    // The table of turns is for twice as many points.
    const stride = count / span
    for (let from = 0; from < count; from += 2 * span) {
      for (let nth = 0; nth < span; nth++) {
        const a = from + nth
        const b = a + span
        const c = cos[nth * stride] as number
        const s = sin[nth * stride] as number
        const bRe = re[b] as number
        const bIm = im[b] as number
        const turnedRe = bRe * c - bIm * s
        const turnedIm = bRe * s + bIm * c
        re[b] = (re[a] as number) - turnedRe
        im[b] = (im[a] as number) - turnedIm
        re[a] = (re[a] as number) + turnedRe
        im[a] = (im[a] as number) + turnedIm
      }
    }
  }
}

/** From the transform of the packed samples to that of the real ones. */
function unpack(
  re: Float64Array,
  im: Float64Array,
  cos: Float64Array,
  sin: Float64Array,
  outRe: Float64Array,
  outIm: Float64Array
): void {
  const half = re.length
  for (let bin = 1; bin < half; bin++) {
    const other = half - bin
    const evenRe = ((re[bin] as number) + (re[other] as number)) / 2
    const evenIm = ((im[bin] as number) - (im[other] as number)) / 2
    const oddRe = ((im[bin] as number) + (im[other] as number)) / 2
    const oddIm = ((re[other] as number) - (re[bin] as number)) / 2
    const c = cos[bin] as number
    const s = sin[bin] as number
    outRe[bin] = evenRe + oddRe * c - oddIm * s
    outIm[bin] = evenIm + oddRe * s + oddIm * c
  }
  outRe[0] = (re[0] as number) + (im[0] as number)
  outIm[0] = 0
  outRe[half] = (re[0] as number) - (im[0] as number)
  outIm[half] = 0
}
