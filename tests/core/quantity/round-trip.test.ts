import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  fromG,
  fromML,
  massG,
  massUnits,
  readAmount,
  readDepth,
  readDuration,
  readMass,
  readNumber,
  readPercent,
  readRate,
  readTemperature,
  readTemperatureRange,
  readVolume,
  showDuration,
  showDurationRange,
  showLength,
  showMass,
  showNumber,
  showPercent,
  showRate,
  showTemperature,
  showTemperatureRange,
  showVolume,
  type Units,
  volumeML,
  volumeUnits
} from '../../../src/core/quantity/index.ts'
import { valueIn } from './reading.ts'

const anyUnits: fc.Arbitrary<Units> = fc.record({
  temperature: fc.constantFrom('C', 'F'),
  volume: fc.constantFrom('metric', 'us', 'imperial'),
  mass: fc.constantFrom('metric', 'us'),
  length: fc.constantFrom('cm', 'in'),
  decimal: fc.constantFrom('point', 'comma')
})
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Amounts of every size alike: as likely between 0.01 and 0.1 as between 1 and 10 L. */
const anySize = (leastExponent: number, mostExponent: number) =>
  positive(leastExponent, mostExponent).map((exponent) => 10 ** exponent)

function close(read: number, meant: number, tolerance: number): void {
  expect(Math.abs(read - meant)).toBeLessThanOrEqual(tolerance * (1 + 1e-9) + 1e-12)
}

