import { describe, expect, it } from 'vitest'
import { createResampler, RATE_HZ } from '../../../src/shell/whistle/resample.ts'
import { levelOf } from '../../whistle-corpus/filters.ts'

const tone = (hz: number, rateHz: number, sec: number): Float32Array =>
  Float32Array.from({ length: Math.round(rateHz * sec) }, (_, nth) => Math.sin((2 * Math.PI * hz * nth) / rateHz))

/** In blocks of 128, as the browser gives them. */
const throughIn = (samples: Float32Array, rateHz: number): Float32Array => {
  const resample = createResampler(rateHz)
  const blocks: number[] = []
  for (let at = 0; at < samples.length; at += 128) blocks.push(...resample(samples.subarray(at, at + 128)))
  return Float32Array.from(blocks)
}

describe.each([44_100, 48_000, 96_000])('sound at %i Hz', (rateHz) => {
  it('comes out at 16 kHz, as long as it was', () => {
    const out = throughIn(tone(1_000, rateHz, 1), rateHz)
    expect(Math.abs(out.length - RATE_HZ)).toBeLessThan(50)
  })

  it.each([700, 2_000, 3_600, 6_000])('keeps a tone of %i Hz as loud, and at its pitch', (hz) => {
    const out = throughIn(tone(hz, rateHz, 0.5), rateHz)
    const steady = out.subarray(200, out.length - 200)
    expect(20 * Math.log10(levelOf(steady) * Math.SQRT2)).toBeCloseTo(0, 0)
    // What a tone of that pitch leaves of it: nothing, if it is that pitch.
    let re = 0
    let im = 0
    steady.forEach((sample, nth) => {
      re += sample * Math.cos((2 * Math.PI * hz * nth) / RATE_HZ)
      im += sample * Math.sin((2 * Math.PI * hz * nth) / RATE_HZ)
    })
    expect((2 * Math.hypot(re, im)) / steady.length).toBeGreaterThan(0.95)
  })

  it.each([13_000, 15_000])('lets nothing of a tone of %i Hz fall into the band of whistles: 60 dB down', (hz) => {
    const out = throughIn(tone(hz, rateHz, 0.5), rateHz)
    expect(20 * Math.log10(levelOf(out, 200, out.length - 200) * Math.SQRT2)).toBeLessThan(-60)
  })

  it('is the same in blocks as in one piece', () => {
    const sound = tone(1_234, rateHz, 0.2)
    const whole = createResampler(rateHz)(sound)
    const blocks = throughIn(sound, rateHz)
    expect(blocks.length).toBe(whole.length)
    blocks.forEach((sample, nth) => {
      expect(sample).toBeCloseTo(whole[nth] as number, 6)
    })
  })
})

it('sound at 16 kHz goes through as it is, and slower sound is refused', () => {
  const sound = tone(1_000, RATE_HZ, 0.1)
  expect(createResampler(RATE_HZ)(sound)).toEqual(sound)
  for (const rateHz of [8_000, 0, Number.NaN]) expect(() => createResampler(rateHz)).toThrow(RangeError)
})
