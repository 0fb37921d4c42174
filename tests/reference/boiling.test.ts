// Where water boils, against the verification tables of IAPWS-IF97 and the US Standard Atmosphere 1976; data/03_boiling.json
// says how each was seen.
import { describe, expect, test } from 'vitest'
import { geopotentialM, standardPressurePa } from '../../src/core/chemistry/boiling/atmosphere.ts'
import { boilingK, saturationPa } from '../../src/core/chemistry/boiling/saturation.ts'
import { boilingPointC } from '../../src/core/chemistry/index.ts'
import { answered } from '../core/chemistry/answered.ts'
import data from './data/03_boiling.json' with { type: 'json' }

describe('IAPWS-IF97 region 4', () => {
  // Tables 35 and 36 print nine figures.
  test.each(data.if97_tsat)('water boils at $Tsat_K_published K under $p_MPa MPa (Table 36)', (row) => {
    expect(Math.abs(boilingK(Number(row.p_MPa) * 1e6) - row.Tsat_K_published)).toBeLessThan(6e-7)
    expect(Math.abs(boilingK(Number(row.p_MPa) * 1e6) - row.Tsat_K_computed)).toBeLessThan(2e-9)
  })

  test.each(data.if97_psat)('at $T_K K under $psat_MPa_published MPa (Table 35)', (row) => {
    expect(Math.abs(saturationPa(row.T_K) / 1e6 / row.psat_MPa_published - 1)).toBeLessThan(5e-9)
    expect(Math.abs(saturationPa(row.T_K) / 1e6 / row.psat_MPa_computed - 1)).toBeLessThan(1e-11)
  })
})

describe.each(data.cases)('at $altitude_geometric_m m', (row) => {
  test('the standard atmosphere has its pressure', () => {
    expect(Math.abs(geopotentialM(row.altitude_geometric_m) - row.geopotential_m)).toBeLessThan(6e-5)
    expect(Math.abs(standardPressurePa(row.altitude_geometric_m) - row.pressure_Pa)).toBeLessThan(6e-5)
  })

  test('water boils there, by altitude and by pressure', () => {
    const byAltitude = answered(boilingPointC({ altitudeM: row.altitude_geometric_m }))
    const byPressure = answered(boilingPointC({ stationPressureHPa: row.pressure_Pa / 100 }))
    // Six decimals are printed.
    expect(Math.abs(byAltitude - row.boiling_C)).toBeLessThan(6e-7)
    expect(Math.abs(byPressure - row.boiling_C)).toBeLessThan(6e-7)
    // Wagner & Pruss 2002, from memory, is another equation: 0.0004 K.
    expect(Math.abs(byAltitude - row.boiling_C_check_Wagner_Pruss)).toBeLessThan(4e-4)
  })
})

test('at one atmosphere it boils at 99.9743 °C, not at 100', () => {
  expect(answered(boilingPointC({ stationPressureHPa: 1013.25 }))).toBeCloseTo(data.one_atm_boiling_C, 4)
  expect(answered(boilingPointC({ stationPressureHPa: 1000 }))).toBeCloseTo(99.6059, 4)
})

test('weather of 30 hPa moves it by 0.8 °C', () => {
  const at = (hPa: number): number => answered(boilingPointC({ stationPressureHPa: hPa }))
  expect(at(1043.25) - at(1013.25)).toBeCloseTo(0.8, 1)
  expect(at(1013.25) - at(983.25)).toBeCloseTo(0.8, 1)
})
