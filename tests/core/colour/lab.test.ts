import fc from 'fast-check'
import { expect, it } from 'vitest'
import { chromaOf, deltaE, deltaHue, hueDegOf, type Lab } from '../../../src/core/colour/lab.ts'

const axis = fc.double({ min: -100, max: 100, noNaN: true })
const lab: fc.Arbitrary<Lab> = fc.record({ l: fc.double({ min: 0, max: 100, noNaN: true }), a: axis, b: axis })

it('ΔH* is the part of ΔE* that is neither lightness nor chroma', () => {
  fc.assert(
    fc.property(lab, lab, (one, other) => {
      const [l, c, h] = [other.l - one.l, chromaOf(other) - chromaOf(one), deltaHue(one, other)]
      expect(Math.hypot(l, c, h)).toBeCloseTo(deltaE(one, other), 6)
    })
  )
})

it('ΔH* is 2 √(C1 C2) sin(Δh / 2), and changes its sign with the order', () => {
  fc.assert(
    fc.property(lab, lab, (one, other) => {
      // Facing hues differ by all they can, and which way round is chance.
      fc.pre(Math.abs(Math.cos(((hueDegOf(other) - hueDegOf(one)) * Math.PI) / 360)) > 1e-4)
      const half = ((hueDegOf(other) - hueDegOf(one)) * Math.PI) / 360
      const size = 2 * Math.sqrt(chromaOf(one) * chromaOf(other)) * Math.sin(half)
      expect(Math.abs(deltaHue(one, other))).toBeCloseTo(Math.abs(size), 6)
      expect(deltaHue(other, one)).toBeCloseTo(-deltaHue(one, other), 6)
    })
  )
})

it('from red to yellow to green to blue and on to red is up, also over 360 degrees', () => {
  const ring = [20, 90, 160, 250, 350, 10].map((deg) => {
    const angle = (deg * Math.PI) / 180
    return { l: 50, a: 30 * Math.cos(angle), b: 30 * Math.sin(angle) }
  })
  for (const [nth, one] of ring.slice(0, -1).entries()) expect(deltaHue(one, ring[nth + 1] as Lab)).toBeGreaterThan(5)
  expect(hueDegOf({ l: 50, a: 1, b: -1 })).toBeCloseTo(315, 9)
})

it('grey has no hue to differ in, and hues that face one another differ by all they can', () => {
  expect(deltaHue({ l: 50, a: 0, b: 0 }, { l: 50, a: 10, b: 0 })).toBe(0)
  expect(Math.abs(deltaHue({ l: 50, a: -10, b: 0 }, { l: 50, a: 10, b: 0 }))).toBeCloseTo(20, 9)
  // A hair beside facing: the sum of what nearly cancels has no figures left there.
  expect(deltaHue({ l: 50, a: 50, b: 1e-6 }, { l: 50, a: -50, b: 1e-6 })).toBeCloseTo(100, 6)
})
