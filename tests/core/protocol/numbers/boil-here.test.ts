// Where water boils: US Standard Atmosphere 1976 and IAPWS-IF97, as tests/reference/boiling.test.ts has them.
import { describe, expect, it } from 'vitest'
import { readBoilHere } from '../../../../src/core/protocol/numbers/boil-here.ts'

const celsius = { temperature: 'C' as const }

describe('where water boils here', () => {
  it.each([
    ['0 m', 99.97, 'altitude'],
    ['1500 m', 95.0, 'altitude'],
    ['4921 ft', 95.0, 'altitude'],
    ['1013.25 hPa', 99.97, 'pressure'],
    ['96.5 °C', 96.5, 'boil'],
    ['96.5', 96.5, 'boil'],
    ['204 °F', 95.56, 'boil']
  ] as const)('%s is %f °C', (text, boilC, from) => {
    const read = readBoilHere(text, celsius)
    if (!read.ok) throw new Error(read.problem.instead)
    expect(read.value.from).toBe(from)
    expect(Math.abs(read.value.boilC - boilC)).toBeLessThan(0.06)
  })

  it.each(['1200', '9000 m', '30 hPa', 'high up', '40 °C', ''])('“%s” is refused with what would be right', (text) => {
    const read = readBoilHere(text, celsius)
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.problem.instead.length).toBeGreaterThan(10)
  })
})
