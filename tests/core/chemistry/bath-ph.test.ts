import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { constantsAt } from '../../../src/core/chemistry/bath/constants.ts'
import { molesOf, totalsOf } from '../../../src/core/chemistry/bath/inputs.ts'
import { type Bath, bathPh, isRefused, statedDoubt } from '../../../src/core/chemistry/index.ts'
import { speciesAt } from '../../../src/desk/bench/plain-balance.ts'
import { answered } from './answered.ts'
import { plainBath, someBath } from './baths.ts'

const phOf = (bath: typeof plainBath): number => answered(bathPh(bath)).ph

/** The same balance, written down plainly and halved in on, with the ionic strength of each turn put into the next. */
function halvedPh(bath: Bath): number {
  const totals = totalsOf(molesOf(bath), bath)
  const k = constantsAt(bath.tempC)
  let ionic = totals.cation
  let ph = 7
  for (let turn = 0; turn < 60; turn++) {
    let [low, high] = [-1, 15]
    for (let half = 0; half < 50; half++) {
      ph = (low + high) / 2
      if (speciesAt(ph, ionic, totals, k).balance > 0) low = ph
      else high = ph
    }
    ionic = speciesAt(ph, ionic, totals, k).ionic
  }
  return ph
}

describe('the pH of a bath', () => {
  it('falls as vinegar is added to it', () => {
    fc.assert(
      fc.property(someBath, fc.double({ min: 1, max: 50, noNaN: true }), (bath, moreML) => {
        const none = { ...bath, citricG: 0 }
        expect(phOf({ ...none, vinegarML: bath.vinegarML + moreML })).toBeLessThan(phOf(none))
      })
    )
  })

  it('falls as citric acid is added, and rises with the alkalinity of the water', () => {
    fc.assert(
      fc.property(someBath, fc.double({ min: 0.1, max: 20, noNaN: true }), (bath, moreG) => {
        expect(phOf({ ...bath, citricG: bath.citricG + moreG })).toBeLessThan(phOf(bath))
      })
    )
    fc.assert(
      fc.property(someBath, fc.double({ min: 1, max: 200, noNaN: true }), (bath, more) => {
        fc.pre(bath.vinegarML > 5)
        const harder = { ...bath, alkalinityMgPerLCaCO3: bath.alkalinityMgPerLCaCO3 + more }
        expect(phOf(harder)).toBeGreaterThan(phOf(bath))
      })
    )
  })

  it('lies between its own ends, which stand at least the doubt of the model apart from it', () => {
    fc.assert(
      fc.property(someBath, (bath) => {
        const { ph, lowPh, highPh } = answered(bathPh(bath))
        const model = bath.tempC <= 40 ? 0.02 : 0.05
        expect(lowPh).toBeLessThanOrEqual(ph - model)
        expect(highPh).toBeGreaterThanOrEqual(ph + model)
      })
    )
  })

  it('lies within its ends still when all that was measured is off by the stated doubt', () => {
    const { acidPercent, alkalinityPercent } = statedDoubt
    fc.assert(
      fc.property(
        someBath,
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (bath, a, b) => {
          const { lowPh, highPh } = answered(bathPh(bath))
          const really = phOf({
            ...bath,
            vinegarPercentWV: bath.vinegarPercentWV * (1 + (a * acidPercent) / 100),
            citricG: bath.citricG * (1 + (a * acidPercent) / 100),
            alkalinityMgPerLCaCO3: bath.alkalinityMgPerLCaCO3 * (1 + (b * alkalinityPercent) / 100)
          })
          expect(really).toBeGreaterThan(lowPh)
          expect(really).toBeLessThan(highPh)
        }
      )
    )
  })

  it('counts calcium into its low end: it frees protons of citric acid in hard water', () => {
    const hard = { ...plainBath, vinegarML: 0, citricG: 5, alkalinityMgPerLCaCO3: 320 }
    const measuredOff = phOf({ ...hard, citricG: 5 * 1.05, alkalinityMgPerLCaCO3: 320 * 0.9 })
    // 0.1 beyond what measuring and the model leave open, by the constants of calcium citrate.
    expect(answered(bathPh(hard)).lowPh).toBeLessThan(measuredOff - 0.02 - 0.1)
    const soft = { ...hard, alkalinityMgPerLCaCO3: 0 }
    expect(answered(bathPh(soft)).lowPh).toBeCloseTo(phOf({ ...soft, citricG: 5 * 1.05 }) - 0.02, 3)
  })

  it('is higher open than closed, and its open end stays where bicarbonate stands', () => {
    fc.assert(
      fc.property(someBath, (bath) => {
        const { acetic, citric, alkalinity } = molesOf(bath)
        fc.pre(acetic + 3 * citric > alkalinity)
        const open = answered(bathPh({ ...bath, air: 'open' }))
        expect(open.ph).toBeGreaterThanOrEqual(phOf(bath) - 1e-9)
        expect(open.highPh).toBeLessThan(Math.max(open.ph, 8.7) + 0.051)
      })
    )
    // At the edge of its alkalinity the doubt opens wide.
    const edge = answered(bathPh({ ...plainBath, vinegarML: 10, air: 'open' }))
    expect(edge.highPh - edge.ph).toBeGreaterThan(1)
  })

  it('is the place where the charges balance, found by halving instead of by steps', () => {
    const anyBath = fc.record({
      waterML: fc.oneof(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.double({ min: 100, max: 1e4, noNaN: true })
      ),
      vinegarML: fc.oneof(
        fc.constant(0),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 300, noNaN: true })
      ),
      vinegarPercentWV: fc.double({ min: 0.01, max: 100, noNaN: true }),
      citricG: fc.oneof(
        fc.constant(0),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true })
      ),
      citricForm: fc.constantFrom('anhydrous' as const, 'monohydrate' as const),
      alkalinityMgPerLCaCO3: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1000, noNaN: true })),
      tempC: fc.double({ min: 0, max: 100, noNaN: true }),
      air: fc.constantFrom('closed' as const, 'open' as const)
    })
    let solved = 0
    fc.assert(
      fc.property(anyBath, (bath) => {
        const answer = bathPh(bath)
        if (isRefused(answer)) return
        solved++
        expect(Math.abs(answer.ph - halvedPh(bath))).toBeLessThan(1e-8)
      }),
      { numRuns: 3000 }
    )
    expect(solved).toBeGreaterThan(1000)
  })

  it('is found to the end where the activity of H+ stands still for one turn while the ionic strength still moves', () => {
    const bath: Bath = {
      ...plainBath,
      waterML: 1248.0975766608587,
      vinegarML: 0,
      citricG: 5.468725491610021,
      citricForm: 'monohydrate',
      alkalinityMgPerLCaCO3: 0,
      tempC: 0
    }
    expect(Math.abs(phOf(bath) - halvedPh(bath))).toBeLessThan(1e-8)
  })

  it('of pure water is half its pKw', () => {
    const pure = { ...plainBath, vinegarML: 0, alkalinityMgPerLCaCO3: 0 }
    for (const tempC of [0, 25, 60, 100]) {
      expect(phOf({ ...pure, tempC })).toBeCloseTo(-Math.log10(constantsAt(tempC).water) / 2, 3)
    }
  })

  it('does not ask how strong a vinegar is that is not there', () => {
    expect(phOf({ ...plainBath, vinegarML: 0, citricG: 5, vinegarPercentWV: 0 })).toBeGreaterThan(2)
  })
})
