import { describe, expect, test } from 'vitest'
import {
  metricUnits,
  readAmount,
  showAmount,
  showCountdown,
  showDepth,
  showDose,
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
  volumeML
} from '../../../src/core/quantity/index.ts'
import { valueIn } from './reading.ts'

const us: Units = { temperature: 'F', volume: 'us', mass: 'us', length: 'in' }
const imperial: Units = { ...metricUnits, volume: 'imperial' }
const comma: Units = { ...metricUnits, decimal: 'comma' }

/** Plain spaces, to keep the expected words readable; one test below looks at the no-break spaces. */
function plain(shown: string): string {
  return shown.replaceAll('\u00a0', ' ')
}

describe('what a dyer is shown', () => {
  test.each([
    [0, '0 mL'],
    [0.004, '<0.01 mL'],
    [0.625, '0.63 mL'],
    [0.996, '1 mL'],
    [1.25, '1.3 mL'],
    [9.94, '9.9 mL'],
    [9.96, '10 mL'],
    [30.4, '30 mL'],
    [999.4, '999 mL'],
    [999.6, '1 L'],
    [1500, '1.5 L'],
    [1234, '1.23 L'],
    [12000, '12 L']
  ])('%d mL reads "%s" in a metric kitchen', (valueML, shown) => {
    expect(plain(showVolume(valueML, metricUnits))).toBe(shown)
  })

  test.each([
    [1, '1 mL'],
    [volumeML(0.25, 'US tsp'), '0.25 US tsp'],
    [volumeML(2, 'US tsp'), '2 US tsp'],
    [volumeML(1, 'US tbsp'), '1 US tbsp'],
    [volumeML(0.25, 'US cup'), '0.25 US cups'],
    [volumeML(1, 'US cup'), '1 US cup'],
    [volumeML(1.25, 'US cup'), '1.25 US cups'],
    [volumeML(1.5, 'US quart'), '1.5 US quarts'],
    [volumeML(2, 'US gallon'), '2 US gallons']
  ])('%d mL reads "%s" in a US kitchen', (valueML, shown) => {
    expect(plain(showVolume(valueML, us))).toBe(shown)
  })

  test.each([
    [20, '20 mL'],
    [volumeML(2, 'imperial fl oz'), '2 imperial fl oz'],
    [volumeML(1, 'imperial pint'), '1 imperial pint'],
    [volumeML(2.5, 'imperial gallon'), '2.5 imperial gallons']
  ])('%d mL reads "%s" in an imperial kitchen', (valueML, shown) => {
    expect(plain(showVolume(valueML, imperial))).toBe(shown)
  })

  test.each([
    [0.0254, metricUnits, '0.025 g'],
    [2.345, metricUnits, '2.35 g'],
    [51.34, metricUnits, '51.3 g'],
    [999.96, metricUnits, '1000 g'],
    [1234.4, metricUnits, '1234 g'],
    [12340, metricUnits, '12.34 kg'],
    [2, us, '2 g'],
    [7.08738078125, us, '0.25 oz'],
    [100, us, '3.53 oz'],
    [453.59237, us, '1 lb'],
    [1.25 * 453.59237, us, '1 lb 4 oz'],
    [2 * 453.59237 - 0.5, us, '2 lb'],
    [0.0254, comma, '0,025 g'],
    [12340, comma, '12,34 kg']
  ])('%d g in %j reads "%s"', (massG, units, shown) => {
    expect(plain(showMass(massG, units))).toBe(shown)
  })

  test('Temperatures are shown in whole degrees of the chosen scale unless more is asked for', () => {
    expect(plain(showTemperature(82.2, metricUnits))).toBe('82 °C')
    expect(plain(showTemperature(82.2, metricUnits, { digits: 1 }))).toBe('82.2 °C')
    expect(plain(showTemperature(82.25, comma, { digits: 2 }))).toBe('82,25 °C')
    expect(plain(showTemperature(100, us))).toBe('212 °F')
    expect(plain(showTemperature(-5, metricUnits))).toBe('−5 °C')
    expect(plain(showTemperature(-0.4, metricUnits))).toBe('0 °C')
  })

  test('Ranges of temperature keep their open ends', () => {
    expect(plain(showTemperatureRange({ lowC: 85, highC: 90 }, metricUnits))).toBe('85–90 °C')
    expect(plain(showTemperatureRange({ lowC: 85, highC: 90 }, us))).toBe('185–194 °F')
    expect(plain(showTemperatureRange({ lowC: 85, highC: null }, metricUnits))).toBe('at least 85 °C')
    expect(plain(showTemperatureRange({ lowC: null, highC: 40 }, metricUnits))).toBe('at most 40 °C')
    expect(plain(showTemperatureRange({ lowC: 80, highC: 80 }, metricUnits))).toBe('80 °C')
    expect(plain(showTemperatureRange({ lowC: -5, highC: 2 }, metricUnits))).toBe('−5 to 2 °C')
    expect(showTemperatureRange({ lowC: null, highC: null, boil: true }, metricUnits)).toBe('the boil')
    expect(showTemperatureRange({ lowC: null, highC: null }, metricUnits)).toBe('any temperature')
  })

  test('Rates, lengths, depths and percentages follow the dyer’s units', () => {
    expect(plain(showRate(1, metricUnits))).toBe('1 °C/min')
    expect(plain(showRate(1, us))).toBe('1.8 °F/min')
    expect(plain(showLength(12.7, metricUnits))).toBe('12.7 cm')
    expect(plain(showLength(12.7, us))).toBe('5 in')
    expect(plain(showDepth({ kind: 'length', cm: 12 }, metricUnits))).toBe('12 cm')
    expect(showDepth({ kind: 'fraction', value: 0.25 }, metricUnits)).toBe('1/4 of the skein')
    expect(showDepth({ kind: 'fraction', value: 1 }, metricUnits)).toBe('all of the skein')
    expect(plain(showPercent(1.5, comma))).toBe('1,5 %')
    expect(plain(showPercent(0.125))).toBe('0.125 %')
  })

  test.each([
    [0, '0 s'],
    [400, '0 s'],
    [45_000, '45 s'],
    [90_000, '1 min 30 s'],
    [360_000, '6 min'],
    [3_599_400, '59 min 59 s'],
    [3_599_600, '1 h'],
    [4_800_000, '1 h 20 min'],
    [4_829_000, '1 h 20 min'],
    [86_400_000, '24 h'],
    [172_799_999, '2 days'],
    [183_600_000, '2 days 3 h'],
    [-360_000, '−6 min']
  ])('%d ms reads "%s"', (ms, shown) => {
    expect(plain(showDuration(ms))).toBe(shown)
  })

  test('A length of time with two ends names its unit once where it is the same', () => {
    expect(plain(showDurationRange({ lowMs: 1_500_000, highMs: 1_800_000 }))).toBe('25–30 min')
    expect(plain(showDurationRange({ lowMs: 1_800_000, highMs: 43_200_000 }))).toBe('30 min – 12 h')
    expect(plain(showDurationRange({ lowMs: 3_000_000, highMs: 4_800_000 }))).toBe('50 min – 1 h 20 min')
    expect(plain(showDurationRange({ lowMs: 1_200_000, highMs: null }))).toBe('at least 20 min')
    expect(plain(showDurationRange({ lowMs: 0, highMs: 180_000 }))).toBe('at most 3 min')
    expect(plain(showDurationRange({ lowMs: 360_000, highMs: 360_000 }))).toBe('6 min')
  })

  test.each([
    [24_000, '0:24'],
    [23_001, '0:24'],
    [438_000, '7:18'],
    [3_727_000, '1:02:07'],
    [1, '0:01'],
    [0, '0:00'],
    [-400, '0:00'],
    [-24_900, '−0:24'],
    [-3_727_000, '−1:02:07']
  ])('A countdown of %d ms reads "%s": it never reaches 0:00 early', (ms, shown) => {
    expect(showCountdown(ms)).toBe(shown)
  })

  test.each([
    ['30 mL of vinegar', '30 mL of vinegar'],
    ['1.50 % WOF', '1.5 % owf'],
    ['1 % owf of vinegar', '1 % owf of vinegar'],
    ['5 g per litre of salt', '5 g/L of salt'],
    ['1:20', '20:1'],
    ['half of the acid', '1/2 of acid'],
    ['37 % of acid', '37 % of acid'],
    ['all of the acid', 'all of acid'],
    ['the rest of the acid', 'the rest of acid'],
    ['3 drops of soap', '3 drops of soap'],
    ['50 g of wool', '50 g of wool']
  ])('The amount %j is shown as "%s"', (text, shown) => {
    expect(plain(showAmount(valueIn(readAmount(text)), metricUnits))).toBe(shown)
  })

  test('An amount worked out for a pot is shown in the dyer’s units', () => {
    expect(plain(showDose({ value: 30, unit: 'mL' }, metricUnits))).toBe('30 mL')
    expect(plain(showDose({ value: 1.5, unit: 'g' }, metricUnits))).toBe('1.5 g')
    expect(showDose({ value: 3, unit: 'count' }, metricUnits)).toBe('3')
  })

  test('A number and its unit never part at the end of a line', () => {
    for (const shown of [
      showVolume(30, metricUnits),
      showMass(50, us),
      showTemperature(82, metricUnits),
      showDuration(360_000)
    ]) {
      expect(shown).toMatch(/^[\d.]+\u00a0\S+$/)
    }
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%d is shown as "not known", never as a figure',
    (bad) => {
      const all = [metricUnits, us, imperial].flatMap((units) => [
        showVolume(bad, units),
        showMass(bad, units),
        showTemperature(bad, units),
        showTemperatureRange({ lowC: bad, highC: 90 }, units),
        showRate(bad, units),
        showLength(bad, units),
        showPercent(bad, units),
        showNumber(bad, 1, units),
        showDuration(bad),
        showCountdown(bad),
        showDose({ value: bad, unit: 'count' }, units),
        showAmount({ kind: 'liquor', ratio: bad }, units),
        showAmount({ kind: 'owf', percent: bad, of: null }, units)
      ])
      for (const shown of all) expect(shown).toMatch(/^not known( owf)?$/)
    }
  )

  test('Nothing below zero that rounds to it is shown as minus zero', () => {
    expect(showNumber(-0, 2)).toBe('0')
    expect(showNumber(-0.001, 2)).toBe('0')
    expect(showNumber(-1.005, 1)).toBe('−1')
    expect(showNumber(1e21, 0)).toBe('1000000000000000000000')
    expect(showCountdown(-0)).toBe('0:00')
  })
})
