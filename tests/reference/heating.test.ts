// Heating and cooling against published and outside values; the source of each stands in its data file.
// data/04_heating.json: two textbook examples of a body of one temperature, Newton's law computed from its definition, the
// lossless heat-up. data/04_heating_intervals.json: profile-likelihood intervals computed with an outside program, SciPy.
import { describe, expect, test } from 'vitest'
import { losslessMin, newtonC, newtonMin } from '../../src/core/chemistry/heating/laws.ts'
import { timeToTemperature } from '../../src/core/chemistry/heating/time-to-temperature.ts'
import published from './data/04_heating.json'
import outside from './data/04_heating_intervals.json'

const { incropera_5_1: incropera, cengel_4_1: cengel, noiseless, lossless_heating: lossless } = published

/** Half of the last digit given. */
const asGivenMin = 5e-9

describe('a body that is equally warm throughout', () => {
  test('The bead of Incropera & DeWitt, example 5.1, is at 199 °C after 5.16 s (printed: about 5.2 s)', () => {
    const { h_W_per_m2K, k_W_per_mK, c_J_per_kgK, rho_kg_per_m3, time_constant_s, diameter_m } = incropera
    // A sphere: volume over surface is D / 6. The data must agree with itself before it says anything of ours.
    expect((rho_kg_per_m3 * c_J_per_kgK * diameter_m) / (6 * h_W_per_m2K)).toBeCloseTo(time_constant_s, 12)
    expect((h_W_per_m2K * diameter_m) / 6 / k_W_per_mK).toBeCloseTo(incropera.Bi_with_Lc_r0_over_3, 12)
    const bead = { fromC: incropera.T_initial_C, towardsC: incropera.T_gas_C, perMin: 60 / time_constant_s }
    const min = newtonMin(bead, incropera.T_target_C) ?? Number.NaN
    expect(min * 60).toBeCloseTo(incropera.time_s, 12)
    expect(newtonC(bead, incropera.time_s / 60)).toBeCloseTo(incropera.T_target_C, 10)
  })

  test('The thermocouple of Cengel, example 4-1, has 1 % of the difference left after 9.94 s (printed: 10 s)', () => {
    const timeConstantS = (cengel.rho_kg_per_m3 * cengel.cp_J_per_kgK * cengel.D_m) / (6 * cengel.h_W_per_m2K)
    const bead = { fromC: 0, towardsC: 100, perMin: 60 / timeConstantS }
    const min = newtonMin(bead, 100 * (1 - cengel.fraction_remaining)) ?? Number.NaN
    expect(min * 60).toBeCloseTo(cengel.time_s, 12)
  })

  test('4 kg of water on 1,500 W without loss: 20 to 85 °C in 12.09 min', () => {
    const { mass_kg, c_J_per_kgK, power_W, from_C, to_C } = lossless
    const pot = { massKg: mass_kg, cJPerKgK: c_J_per_kgK, powerW: power_W, fromC: from_C, toC: to_C }
    expect(losslessMin(pot)).toBeCloseTo(lossless.time_min, 12)
  })
})

describe('readings without noise give the time of the law itself', () => {
  const pots = noiseless.map((row) => ({ ...row, to: `${row.T0_C} towards ${row.T_inf_C} °C` }))

  test.each(pots)('$to: $target_C °C at $time_min min', ({ T_inf_C, T0_C, tau_min, target_C, time_min }) => {
    const pot = { fromC: T0_C, towardsC: T_inf_C, perMin: 1 / tau_min }
    const readings = [0, 4, 8, 12, 16, 20].map((atMin) => ({ atMin, tempC: newtonC(pot, atMin) }))
    const found = timeToTemperature({ readings, targetC: target_C, sdC: 0, resolutionC: 0 })
    if (time_min === null) {
      expect(newtonMin(pot, target_C)).toBeNull()
      expect(found).toEqual({ kind: 'never' })
      return
    }
    expect(Math.abs((newtonMin(pot, target_C) ?? Number.NaN) - time_min)).toBeLessThanOrEqual(asGivenMin)
    if (found.kind !== 'reached-at') throw new Error(found.kind)
    // The last digit given, and what three parameters make of roundings at the 14th digit.
    expect(Math.abs(found.min - time_min)).toBeLessThanOrEqual(asGivenMin + 1e-8)
    expect(found.lowMin).toBeLessThan(time_min)
    expect(found.highMin).toBeGreaterThan(time_min)
  })
})

describe('the interval is that of an outside program', () => {
  test.each(outside.cases)('$name', ({ readings, targetC, sdC, resolutionC, expected }) => {
    const found = timeToTemperature({ readings, targetC, sdC, resolutionC })
    if (found.kind !== 'reached-at') throw new Error(found.kind)
    // Given to 5 decimals; both searches stop at about the 6th.
    expect(found.min).toBeCloseTo(expected.min, 4)
    expect(found.lowMin).toBeCloseTo(expected.lowMin, 4)
    if (expected.highMin === null) expect(found.highMin).toBeNull()
    else expect(found.highMin).toBeCloseTo(expected.highMin, 4)
  })
})
