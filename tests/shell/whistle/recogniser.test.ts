import { describe, expect, it } from 'vitest'
import { createRecogniser, type Heard } from '../../../src/shell/whistle/recogniser.ts'
import { chanceOf } from '../../whistle-corpus/chance.ts'
import { RATE_HZ } from '../../whistle-corpus/filters.ts'

type Shape = { fromHz: number; toHz: number; sec: number; leadSec?: number; rateHz?: number; loud?: number }

const AFTER_SEC = 0.5

/** A bare glide, straight in pitch, with a little noise under it. */
function glide({ fromHz, toHz, sec, leadSec = 0.5, rateHz = RATE_HZ, loud = 0.2 }: Shape): Float32Array {
  const chance = chanceOf(3)
  let phase = 0
  return Float32Array.from({ length: Math.round((leadSec + sec + AFTER_SEC) * rateHz) }, (_, nth) => {
    const at = nth / rateHz - leadSec
    const noise = 0.0005 * chance.noise()
    if (at < 0 || at > sec) return noise
    phase += (2 * Math.PI * fromHz * (toHz / fromHz) ** (at / sec)) / rateHz
    return noise + loud * Math.sin(phase) * Math.min(1, at / 0.03, (sec - at) / 0.03)
  })
}

const hear = (samples: Float32Array, sampleRateHz = RATE_HZ): Heard[] =>
  createRecogniser({ sampleRateHz }).push(samples)

/** From a frequency up or down by so many semitones. */
const up = (hz: number, semitones: number): number => hz * 2 ** (semitones / 12)

describe('a bare glide', () => {
  it.each([
    [800, 7, 0.5],
    [1_200, 4, 0.3],
    [2_000, 10, 1],
    [1_500, 12, 0.4]
  ])('from %i Hz over %i semitones in %f s is heard as a rise, and turned round as a fall', (hz, semitones, sec) => {
    for (const [kind, fromHz, toHz] of [
      ['rise', hz, up(hz, semitones)],
      ['fall', up(hz, semitones), hz]
    ] as const) {
      const heard = hear(glide({ fromHz, toHz, sec }))
      expect(heard.map((each) => each.kind)).toEqual([kind])
      const [one] = heard as [Heard]
      // What lies in the 30 ms in which it comes up and goes is too faint to be counted.
      expect(Math.abs(one.semitones - semitones)).toBeLessThan(0.5 + (0.03 * semitones) / sec)
      expect(Math.abs(one.lengthMs - 1_000 * sec)).toBeLessThan(80)
      expect(Math.abs(one.atMs - 1_000 * (0.5 + sec))).toBeLessThan(60)
    }
  })

  it.each([44_100, 48_000])('is heard the same at %i Hz, in blocks of 128 samples', (rateHz) => {
    const samples = glide({ fromHz: 1_000, toHz: 1_600, sec: 0.5, rateHz })
    const recogniser = createRecogniser({ sampleRateHz: rateHz })
    const heard: Heard[] = []
    for (let at = 0; at < samples.length; at += 128) heard.push(...recogniser.push(samples.subarray(at, at + 128)))
    expect(heard.map(({ kind }) => kind)).toEqual(['rise'])
    expect(Math.abs(recogniser.nowMs() - (1_000 * samples.length) / rateHz)).toBeLessThan(40)
  })

  it('is heard faint and loud alike', () => {
    for (const loud of [0.01, 0.99]) {
      expect(hear(glide({ fromHz: 1_000, toHz: 1_600, sec: 0.5, loud })).map(({ kind }) => kind)).toEqual(['rise'])
    }
  })
})

