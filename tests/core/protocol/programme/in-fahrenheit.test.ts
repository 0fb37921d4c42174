import { describe, expect, it } from 'vitest'
import { fahrenheitWords, inFahrenheit } from '../../../../src/core/protocol/programme/in-fahrenheit.ts'
import { stepsOf } from '../../../../src/core/protocol/tree.ts'
import { programme, step } from '../../pot/programmes.ts'
import { withSteps } from '../broken-files.ts'
import { programmeFrom } from '../made.ts'

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

  it.each([
    ['176 °F', '80 °C', '176 °F'],
    ['80 °C', '80 °C', '176 °F'],
    ['185..194 °F', '85–90 °C', '185–194 °F'],
    ['80 ± 2 °C', '78–82 °C', '172–180 °F'],
    ['at least 185 °F', '85 °C or more', '185 °F or more'],
    ['at most 40 °C', '40 °C or less', '104 °F or less'],
    ['the boil', 'the boil', 'the boil']
  ])('says a hold and a rinse at %s in the degrees of whoever reads', (written, inC, inF) => {
    const made = programmeFrom(withSteps(`- hold: {for: 25 min, at: ${written}}\n- rinse: ${written}`))
    const [hold, rinse] = stepsOf(made)
    expect([hold?.doing, rinse?.detail]).toEqual([`Holding at ${inC}`, `at ${inC}`])
    const [holdF, rinseF] = stepsOf(inFahrenheit(made))
    expect([holdF?.doing, rinseF?.detail]).toEqual([`Holding at ${inF}`, `at ${inF}`])
  })

  it('changes what is read of a step, and no figure and no address of it', () => {
    const ramp = { lowC: 80, highC: 85, cPerMin: 1.5, expectedFromC: 20 }
    const before = programme([step({ id: 'to 80 °C', doing: 'Heating to 80 °C', ramp })])
    const [after] = stepsOf(inFahrenheit(before))
    const [was] = stepsOf(before)
    expect(after).toEqual({ ...was, call: 'to 176 °F', knot: 'to 176 °F', doing: 'Heating to 176 °F' })
  })
})
