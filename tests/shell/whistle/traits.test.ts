import { expect, it } from 'vitest'
import type { Traits } from '../../../src/shell/whistle/traits.ts'
import { chanceOf } from '../../whistle-corpus/chance.ts'
import { RATE_HZ } from '../../whistle-corpus/filters.ts'
import { hear } from '../../whistle-corpus/measure.ts'
import { plain } from '../../whistle-corpus/plain.ts'
import { type WhistlePlan, whistleOf } from '../../whistle-corpus/whistle.ts'

/** Of a rise from 1000 Hz over a second of sound before it, one sample for each place. */
function traitsOver(before: (nth: number) => number, other: Partial<WhistlePlan> = {}): Traits {
  const plan: WhistlePlan = {
    ...plain,
    kind: 'rise',
    fromHz: 1_000,
    tremble: { share: 0, hz: 6 },
    room: null,
    ...other
  }
  const whistle = whistleOf(plan, chanceOf(5))
  const samples = new Float32Array(RATE_HZ + whistle.length).map((_, nth) => 0.1 * before(nth))
  whistle.forEach((sample, nth) => {
    samples[RATE_HZ + nth] = (samples[RATE_HZ + nth] as number) + 0.1 * sample
  })
  let found: Traits | null = null
  hear(samples, ({ kind, semitones }, traits) => {
    if (kind === 'rise' && semitones > 6) found = traits
    return false
  })
  if (found === null) throw new Error('the glide was not found')
  return found
}
const silence = (): number => 0

it('how much louder a glide is at its end is told, and how its loudness trembles beside that', () => {
  const [even, swelling, fading, trembling] = [
    {},
    { tiltDb: 6 },
    { tiltDb: -6 },
    { tremble: { share: 0.7, hz: 8 } }
  ].map((other) => traitsOver(silence, other)) as [Traits, Traits, Traits, Traits]
  expect(Math.abs(even.tiltDb)).toBeLessThan(2)
  // Its ends are left out, and with them some of the 6 dB.
  expect(swelling.tiltDb - even.tiltDb).toBeGreaterThan(3)
  expect(even.tiltDb - fading.tiltDb).toBeGreaterThan(3)
  expect(Math.abs(swelling.flutterDb - even.flutterDb)).toBeLessThan(0.5)
  expect(trembling.flutterDb - even.flutterDb).toBeGreaterThan(1.5)
})

it('what sounded before at the pitches of a glide is told, what sounded elsewhere is not', () => {
  const noise = chanceOf(6)
  const tone = (hz: number) => (nth: number) => Math.sin((2 * Math.PI * hz * nth) / RATE_HZ)
  expect(traitsOver(silence).pathDb).toBe(-40)
  expect(traitsOver(tone(3_000)).pathDb).toBeLessThan(-35)
  expect(traitsOver(() => noise.noise()).pathDb).toBeGreaterThan(-25)
})
