import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/pot/fold.ts'
import { forecast } from '../../../src/core/pot/forecast.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import { heightOf, isCut, rulings, TOP_MS } from '../../../src/ui/screens/stove/scale.ts'
import { strandShape } from '../../../src/ui/screens/stove/strand-shape.ts'
import { noon } from './fixtures.ts'
import { pots } from './pots.ts'

const hour = 3_600_000
const leftMs = fc.integer({ min: -12 * hour, max: 48 * hour })

describe('the scale of the Stove', () => {
  it('hangs what is due later never lower, whatever the times', () => {
    fc.assert(
      fc.property(leftMs, leftMs, (one, other) => {
        const [sooner, later] = one < other ? [one, other] : [other, one]
        expect(heightOf(sooner)).toBeLessThanOrEqual(heightOf(later))
      })
    )
  })

  it('tells two moments apart that lie a second apart, up to the top ruling', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: TOP_MS - 1000 }), (left) => {
        expect(heightOf(left + 1000)).toBeGreaterThan(heightOf(left))
      })
    )
  })

  it('puts what is due now at the water, two hours at the top, and each ruled stretch at a fifth or more', () => {
    expect(heightOf(0)).toBe(0)
    expect(heightOf(TOP_MS)).toBeCloseTo(1, 12)
    const heights = [0, ...rulings.map((r) => heightOf(r.atMs))]
    const stretches = heights.slice(1).map((h, i) => h - (heights[i] as number))
    for (const stretch of stretches) expect(stretch).toBeGreaterThan(0.2)
    expect(rulings.map((r) => r.atMs / 60_000)).toEqual([2, 10, 30, 120])
  })

  it('sinks what is overdue under the water, but not out of sight', () => {
    expect(heightOf(-1)).toBeLessThan(0)
    expect(heightOf(-24 * hour)).toBe(-0.25)
    expect(isCut(TOP_MS)).toBe(false)
    expect(isCut(TOP_MS + 1)).toBe(true)
  })

  it('keeps the order of due times across all pots, as drawn', () => {
    const states = Object.values(pots).map((make) => fold(make().entries) as LiveState)
    for (const nowMs of [noon, noon + 90_000, noon + hour]) {
      const drawn = states.flatMap((state) => strandShape(forecast(state, nowMs), nowMs, 240).knots)
      expect(drawn.length).toBeGreaterThan(20)
      const byTime = [...drawn].sort((a, b) => a.atMs - b.atMs)
      for (let i = 1; i < byTime.length; i++) {
        const [lower, upper] = [byTime[i - 1], byTime[i]]
        expect((lower?.at ?? 0) - (upper?.at ?? 0)).toBeLessThanOrEqual(0)
      }
    }
  })
})
