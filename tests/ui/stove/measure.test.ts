import { describe, expect, it } from 'vitest'
import { readAmount } from '../../../src/core/quantity/amount.ts'
import { metricUnits, showVolume, type Units } from '../../../src/core/quantity/index.ts'
import { measureWord } from '../../../src/core/quantity/show-volume.ts'
import { volumeML } from '../../../src/core/quantity/volume-units.ts'
import { measureFor, pouredOf, roundMeasureFor } from '../../../src/ui/screens/stove/sheets/measure.ts'

const us: Units = { ...metricUnits, volume: 'us' }
const imperial: Units = { ...metricUnits, volume: 'imperial' }

describe('the measure that a dyer would take', () => {
  it.each([0.5, 2, 5, 20, 59, 60, 300, 2977, 5000])('%d mL is asked for as it is shown elsewhere', (mL) => {
    for (const units of [us, imperial]) {
      const { unit, first } = measureFor(mL, units, [10, 1])
      const shown = showVolume(mL, units).replaceAll('\u00a0', ' ')
      if (unit === 'mL') expect(shown).toMatch(/ mL$/)
      else expect(shown).toBe(`${Number(first.toFixed(2))} ${measureWord(unit, first)}`)
    }
  })

  it('begins at a whole step, and never at nothing', () => {
    expect(roundMeasureFor(200, metricUnits, [100, 10])).toEqual({ unit: 'mL', first: 200, steps: [100, 10] })
    expect(roundMeasureFor(200, us, [100, 10])).toMatchObject({ unit: 'US cup', first: 0.75 })
    expect(roundMeasureFor(200, imperial, [100, 10])).toMatchObject({ unit: 'imperial fl oz', first: 7 })
    expect(roundMeasureFor(2, metricUnits, [100, 10]).first).toBe(10)
  })

  it('says what was poured in words that can be read again', () => {
    for (const [unit, value] of [
      ['US cup', 2.5],
      ['US quart', 1],
      ['imperial pint', 3],
      ['imperial fl oz', 7],
      ['mL', 40]
    ] as const) {
      const poured = pouredOf({ unit }, value)
      const read = readAmount(poured.asEntered)
      expect(read.ok && read.value).toMatchObject({ kind: 'volume', value: volumeML(value, unit) })
      expect(poured.value).toBe(volumeML(value, unit))
    }
  })
})
