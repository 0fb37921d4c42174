import { describe, expect, it } from 'vitest'
import { createSpectrum } from '../../../src/shell/whistle/spectrum.ts'
import { chanceOf } from '../../whistle-corpus/chance.ts'

/** The definition of the discrete Fourier transform, term by term. */
function byDefinition(samples: Float64Array): { re: number[]; im: number[] } {
  const bins = Array.from({ length: samples.length / 2 + 1 }, (_, bin) => bin)
  const sum = (bin: number, part: (angle: number) => number): number =>
    samples.reduce((whole, sample, nth) => whole + sample * part((-2 * Math.PI * bin * nth) / samples.length), 0)
  return { re: bins.map((bin) => sum(bin, Math.cos)), im: bins.map((bin) => sum(bin, Math.sin)) }
}

const noise = (size: number, seed: number): Float64Array => {
  const chance = chanceOf(seed)
  return Float64Array.from({ length: size }, () => chance.noise())
}

describe('the spectrum', () => {
  it.each([8, 16, 64, 512])('of %i samples is what the definition gives', (size) => {
    const samples = noise(size, size)
    const { re, im } = createSpectrum(size).transform(samples)
    const wanted = byDefinition(samples)
    // Rounding only: some size times the last place of a double.
    for (let bin = 0; bin <= size / 2; bin++) {
      expect(Math.abs((re[bin] as number) - (wanted.re[bin] as number)), `bin ${bin}`).toBeLessThan(1e-9)
      expect(Math.abs((im[bin] as number) - (wanted.im[bin] as number)), `bin ${bin}`).toBeLessThan(1e-9)
    }
  })

  // Parseval's theorem: the sum of |x|^2 is the sum of |X|^2 over N. Source: A. V. Oppenheim and R. W. Schafer,
  // Discrete-Time Signal Processing, the chapter on the discrete Fourier transform (from memory, page not looked up).
  it("keeps the energy (Parseval's theorem)", () => {
    const samples = noise(512, 7)
    const { re, im } = createSpectrum(512).transform(samples)
    const energy = samples.reduce((sum, sample) => sum + sample * sample, 0)
    let sum = 0
    for (let bin = 0; bin <= 256; bin++) {
      // All bins but the first and the last stand for two of the whole transform.
      sum += (bin === 0 || bin === 256 ? 1 : 2) * ((re[bin] as number) ** 2 + (im[bin] as number) ** 2)
    }
    expect(sum / 512).toBeCloseTo(energy, 9)
  })

  it('under its window shows a tone at its own bin: (N / 4)^2 there, a quarter of it beside', () => {
    // A Hann window's transform is 1/2 at 0 and 1/4 at one bin to each side; half of the tone lies at negative frequency.
    const tone = Float64Array.from({ length: 512 }, (_, nth) => Math.sin((2 * Math.PI * 40 * nth) / 512))
    const power = createSpectrum(512).powerOf(tone)
    expect(power[40]).toBeCloseTo(128 ** 2, 6)
    expect(power[39]).toBeCloseTo(64 ** 2, 6)
    expect(power[41]).toBeCloseTo(64 ** 2, 6)
    expect(power[44]).toBeLessThan(1e-12)
  })

  it.each([0, 4, 12, 500])('is refused for %i samples', (size) => {
    expect(() => createSpectrum(size)).toThrow(RangeError)
  })
})
