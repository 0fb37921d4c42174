// Units against published definitions. Sources, as data/02_units.json names them:
// NIST SP 811 App. B and NIST Handbook 44 App. C (products of the definitions 1 in = 2.54 cm, US gallon = 231 in³,
// lb = 0.45359237 kg; the definitions are from memory, the products were computed and agree with two tables seen).
// US labelling measures: 21 CFR 101.9(b)(5)(viii), the quoted text was seen. Imperial and Australian: from memory.
import { describe, expect, test } from 'vitest'
import {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  type MassUnit,
  massG,
  readAmount,
  readMass,
  readTemperature,
  type VolumeUnit,
  volumeML
} from '../../src/core/quantity/index.ts'
import published from './data/02_units.json'

type VolumeName = keyof typeof published.volumes_mL_exact
type MassName = keyof typeof published.masses_g_exact

const nist = 'NIST SP 811 App. B; NIST Handbook 44 App. C'
const cfr = '21 CFR 101.9(b)(5)(viii)'
const household = 'metric household measure; NIST SP 430 (2004) marks household values approximate'
const memory = 'from memory'

// A record over the names of the data: the compiler asks for every published value.
const volumes: Record<VolumeName, [VolumeUnit, string]> = {
  US_gallon: ['US gallon', nist],
  US_quart: ['US quart', nist],
  US_pint_liquid: ['US pint', nist],
  US_cup: ['US cup', nist],
  US_fluid_ounce: ['US fl oz', nist],
  US_tablespoon: ['US tbsp', nist],
  US_teaspoon: ['US tsp', nist],
  metric_cup: ['metric cup', household],
  US_legal_cup_labelling: ['US legal cup', cfr],
  US_legal_tablespoon: ['US legal tbsp', cfr],
  US_legal_teaspoon: ['US legal tsp', cfr],
  US_legal_fluid_ounce: ['US legal fl oz', cfr],
  metric_tablespoon: ['metric tbsp', household],
  metric_teaspoon: ['metric tsp', household],
  Australian_tablespoon: ['Australian tbsp', memory],
  imperial_gallon: ['imperial gallon', memory],
  imperial_quart: ['imperial quart', memory],
  imperial_pint: ['imperial pint', memory],
  imperial_fluid_ounce: ['imperial fl oz', memory],
  litre: ['L', nist]
}
const masses: Record<MassName, [MassUnit, string]> = {
  pound_avoirdupois: ['lb', nist],
  ounce_avoirdupois: ['oz', nist],
  dram_avoirdupois: ['dram', nist],
  grain: ['grain', nist],
  troy_ounce: ['troy oz', nist],
  stone: ['stone', nist],
  kilogram: ['kg', nist]
}

describe('exact sizes of units', () => {
  test.each(Object.entries(volumes))('The %s is exactly its published size (%j)', (name, [unit]) => {
    expect(volumeML(1, unit)).toBe(Number(published.volumes_mL_exact[name as VolumeName]))
  })

  test.each(Object.entries(masses))('The %s is exactly its published size (%j)', (name, [unit]) => {
    expect(massG(1, unit)).toBe(Number(published.masses_g_exact[name as MassName]))
  })

  // Each figure from the definition it comes from, a second way. A few roundings of a double each: 5e-15 of the value.
  test('US measures divide the gallon of 231 cubic inches (NIST Handbook 44 App. C)', () => {
    const gallonML = 231 * 2.54 ** 3
    const parts: [VolumeUnit, number][] = [
      ['US gallon', 1],
      ['US quart', 4],
      ['US pint', 8],
      ['US cup', 16],
      ['US fl oz', 128],
      ['US tbsp', 256],
      ['US tsp', 768]
    ]
    for (const [unit, inGallon] of parts) expect((volumeML(inGallon, unit) / gallonML - 1) * 1e15).toBeCloseTo(0, -1)
  })

  test('Imperial measures divide the gallon of 4.54609 L into 4, 8, 16 and 160 (from memory; the cup is half a pint)', () => {
    const parts: [VolumeUnit, number][] = [
      ['imperial quart', 4],
      ['imperial pint', 8],
      ['imperial cup', 16],
      ['imperial fl oz', 160]
    ]
    for (const [unit, inGallon] of parts) expect(volumeML(inGallon, unit)).toBeCloseTo(4546.09, 9)
  })

  test('A pound is 16 ounces, 256 drams and 7000 grains; a stone is 14 pounds (NIST Handbook 44 App. C)', () => {
    for (const poundG of [massG(16, 'oz'), massG(256, 'dram'), massG(7000, 'grain'), massG(1 / 14, 'stone')]) {
      expect(poundG).toBeCloseTo(453.59237, 9)
    }
    expect(massG(480, 'grain')).toBeCloseTo(massG(1, 'troy oz'), 12)
  })
})

describe('temperature', () => {
  // NIST SP 811 App. B: t/°C = (t/°F - 32)/1.8, exact.
  test.each([
    [-40, -40],
    [0, 32],
    [37, 98.6],
    [100, 212]
  ])('%d °C is %d °F', (tempC, tempF) => {
    // One decimal in °F is not exact in binary: 2 roundings at 100 are 3e-14.
    expect(fahrenheitFromCelsius(tempC)).toBeCloseTo(tempF, 12)
    expect(celsiusFromFahrenheit(tempF)).toBeCloseTo(tempC, 12)
  })

  test('Water freezes at 32 °F and boils at 212 °F as written in a protocol', () => {
    expect(readTemperature('32 °F')).toMatchObject({ value: { tempC: 0 } })
    expect(readTemperature('212 °F')).toMatchObject({ value: { tempC: 100 } })
  })
})

describe('traps that change a bath', () => {
  test('A fluid ounce is a volume and an ounce is a mass', () => {
    expect(readAmount('1 US fl oz')).toMatchObject({ value: { kind: 'volume', value: 29.5735295625 } })
    expect(readAmount('1 oz')).toMatchObject({ value: { kind: 'mass', value: 28.349523125 } })
  })

  test('50 grain vinegar is 5 % acid, never a mass of 3.24 g', () => {
    expect(readMass('50 grain')).toMatchObject({ ok: false, problem: { code: 'grain-unclear' } })
    expect(readAmount('50 grain of vinegar')).toMatchObject({ ok: false, problem: { code: 'grain-unclear' } })
  })

  test.each(['cup', 'tbsp', 'tsp', 'fl oz', 'pint', 'quart', 'gallon'])(
    'A %s without a country is refused',
    (measure) => {
      expect(readAmount(`1 ${measure}`).ok).toBe(false)
    }
  )
})
