import { describe, expect, test } from 'vitest'
import { readMass, readPercent, readVolume } from '../../../src/core/quantity/index.ts'
import { problemIn, valueIn } from './reading.ts'

describe('single values in form fields', () => {
  test('A volume is read as mL, with its unit or in the unit that the field shows', () => {
    expect(valueIn(readVolume('1.5 L'))).toBe(1500)
    expect(valueIn(readVolume('1.5', { bareUnit: 'L' }))).toBe(1500)
    expect(valueIn(readVolume('30', { bareUnit: 'mL' }))).toBe(30)
    expect(valueIn(readVolume('2 cups', { kitchen: 'metric' }))).toBe(500)
    expect(valueIn(readVolume('2', { bareUnit: 'US cup' }))).toBe(473.176473)
  })

  test('A unit written out beats the unit that the field shows', () => {
    expect(valueIn(readVolume('30 mL', { bareUnit: 'L' }))).toBe(30)
    expect(valueIn(readMass('50 g', { bareUnit: 'oz' }))).toBe(50)
  })

  test('A mass is read as g', () => {
    expect(valueIn(readMass('51,3 g'))).toBe(51.3)
    expect(valueIn(readMass('50', { bareUnit: 'g' }))).toBe(50)
    expect(valueIn(readMass('2 oz'))).toBe(56.69904625)
  })

  test('A percentage is read as a number of percent', () => {
    expect(valueIn(readPercent('1.5 %'))).toBe(1.5)
    expect(valueIn(readPercent('1,5%'))).toBe(1.5)
    expect(valueIn(readPercent('1/2 %'))).toBe(0.5)
    expect(valueIn(readPercent('5 percent'))).toBe(5)
    expect(valueIn(readPercent('5', { bare: true }))).toBe(5)
  })

  test.each([
    [readVolume('30'), 'unit-missing'],
    [readVolume('30 g'), 'not-a-volume'],
    [readVolume('3 oz'), 'not-a-volume'],
    [readVolume('3 drops'), 'not-a-volume'],
    [readVolume('2 cups'), 'cup-without-country'],
    [readVolume('-1 mL'), 'out-of-range'],
    [readVolume('30-40 mL'), 'one-value-wanted'],
    [readMass('50'), 'unit-missing'],
    [readMass('50 mL'), 'not-a-mass'],
    [readMass('3 fl oz'), 'fluid-ounce-without-country'],
    [readMass('50 grain'), 'grain-unclear'],
    [readPercent('5'), 'unit-missing'],
    [readPercent('5 % owf'), 'not-a-percent'],
    [readPercent('-5 %'), 'out-of-range'],
    [readPercent('1001 %'), 'out-of-range']
  ])('A form field refuses what it does not ask for (%#: %j)', (read, code) => {
    expect(problemIn(read).code).toBe(code)
  })
})
