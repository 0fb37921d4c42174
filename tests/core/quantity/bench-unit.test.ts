import { describe, expect, it } from 'vitest'
import { type BenchUnit, readIn, unitsIn } from '../../../src/core/quantity/index.ts'

describe('values that only the bench asks for', () => {
  it.each([
    ['altitude', '1609.344 m', 1609.344],
    // A mile has 5280 ft and is 1609.344 m (NIST SP 811 App. B).
    ['altitude', '5280 ft', 1609.344],
    ['altitude', '−10 metres', -10],
    // 29.92 inches and 760 mm of mercury are 1013.25 hPa, to four figures (US Standard Atmosphere 1976).
    ['pressure', '29.92 inHg', 1013.2],
    ['pressure', '760 mmHg', 1013.25],
    ['pressure', '101.325 kPa', 1013.25],
    ['power', '1500 W', 1.5],
    // 3412 Btu/h are a kilowatt (NIST SP 811 App. B, from memory).
    ['power', '3412 Btu/h', 1],
    ['alkalinity', '100 mg/L', 100],
    ['alkalinity', '100 ppm CaCO3', 100],
    ['alkalinity', '10 °dH', 178.5],
    ['alkalinity', '10 dKH', 178.5],
    ['alkalinity', '10 °fH', 100],
    ['alkalinity', '2 meq/L', 100.1],
    ['difference', '0.9 °F', 0.5],
    ['difference', '0,5 °C', 0.5]
  ] as [BenchUnit, string, number][])('%s: %s is %d', (kind, text, value) => {
    const read = readIn(text, kind)
    expect(read.ok && Math.abs(read.value - value)).toBeLessThan(0.0006 * Math.abs(value))
  })

  it.each([
    ['altitude', '', 'empty', /1 m/],
    ['altitude', '1600', 'unit-missing', /Write 1600 m or 1600 ft\./],
    ['altitude', '1 mile', 'unit-unknown', /Write 1 m or 1 ft\./],
    ['pressure', '14.7 psi', 'unit-unknown', /inHg or 14\.7 mmHg/],
    ['power', 'strong', 'not-a-number', /Begin with a number/],
    ['alkalinity', '3 mmol/L', 'unit-unknown', /3 mg\/L, 3 °dH, 3 °fH or 3 meq\/L/],
    ['altitude', '1,600 m', 'comma-ambiguous', /1\.6 or 1600/]
  ] as [BenchUnit, string, string, RegExp][])('%s: “%s” is refused (%s)', (kind, text, code, instead) => {
    const read = readIn(text, kind)
    expect(read.ok ? null : read.problem.code).toBe(code)
    expect(read.ok ? '' : read.problem.instead).toMatch(instead)
  })

  it('every unit that is offered is read', () => {
    for (const kind of ['altitude', 'pressure', 'power', 'alkalinity', 'difference'] as const) {
      for (const unit of unitsIn(kind)) expect(readIn(`1 ${unit}`, kind).ok, unit).toBe(true)
    }
  })
})
