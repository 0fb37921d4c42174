import { describe, expect, test } from 'vitest'
import { readRate, readTemperature, readTemperatureRange } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

/** One rounding of a double at 100 is 1.4e-14; a few of them are allowed. */
const places = 10

describe('temperatures', () => {
  test.each([
    ['82 °C', 82],
    ['82°C', 82],
    ['82 C', 82],
    ['82c', 82],
    ['82 º C', 82],
    ['82 ℃', 82],
    ['82 degrees C', 82],
    ['82 deg. C', 82],
    ['82 degrees Celsius', 82],
    ['82,5 °C', 82.5],
    ['180 °F', 82.2222222222222],
    ['180F', 82.2222222222222],
    ['180 ℉', 82.2222222222222],
    ['180 degrees Fahrenheit', 82.2222222222222],
    ['212 °F', 100],
    ['32 °F', 0],
    ['-5 °C', -5],
    ['−5 °C', -5],
    ['–5 °C', -5],
    ['120 °C', 120],
    ['248 °F', 120],
    ['-10 °C', -10],
    ['14 °F', -10]
  ])('%j', (text, tempC) => {
    const read = valueIn(readTemperature(text))
    expect(read.tempC).toBeCloseTo(tempC, places)
    expect(read).toMatchObject({ asEntered: text, approx: false })
  })

  test('A bare number is refused with both scales named, unless the field shows its scale', () => {
    expect(problemIn(readTemperature('82'))).toEqual({
      code: 'unit-missing',
      found: '82',
      instead: 'Write 82 °C or 82 °F.'
    })
    expect(problemIn(readTemperature('82°')).code).toBe('unit-missing')
    expect(problemIn(readTemperature('82 degrees')).code).toBe('unit-missing')
    expect(valueIn(readTemperature('82', { bareUnit: 'C' })).tempC).toBe(82)
    expect(valueIn(readTemperature('212', { bareUnit: 'F' })).tempC).toBe(100)
    expect(valueIn(readTemperature('212 °F', { bareUnit: 'C' })).tempC).toBe(100)
  })

  test('A Fahrenheit figure written with C is refused and told what it would be', () => {
    expect(problemIn(readTemperature('180 °C'))).toEqual({
      code: 'out-of-range',
      found: '180 °C',
      instead: 'Write −10 to 120 °C; 180 °F is 82 °C.'
    })
  })

  test.each([
    ['', 'empty'],
    ['warm', 'not-a-temperature'],
    ['82 K', 'not-a-temperature'],
    ['82 cm', 'not-a-temperature'],
    ['82 °C..90', 'not-a-temperature'],
    ['121 °C', 'out-of-range'],
    ['-11 °C', 'out-of-range'],
    ['13 °F', 'out-of-range'],
    ['249 °F', 'out-of-range'],
    ['1e2 °C', 'not-a-number']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readTemperature(text)).code).toBe(code)
  })
})

describe('ranges of temperature', () => {
  test.each([
    ['85..90 °C', 85, 90],
    ['85 °C..90 °C', 85, 90],
    ['85–90 °C', 85, 90],
    ['85-90C', 85, 90],
    ['85 to 90 °C', 85, 90],
    ['85 °C to 90', 85, 90],
    ['185–194 °F', 85, 90],
    ['185 °F to 90 °C', 85, 90],
    ['-5..-2 °C', -5, -2],
    ['−5 to 2 °C', -5, 2],
    ['80 °C', 80, 80],
    ['80 ± 2 °C', 78, 82],
    ['80 °C ± 2', 78, 82],
    ['80 °C ± 2 °C', 78, 82],
    ['80 +/- 2 °C', 78, 82],
    ['176 ± 9 °F', 75, 85],
    ['80 °C ± 9 °F', 75, 85],
    ['at least 85 °C', 85, null],
    ['at most 40 °C', null, 40],
    ['≤ 40 °C', null, 40]
  ])('%j', (text, lowC, highC) => {
    const read = valueIn(readTemperatureRange(text))
    if (lowC === null) expect(read.lowC).toBeNull()
    else expect(read.lowC).toBeCloseTo(lowC, places)
    if (highC === null) expect(read.highC).toBeNull()
    else expect(read.highC).toBeCloseTo(highC, places)
    expect(read).toMatchObject({ boil: false, asEntered: text })
  })

  test.each(['boil', 'the boil', 'at the boil', 'Boiling'])('%j has no figure, for it depends on the place', (text) => {
    expect(valueIn(readTemperatureRange(text))).toMatchObject({ lowC: null, highC: null, boil: true })
  })

  test.each([
    ['90..85 °C', 'range-backwards'],
    ['85..90', 'unit-missing'],
    ['85', 'unit-missing'],
    ['80 ± 2', 'unit-missing'],
    ['80 ± -2 °C', 'out-of-range'],
    ['119 ± 2 °C', 'out-of-range'],
    ['85..130 °C', 'out-of-range'],
    ['at least 85..90 °C', 'one-value-wanted'],
    ['simmering', 'not-a-temperature'],
    ['80 °C ± some', 'not-a-temperature'],
    ['80 °C and more', 'not-a-temperature']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readTemperatureRange(text)).code).toBe(code)
  })
})

describe('rates of heating and cooling', () => {
  test.each([
    ['1 °C/min', 1],
    ['2 °C per min', 2],
    ['1,5 °C / minute', 1.5],
    ['1 C a minute', 1],
    ['60 °C/h', 1],
    ['60 °C per hour', 1],
    ['1.8 °F/min', 1]
  ])('%j: a difference of degrees, with no 32 taken off', (text, cPerMin) => {
    expect(valueIn(readRate(text)).cPerMin).toBeCloseTo(cPerMin, places)
  })

  test.each([
    ['fast', 'not-a-rate'],
    ['1 °C', 'not-a-rate'],
    ['1 °C/s', 'not-a-rate'],
    ['1/min', 'unit-missing'],
    ['0 °C/min', 'out-of-range'],
    ['-1 °C/min', 'out-of-range'],
    ['51 °C/min', 'out-of-range']
  ])('%j is refused as %s', (text, code) => {
    expect(problemIn(readRate(text)).code).toBe(code)
  })
})
