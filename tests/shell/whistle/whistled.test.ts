import { describe, expect, it } from 'vitest'
import type { Glide } from '../../../src/shell/whistle/glide.ts'
import type { Traits } from '../../../src/shell/whistle/traits.ts'
import { FROM, SPREAD, weights } from '../../../src/shell/whistle/weights.ts'
import { canBeWhistled, inputsOf, isWhistled } from '../../../src/shell/whistle/whistled.ts'

/** A clear whistle in a quiet room. */
const glide: Glide = { kind: 'rise', firstFrame: 50, lastFrame: 95, semitones: 7, lengthMs: 450 }
const traits: Traits = {
  heard: 1,
  share: 0.9,
  shareLow: 0.85,
  contrastDb: 22,
  back: 0,
  stray: 0.1,
  headMs: 20,
  tailMs: 40,
  stepped: 0.32,
  bent: 0.1,
  rough: 0.06,
  jitter: 0.1,
  unsteadyDb: 1.5,
  tiltDb: 0,
  flutterDb: 1,
  companyDb: -50,
  secondDb: -50,
  groundDb: -40,
  pathDb: -40,
  beforeDb: -20,
  underDb: -25,
  overDb: -20,
  besideDb: -18,
  besideLowDb: -20
}

it('a clear whistle is one, and can be one', () => {
  expect([canBeWhistled(glide, traits), isWhistled(glide, traits)]).toEqual([true, true])
})

describe('nothing is a whistle that', () => {
  it.each<[string, Partial<Glide>, Partial<Traits>]>([
    ['goes 2 semitones', { semitones: 2 }, {}],
    ['goes 16 semitones', { semitones: 16 }, {}],
    ['lasts 0.16 s', { lengthMs: 160 }, {}],
    ['lasts 1.5 s', { lengthMs: 1_500 }, {}],
    ['is drowned half of the time', {}, { heard: 0.5 }],
    ['is a twelfth of what sounds', {}, { share: 0.08 }],
    ['hardly stands out', {}, { contrastDb: 7 }],
    ['goes back a third of its way', {}, { back: 0.33 }],
    ['comes from elsewhere or goes on, half its way again', {}, { stray: 3.5 }],
    ['is held for 0.7 s before', {}, { headMs: 700 }],
    ['is held for 0.9 s after', {}, { tailMs: 900 }],
    ['goes in steps', {}, { stepped: 0.8 }]
  ])('%s, whatever else speaks for it', (_, otherGlide, otherTraits) => {
    expect(canBeWhistled({ ...glide, ...otherGlide }, { ...traits, ...otherTraits })).toBe(false)
    expect(isWhistled({ ...glide, ...otherGlide }, { ...traits, ...otherTraits })).toBe(false)
  })
})

it('the weights are of as many inputs as are weighed', () => {
  const count = inputsOf(glide, traits).length
  expect([FROM, SPREAD, ...weights.hidden.map(({ inputs }) => inputs)].map(({ length }) => length)).toEqual(
    Array.from({ length: 2 + weights.hidden.length }, () => count)
  )
})
