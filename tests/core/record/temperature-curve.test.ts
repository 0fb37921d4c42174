import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { temperatureCurve, timeAboveMs } from '../../../src/core/record/temperature-curve.ts'
import { T0 } from '../pot/given.ts'
import { MIN } from '../pot/programmes.ts'
import { mossRun } from './moss.ts'

const at = (minutes: number, tempC: number) => ({ atMs: T0 + minutes * MIN, tempC })

describe('the time above a temperature', () => {
  it('is read off the straight line between two readings', () => {
    // 50 to 90 °C in 40 min passes 60 after 10 min; 90 to 70 in 10 min passes 80 after 5 min.
    const points = [at(0, 50), at(40, 90), at(50, 70)]
    expect(timeAboveMs(points, 60)).toBeCloseTo(40 * MIN)
    expect(timeAboveMs(points, 80)).toBeCloseTo(15 * MIN)
    expect(timeAboveMs(points, 95)).toBe(0)
  })

  it('counts a hold exactly at it, and nothing before the first or after the last reading', () => {
    expect(timeAboveMs([at(30, 60), at(45, 60)], 60)).toBe(15 * MIN)
    expect(timeAboveMs([at(30, 95)], 60)).toBeNull()
    expect(timeAboveMs([], 60)).toBeNull()
  })

  const points = fc
    .array(fc.record({ gap: fc.integer({ min: 0, max: 90 }), tempC: fc.integer({ min: 5, max: 100 }) }), {
      minLength: 2,
      maxLength: 12
    })
    .map((steps) => {
      let minutes = 0
      return steps.map(({ gap, tempC }) => {
        minutes += gap
        return at(minutes, tempC)
      })
    })

  it('is never more than the whole, grows as the limit falls, and a reading on a line changes nothing', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: 5, max: 100 }), (given, limitC) => {
        const above = timeAboveMs(given, limitC) as number
        const wholeMs = (given.at(-1)?.atMs ?? 0) - (given[0]?.atMs ?? 0)
        expect(above).toBeGreaterThanOrEqual(0)
        expect(above).toBeLessThanOrEqual(wholeMs + 1e-6)
        expect(timeAboveMs(given, limitC - 5) as number).toBeGreaterThanOrEqual(above - 1e-6)
        const [first, second] = given as [(typeof given)[0], (typeof given)[0]]
        const between = { atMs: (first.atMs + second.atMs) / 2, tempC: (first.tempC + second.tempC) / 2 }
        expect(timeAboveMs([first, between, ...given.slice(1)], limitC)).toBeCloseTo(above, 3)
      })
    )
  })

  it('of a fine curve agrees with counting its moments', () => {
    const curve = Array.from({ length: 121 }, (_, minute) => at(minute, 60 + 30 * Math.sin(minute / 20)))
    const counted = Array.from({ length: 1_200 }, (_, i) => 60 + 30 * Math.sin((i + 0.5) / 10 / 20)).filter(
      (c) => c >= 80
    )
    expect((timeAboveMs(curve, 80) as number) / MIN).toBeCloseTo(counted.length / 10, 0)
  })
})

describe('the curve of a record', () => {
  it('has its readings in order, and what was asked for while', () => {
    const bench = mossRun()
    const record = recordOf(bench.entries)
    if (!record) throw new Error('no record')
    const curve = temperatureCurve(record, bench.nowMs)
    expect(curve.points).toEqual([{ atMs: T0 + 31 * MIN, tempC: 81 }])
    expect(curve.widestGapMs).toBeNull()
    const [rise] = curve.setPoints
    expect(rise).toMatchObject({ path: 'warm', fromC: 20, lowC: 80, startMs: T0 + MIN })
  })

  it('tells the widest gap between two readings', () => {
    const bench = mossRun()
    bench.pass(7)
    bench.do({ type: 'ReadTemperature', tempC: 90 })
    bench.pass(2)
    bench.do({ type: 'ReadTemperature', tempC: 88 })
    const record = recordOf(bench.entries)
    if (!record) throw new Error('no record')
    const last = bench.nowMs - 2 * MIN
    expect(temperatureCurve(record, bench.nowMs).widestGapMs).toBe(last - (T0 + 31 * MIN))
  })
})
