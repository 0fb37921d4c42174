import { describe, expect, it } from 'vitest'
import { fahrenheitWords, inFahrenheit } from '../../../../src/core/protocol/programme/in-fahrenheit.ts'
import { stepsOf } from '../../../../src/core/protocol/tree.ts'
import { programme, step } from '../../pot/programmes.ts'

describe('the words of a programme for a thermometer in °F', () => {
  // 0 °C is 32 °F and 100 °C is 212 °F; a degree is 1.8 of the other (NIST SP 811, 2008, appendix B).
  it.each([
    ['Heating to 80 °C, ring on', 'Heating to 176 °F, ring on'],
    ['Heat up to 80–85 °C', 'Heat up to 176–185 °F'],
    ['40 °C', '104 °F'],
    ['at 1.5 °C/min, cold water at the wall', 'at 2.7 °F/min, cold water at the wall'],
    ['at 2 °C/min; 100 °C or the boil, whichever is lower', 'at 3.6 °F/min; 212 °F or the boil, whichever is lower']
  ])('says “%s” as “%s”', (written, said) => {
    expect(fahrenheitWords(written)).toBe(said)
  })

  it('leaves a difference as it was written', () => {
    for (const text of ['Raise it by 5 °C', 'cools 3 to 5 °C more', 'within 2 °C', 'to the boil', 'Rinse at 40']) {
      expect(fahrenheitWords(text)).toBe(text)
    }
  })

  it('changes what is read of a step, and no figure and no address of it', () => {
    const ramp = { lowC: 80, highC: 85, cPerMin: 1.5, expectedFromC: 20 }
    const before = programme([step({ id: 'to 80 °C', doing: 'Heating to 80 °C', ramp })])
    const [after] = stepsOf(inFahrenheit(before))
    const [was] = stepsOf(before)
    expect(after).toEqual({ ...was, call: 'to 176 °F', knot: 'to 176 °F', doing: 'Heating to 176 °F' })
  })
})
