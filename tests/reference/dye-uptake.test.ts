// How dye is taken up, by two models, against tables that data/05_dye_uptake.json gives with their sources.
import { describe, expect, test } from 'vitest'
import { diffusedFraction, exhaustionAfter, halfTimeMin, rateAt } from '../../src/core/chemistry/index.ts'
import { diffusionRoot } from '../../src/core/chemistry/uptake/diffusion.ts'
import { answered } from '../core/chemistry/answered.ts'
import data from './data/05_dye_uptake.json' with { type: 'json' }

describe.each(data.uptake)('diffusion into a fibre, alpha $alpha (Crank 1975, ch. 5)', (row) => {
  const alpha = row.alpha === 'inf' ? Number.POSITIVE_INFINITY : Number(row.alpha)

  // Ten decimals are printed.
  test('its first six roots', () => {
    for (const [i, q] of row.q1_to_q6.entries())
      expect(Math.abs(diffusionRoot(1 / alpha, i + 1) - q)).toBeLessThan(6e-11)
  })

  test('what the fibre keeps in the end is 1 / (1 + alpha)', () => {
    expect(1 / (1 + alpha)).toBeCloseTo(row.final_fraction_taken_up, 10)
  })

  test.each(row.Mt_over_Minf)('$value of it after D t / r² = $T_Dt_over_a2, and by Laplace inversion', (point) => {
    const fraction = answered(diffusedFraction({ alpha, time: point.T_Dt_over_a2 }))
    expect(Math.abs(fraction - point.value)).toBeLessThan(6e-11)
    expect(Math.abs(fraction - point.laplace_inversion)).toBeLessThan(1e-10)
  })
})

describe('first-order exhaustion', () => {
  test.each(data.first_order)('k $k_per_min, $t_min min: $exhaustion_percent %', (row) => {
    const rate = { ratePerMin: row.k_per_min, rateAtC: 95, energyKJPerMol: 60 }
    const stretches = [{ fromC: 95, toC: 95, min: row.t_min }]
    const percent = answered(exhaustionAfter({ ...rate, finalPercent: row.E_inf_percent, stretches }))
    expect(Math.abs(percent - row.exhaustion_percent)).toBeLessThan(6e-9)
    expect(Math.abs(answered(halfTimeMin(row.k_per_min)) - row.half_time_min)).toBeLessThan(6e-9)
  })

  test.each(data.arrhenius)('$Ea_kJ_per_mol kJ/mol: k at $T_C °C is $k_per_min', (row) => {
    const rate = { ratePerMin: row.k_ref_per_min, rateAtC: row.T_ref_C, energyKJPerMol: row.Ea_kJ_per_mol }
    expect(Math.abs(answered(rateAt({ ...rate, tempC: row.T_C })) - row.k_per_min)).toBeLessThan(6e-11)
  })

  test('over a ramp and a hold', () => {
    const { k_ref_per_min, T_ref_C, Ea_kJ_per_mol, E_inf_percent, segments, after_each_segment } = data.ramp_example
    const rate = { ratePerMin: k_ref_per_min, rateAtC: T_ref_C, energyKJPerMol: Ea_kJ_per_mol }
    const stretches = segments.map(({ from_C, to_C, minutes }) => ({ fromC: from_C, toC: to_C, min: minutes }))
    for (const [i, { exhaustion_percent }] of after_each_segment.entries()) {
      const upToHere = { ...rate, finalPercent: E_inf_percent, stretches: stretches.slice(0, i + 1) }
      expect(Math.abs(answered(exhaustionAfter(upToHere)) - exhaustion_percent)).toBeLessThan(6e-8)
    }
  })

  test('80 °C against 70 °C: 1.8 times as fast with 60 kJ/mol, 3.1 with 115 (computed)', () => {
    const factors = [60, 75, 90, 100, 115].map((energyKJPerMol) =>
      answered(rateAt({ ratePerMin: 1, rateAtC: 70, energyKJPerMol, tempC: 80 }))
    )
    for (const [i, factor] of [1.8, 2.1, 2.45, 2.7, 3.1].entries())
      expect(Math.abs((factors[i] ?? 0) - factor)).toBeLessThan(0.04)
  })
})
