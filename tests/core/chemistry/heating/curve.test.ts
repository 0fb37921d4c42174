import { expect, test } from 'vitest'
import { curveAt, type Levels, plausibleSpan } from '../../../../src/core/chemistry/heating/curve.ts'
import { Chance } from '../../../simulation/chance.ts'

function levelsOf(levels: number[]): Levels {
  const times = Float64Array.from(levels, (_, i) => i / (levels.length - 1))
  return { times, levels: Float64Array.from(levels), meanLevel: levels.reduce((a, b) => a + b, 0) / levels.length }
}

/** The least misfit of a curve of this rate that is at the target at this time: one slope is left to choose. */
function misfitThrough(time: number, rate: number, { times, levels }: Levels): number {
  const g = (t: number): number => (rate === 0 ? t - time : (Math.exp(-rate * time) - Math.exp(-rate * t)) / rate)
  const gs = [...times].map(g)
  const slope = gs.reduce((sum, x, i) => sum + x * (levels[i] ?? 0), 0) / gs.reduce((sum, x) => sum + x * x, 0)
  return gs.reduce((sum, x, i) => sum + ((levels[i] ?? 0) - slope * x) ** 2, 0)
}

test('The span of times holds just those at which a curve misses by no more than is allowed: tried time by time (seed 17)', () => {
  const chance = new Chance(17)
  const seen = { open: 0, closed: 0, fromTheStart: 0, later: 0, before: 0 }
  const times = Array.from({ length: 120 }, (_, i) => (i / 10) ** 2)
  for (let no = 0; no < 2000; no++) {
    const levels = levelsOf(Array.from({ length: chance.whole(3, 6) }, () => chance.next() * 6 - 3))
    const rate = chance.pick([0, 0.3, 2])
    const allowed = 6 * chance.next() ** 4
    const curve = curveAt(rate, levels)
    const { earliest, latest } = plausibleSpan(curve, levels.times.length, allowed)
    const isPlausible = (time: number): boolean => misfitThrough(time, rate, levels) - curve.misfit <= allowed
    const outside = times.filter((time) => time < earliest - 1e-6 || time > latest + 1e-6)
    expect(outside.filter(isPlausible)).toEqual([])
    // The first of them is one of them, and a span that ends on both sides has no hole.
    if (earliest < 1e6) expect(isPlausible(earliest * (1 + 1e-9) + 1e-9)).toBe(true)
    const inside = times.filter((time) => latest < 1e6 && time > earliest + 1e-6 && time < latest - 1e-6)
    expect(inside.filter(isPlausible)).toEqual(inside)
    if (latest < 0) expect(earliest).toBe(Number.POSITIVE_INFINITY)
    seen[latest === Number.POSITIVE_INFINITY ? 'open' : 'closed'] += 1
    seen[latest < 0 ? 'before' : earliest === 0 ? 'fromTheStart' : 'later'] += 1
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(50)
})