describe('what is shown can be read again', () => {
  test('A volume comes back within half of the step it is shown in', () => {
    fc.assert(
      fc.property(anySize(-2, 5.9), anyUnits, (valueML, units) => {
        const shown = showVolume(valueML, units)
        const unit = shown.split('\u00a0')[1] ?? ''
        const back = valueIn(readVolume(shown))
        // The steps that showVolume promises, each in mL.
        const metricStep = unit === 'L' ? 10 : valueML < 0.995 ? 0.01 : valueML < 9.95 ? 0.1 : 1
        const isMetric = unit === 'mL' || unit === 'L'
        const stepML = isMetric ? metricStep : valueIn(readVolume(`0.01 ${unit}`))
        close(back, valueML, stepML / 2)
      }),
      { numRuns: 1000 }
    )
  })

  test('A mass comes back within half of the step it is shown in', () => {
    fc.assert(
      fc.property(anySize(-2.9, 5.9), anyUnits, (valueG, units) => {
        const shown = showMass(valueG, units)
        const back = valueIn(readMass(shown))
        const sizeOz = fromG(valueG, 'oz')
        const stepOz = sizeOz < 15.995 ? 0.01 : 0.1
        const stepG = valueG < 0.9995 ? 0.001 : valueG < 9.995 ? 0.01 : valueG < 999.95 ? 0.1 : valueG < 9999.5 ? 1 : 10
        close(back, valueG, (units.mass === 'us' && sizeOz >= 0.25 ? massG(stepOz, 'oz') : stepG) / 2)
      }),
      { numRuns: 1000 }
    )
  })

  test('A temperature comes back within half a degree of the scale it is shown in', () => {
    fc.assert(
      fc.property(positive(-9, 119), anyUnits, fc.constantFrom<(0 | 1 | 2)[]>(0, 1, 2), (tempC, units, digits) => {
        const back = valueIn(readTemperature(showTemperature(tempC, units, { digits }))).tempC
        const halfC = (0.5 * 10 ** -digits * (units.temperature === 'C' ? 9 : 5)) / 9
        close(back, tempC, halfC)
      })
    )
  })

  test('A range of temperature comes back with both ends, and open ends stay open', () => {
    const end = fc.option(positive(-9, 119))
    fc.assert(
      fc.property(end, end, anyUnits, (a, b, units) => {
        fc.pre(a !== null || b !== null)
        const [lowC, highC] = a !== null && b !== null ? [Math.min(a, b), Math.max(a, b)] : [a, b]
        const back = valueIn(readTemperatureRange(showTemperatureRange({ lowC, highC }, units)))
        const ends: [number | null, number | null][] = [
          [back.lowC, lowC],
          [back.highC, highC]
        ]
        for (const [read, meant] of ends) {
          if (meant === null) expect(read).toBeNull()
          else close(read ?? Number.NaN, meant, 0.5)
        }
      })
    )
  })

  test('A length of time comes back to the second below an hour and to the minute above', () => {
    fc.assert(
      fc.property(anySize(2, 9.7), (ms) => {
        const back = valueIn(readDuration(showDuration(ms)))
        const halfMs = ms < 3_599_500 ? 500 : 30_000
        close(back.lowMs, ms, halfMs)
        expect(back.highMs).toBe(back.lowMs)
      })
    )
  })

  test('A length of time with two ends comes back with both', () => {
    const wholeMinutes = fc.integer({ min: 1, max: 60 * 24 * 50 }).map((minutes) => minutes * 60_000)
    fc.assert(
      fc.property(wholeMinutes, fc.option(wholeMinutes), (a, b) => {
        const duration = b === null ? { lowMs: a, highMs: null } : { lowMs: Math.min(a, b), highMs: Math.max(a, b) }
        expect(valueIn(readDuration(showDurationRange(duration)))).toMatchObject(duration)
      })
    )
  })

  test('Plain numbers, percentages, rates and lengths come back within half of the last place', () => {
    fc.assert(
      fc.property(
        anySize(-2, 2.6),
        anyUnits,
        fc.constantFrom<(0 | 1 | 2 | 3)[]>(0, 1, 2, 3),
        (value, units, digits) => {
          const used = digits === 3 && value >= 1 ? 2 : digits
          close(valueIn(readNumber(showNumber(value, digits, units))), value, 0.5 * 10 ** -used)
          close(valueIn(readPercent(showPercent(value, units))), value, value < 1 ? 0.0005 : 0.005)
          const rate = value / 10
          if (rate > 0.01) close(valueIn(readRate(showRate(rate, units))).cPerMin, rate, 0.005)
          const depth = valueIn(readDepth(showLength(value + 1, units)))
          close(depth.kind === 'length' ? depth.cm : Number.NaN, value + 1, units.length === 'in' ? 0.127 : 0.05)
        }
      )
    )
  })

  test('What a decimal comma shows is read as the same value as what a decimal point shows', () => {
    fc.assert(
      fc.property(anySize(-2, 5.9), anyUnits, (value, units) => {
        const point = { ...units, decimal: 'point' } as const
        const comma = { ...units, decimal: 'comma' } as const
        expect(valueIn(readVolume(showVolume(value, comma)))).toBe(valueIn(readVolume(showVolume(value, point))))
        expect(valueIn(readMass(showMass(value, comma)))).toBe(valueIn(readMass(showMass(value, point))))
      }),
      { numRuns: 500 }
    )
  })
})

describe('conversions', () => {
  /** A multiplication and a division each round once: 2.3e-16 of the value. */
  const relative = 1e-12

  test('Every unit of volume goes to mL and back unchanged', () => {
    fc.assert(
      fc.property(anySize(-6, 9), fc.constantFrom(...volumeUnits), (value, unit) => {
        close(fromML(volumeML(value, unit), unit) / value, 1, relative)
      })
    )
  })

  test('Every unit of mass goes to g and back unchanged', () => {
    fc.assert(
      fc.property(anySize(-6, 9), fc.constantFrom(...massUnits), (value, unit) => {
        close(fromG(massG(value, unit), unit) / value, 1, relative)
      })
    )
  })

  test('Degrees go from one scale to the other and back unchanged', () => {
    fc.assert(
      fc.property(positive(-300, 3000), (temp) => {
        close(celsiusFromFahrenheit(fahrenheitFromCelsius(temp)), temp, relative * 3000)
      })
    )
  })

  test('Every name of a volume that the app shows can be written in a protocol', () => {
    for (const unit of volumeUnits) {
      expect(valueIn(readAmount(`1 ${unit}`))).toMatchObject({ kind: 'volume', value: volumeML(1, unit) })
    }
  })
})