it('two rises within a breath are one answer, two a second apart are two', () => {
  const one = glide({ fromHz: 1_000, toHz: 1_600, sec: 0.4, leadSec: 0.5 })
  const pair = (apartSec: number): Float32Array => {
    const both = new Float32Array(3 * RATE_HZ)
    for (const startSec of [0, 0.4 + apartSec]) {
      for (const [nth, sample] of one.entries()) {
        const at = Math.round(startSec * RATE_HZ) + nth
        both[at] = (both[at] as number) + sample
      }
    }
    return both
  }
  expect(hear(pair(0.1)).map(({ kind }) => kind)).toEqual(['rise'])
  expect(hear(pair(1)).map(({ kind }) => kind)).toEqual(['rise', 'rise'])
})

describe('nothing is heard in', () => {
  it.each([
    ['a steady tone', { fromHz: 1_500, toHz: 1_500, sec: 0.6 }],
    ['a bend of 1 semitone', { fromHz: 1_500, toHz: up(1_500, 1), sec: 0.6 }],
    ['a chirp of 0.2 s', { fromHz: 1_000, toHz: up(1_000, 8), sec: 0.2 }],
    ['a glide of 24 semitones', { fromHz: 800, toHz: up(800, 24), sec: 0.8 }],
    ['a chirp of 0.1 s', { fromHz: 1_000, toHz: 2_000, sec: 0.1 }],
    ['a glide of 3 s', { fromHz: 1_000, toHz: 2_000, sec: 3 }],
    ['a glide below the band', { fromHz: 200, toHz: 500, sec: 0.6 }],
    ['a glide above the band', { fromHz: 4_500, toHz: 6_500, sec: 0.6 }],
    ['silence', { fromHz: 1_000, toHz: 2_000, sec: 0.6, loud: 0 }]
  ] as [string, Shape][])('%s', (_, shape) => {
    expect(hear(glide(shape))).toEqual([])
  })

  it('digital silence, nor in what is not a number, which does not deafen for good', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    expect(recogniser.push(new Float32Array(RATE_HZ))).toEqual([])
    expect(recogniser.push(new Float32Array(RATE_HZ).fill(Number.NaN))).toEqual([])
    expect(recogniser.push(glide({ fromHz: 1_000, toHz: 1_600, sec: 0.5 })).map(({ kind }) => kind)).toEqual(['rise'])
    expect(recogniser.levelDb()).toBeLessThan(0)
  })

  it.each([
    ['in one breath', 1],
    ['with a dip of 20 dB between', 0.1]
  ])('up and down again, %s: which of both was meant?', (_, least) => {
    let phase = 0
    const both = Float32Array.from({ length: 2 * RATE_HZ }, (_, nth) => {
      const sec = nth / RATE_HZ - 0.5
      if (sec < 0 || sec > 0.8) return 0
      const gone = 1 - Math.abs(sec - 0.4) / 0.4
      phase += (2 * Math.PI * up(1_000, 9 * gone)) / RATE_HZ
      const dip = Math.max(least, Math.min(1, Math.abs(sec - 0.4) / 0.03))
      return 0.2 * Math.sin(phase) * Math.min(1, sec / 0.03, (0.8 - sec) / 0.03) * dip
    })
    expect(hear(both)).toEqual([])
  })

  it('a glide that was under way when hearing began', () => {
    const whole = glide({ fromHz: 900, toHz: 1_800, sec: 0.8 })
    expect(hear(whole.subarray(0.7 * RATE_HZ))).toEqual([])
  })

  it('a run of notes from low to high, each bound to the next', () => {
    let phase = 0
    const run = Float32Array.from({ length: 2 * RATE_HZ }, (_, nth) => {
      const sec = nth / RATE_HZ - 0.5
      if (sec < 0 || sec > 0.8) return 0
      // 0.16 s each, the last quarter of which leads over to the next.
      const note = Math.floor(sec / 0.16)
      const over = Math.max(0, (sec / 0.16 - note - 0.75) * 4)
      phase += (2 * Math.PI * up(1_500, 2 * (note + over))) / RATE_HZ
      return 0.2 * Math.sin(phase) * Math.min(1, sec / 0.03, (0.8 - sec) / 0.03)
    })
    expect(hear(run)).toEqual([])
  })

  it.each([2, 3 / 2, 3])(
    'a slide of an instrument: a tone at %f times the pitch goes along, 14 dB under it',
    (ratio) => {
      const slide = (hz: number, loud: number): Float32Array => glide({ fromHz: hz, toHz: up(hz, 6), sec: 0.5, loud })
      const [tone, partner] = [slide(1_000, 0.2), slide(1_000 * ratio, 0.04)]
      expect(hear(tone).map(({ kind }) => kind)).toEqual(['rise'])
      expect(hear(tone.map((sample, nth) => sample + (partner[nth] as number)))).toEqual([])
    }
  )

  it('a voice: a glide with its partials', () => {
    const partials = [300, 600, 900, 1_200, 1_500].map((hz) => glide({ fromHz: hz, toHz: up(hz, 6), sec: 0.5 }))
    const voice = (partials[0] as Float32Array).map(
      (_, nth) => partials.reduce((sum, each) => sum + (each[nth] as number), 0) / 5
    )
    expect(hear(voice)).toEqual([])
  })
})

