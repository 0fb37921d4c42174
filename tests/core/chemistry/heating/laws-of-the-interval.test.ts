// What must hold for any pot.
import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import type { TimeToTemperature } from '../../../../src/core/chemistry/heating/answer.ts'
import { newtonC } from '../../../../src/core/chemistry/heating/laws.ts'
import { timeToTemperature } from '../../../../src/core/chemistry/heating/time-to-temperature.ts'
import { celsiusFromFahrenheit, fahrenheitFromCelsius } from '../../../../src/core/quantity/index.ts'
import { Chance } from '../../../simulation/chance.ts'
import { type ChancePot, potByChance } from './pots-by-chance.ts'

const pots = fc
  .tuple(fc.nat(), fc.constantFrom('heating' as const, 'cooling' as const))
  .map(([seed, kind]) => potByChance(new Chance(seed), kind))

/** Equal but for roundings. Where an end of the interval is far off, roundings of the 14th digit weigh more. */
function expectSame(found: TimeToTemperature, wanted: TimeToTemperature, shiftMin = 0): void {
  expect(found.kind).toBe(wanted.kind)
  if (found.kind !== 'reached-at' || wanted.kind !== 'reached-at') return
  const near = (a: number, b: number): boolean => Math.abs(a - shiftMin - b) <= 1e-5 * Math.max(1, Math.abs(b))
  expect(near(found.min, wanted.min)).toBe(true)
  expect(near(found.lowMin, wanted.lowMin)).toBe(true)
  expect(found.highMin === null).toBe(wanted.highMin === null)
  expect(near((found.highMin ?? 0) + (found.highMin === null ? shiftMin : 0), wanted.highMin ?? 0)).toBe(true)
}

const withTemps = (pot: ChancePot, of: (tempC: number) => number): ChancePot => ({
  ...pot,
  targetC: of(pot.targetC),
  readings: pot.readings.map(({ atMin, tempC }) => ({ atMin, tempC: of(tempC) }))
})

describe('for any pot', () => {
  test('Another start of the clock moves the times by as much, and nothing else', () => {
    fc.assert(
      fc.property(pots, fc.integer({ min: -10_000, max: 100_000 }), (pot, shiftMin) => {
        const readings = pot.readings.map(({ atMin, tempC }) => ({ atMin: atMin + shiftMin, tempC }))
        expectSame(timeToTemperature({ ...pot, readings }), timeToTemperature(pot), shiftMin)
      })
    )
  })

  test('The order in which the readings are given says nothing', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        expectSame(timeToTemperature({ ...pot, readings: pot.readings.toReversed() }), timeToTemperature(pot))
      })
    )
  })

  test('Read in °F and brought to °C, the times are the same', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        const there = withTemps(pot, (tempC) => celsiusFromFahrenheit(fahrenheitFromCelsius(tempC)))
        expectSame(timeToTemperature(there), timeToTemperature(pot))
      })
    )
  })

  test('No zero and no size of degree is preferred: all in half degrees from another zero, the times are the same', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        const half = withTemps(pot, (tempC) => tempC / 2 + 7)
        expectSame(
          timeToTemperature({ ...half, sdC: pot.sdC / 2, resolutionC: pot.resolutionC / 2 }),
          timeToTemperature(pot)
        )
      })
    )
  })

  test('Cooling is heating upside down', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        expectSame(timeToTemperature(withTemps(pot, (tempC) => 110 - tempC)), timeToTemperature(pot))
      })
    )
  })

  test('The estimate lies within its interval, and nothing lies before the first reading', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        const found = timeToTemperature(pot)
        if (found.kind !== 'reached-at') return
        expect(found.lowMin).toBeGreaterThanOrEqual(pot.readings[0]?.atMin ?? 0)
        expect(found.lowMin).toBeLessThanOrEqual(found.min)
        if (found.highMin !== null) expect(found.highMin).toBeGreaterThanOrEqual(found.min)
      })
    )
  })

  test('One more reading on the same curve narrows the interval on both sides', () => {
    const pot = { fromC: 20, towardsC: 110, perMin: 1 / 25 }
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.double({ min: 21, max: 60, noNaN: true }),
        (sdC, atMin) => {
          const readings = [0, 4, 8, 12, 16, 20].map((at) => ({ atMin: at, tempC: newtonC(pot, at) }))
          // No reading is left out for being near the boil.
          const asked = { targetC: 85, sdC, resolutionC: 0.1, boilC: 120 }
          const fewer = timeToTemperature({ readings, ...asked })
          const more = timeToTemperature({ readings: [...readings, { atMin, tempC: newtonC(pot, atMin) }], ...asked })
          if (fewer.kind !== 'reached-at' || more.kind !== 'reached-at') throw new Error(`${fewer.kind}, ${more.kind}`)
          expect(more.lowMin).toBeGreaterThan(fewer.lowMin)
          expect(more.highMin ?? Infinity).toBeLessThanOrEqual(fewer.highMin ?? Infinity)
        }
      )
    )
  })

  test('A coarser thermometer gives a wider interval', () => {
    fc.assert(
      fc.property(pots, (pot) => {
        const fine = timeToTemperature({ ...pot, resolutionC: 1 })
        const coarse = timeToTemperature({ ...pot, resolutionC: 2 })
        if (fine.kind !== 'reached-at' || coarse.kind !== 'reached-at') return
        expect(coarse.lowMin).toBeLessThan(fine.lowMin + 1e-9)
        expect(coarse.highMin ?? Infinity).toBeGreaterThanOrEqual(fine.highMin ?? Infinity)
      })
    )
  })
})

test('The work is bounded: an answer draws at most 220 curves through the readings, however they lie', () => {
  // Counted, since a busy machine's clock says little: each curve takes one exponential a reading.
  const exponentials = vi.spyOn(Math, 'expm1')
  try {
    fc.assert(
      fc.property(pots, (pot) => {
        exponentials.mockClear()
        if (timeToTemperature(pot).kind !== 'reached-at') return
        expect(exponentials.mock.calls.length / pot.readings.length).toBeLessThan(220)
        expect(exponentials.mock.calls.length / pot.readings.length).toBeGreaterThan(48)
      })
    )
  } finally {
    exponentials.mockRestore()
  }
})