describe('while it is deaf', () => {
  const rise = glide({ fromHz: 1_000, toHz: 1_600, sec: 0.5 })

  it('nothing is heard, and after it everything is', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    recogniser.deafFor((1_000 * rise.length) / RATE_HZ)
    expect(recogniser.push(rise)).toEqual([])
    expect(recogniser.push(rise).map(({ kind }) => kind)).toEqual(['rise'])
  })

  it('a glide that was under way is forgotten', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    const half = Math.round(0.8 * RATE_HZ)
    expect(recogniser.push(rise.subarray(0, half))).toEqual([])
    recogniser.deafFor(10)
    expect(recogniser.push(rise.subarray(half))).toEqual([])
  })

  it('a shorter deafness does not end a longer one', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    recogniser.deafFor(2_000)
    recogniser.deafFor(10)
    expect(recogniser.push(rise)).toEqual([])
  })
})

describe('too loud to hear you', () => {
  const noise = (loud: number, sec: number): Float32Array => {
    const chance = chanceOf(9)
    return Float32Array.from({ length: sec * RATE_HZ }, () => loud * chance.noise())
  }

  it('is said in noise as loud as a whistle, not in a quiet room, and is taken back', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    recogniser.push(noise(0.001, 3))
    expect(recogniser.tooLoud()).toBe(false)
    recogniser.push(noise(0.5, 6))
    expect(recogniser.tooLoud()).toBe(true)
    recogniser.push(noise(0.001, 6))
    expect(recogniser.tooLoud()).toBe(false)
  })

  it('is not said for one bang', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    recogniser.push(noise(0.001, 3))
    recogniser.push(noise(1, 0.1))
    expect(recogniser.tooLoud()).toBe(false)
  })

  it('is said later of somebody who whistles louder', () => {
    const [soft, loud] = [-40, -6].map((whistleDb) => createRecogniser({ sampleRateHz: RATE_HZ, whistleDb }))
    for (const recogniser of [soft, loud]) recogniser?.push(noise(0.05, 6))
    expect(soft?.tooLoud()).toBe(true)
    expect(loud?.tooLoud()).toBe(false)
  })

  it('is said when the microphone is overdriven', () => {
    const recogniser = createRecogniser({ sampleRateHz: RATE_HZ })
    // A hum under the band, so far over the scale that it is cut.
    const hum = Float32Array.from({ length: 4 * RATE_HZ }, (_, nth) =>
      Math.max(-1, Math.min(1, 1.1 * Math.sin((2 * Math.PI * 60 * nth) / RATE_HZ)))
    )
    recogniser.push(hum)
    expect(recogniser.levelDb()).toBeLessThan(-30)
    expect(recogniser.tooLoud()).toBe(true)
  })
})
