import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Acid, type AcidWanted, acidFor, type Bath, bathPh, isRefused } from '../../../src/core/chemistry/index.ts'
import { answered, problemsOf } from './answered.ts'
import { plainBath, someBath } from './baths.ts'

const acids = fc.constantFrom<Acid>('vinegar', 'citric')
const airs = fc.constantFrom<Bath['air']>('closed', 'open')

const wantedOf = ({ vinegarML, citricG, ...bath }: Bath, acid: Acid, targetPh: number): AcidWanted =>
  acid === 'vinegar' ? { ...bath, acid, targetPh, citricG } : { ...bath, acid, targetPh, vinegarML }

const withDose = (bath: Bath, acid: Acid, amount: number): Bath =>
  acid === 'vinegar' ? { ...bath, vinegarML: amount } : { ...bath, citricG: amount }

describe('the acid for a pH', () => {
  it('put into the bath gives that pH, whichever acid, air and other acid', () => {
    let reached = 0
    fc.assert(
      fc.property(someBath, acids, airs, fc.double({ min: 2.5, max: 7, noNaN: true }), (some, acid, air, targetPh) => {
        const bath = { ...some, air }
        const dose = acidFor(wantedOf(bath, acid, targetPh))
        if (isRefused(dose)) {
          expect(dose.problems.map(({ code }) => code)).toEqual(['out-of-reach'])
          return
        }
        reached++
        expect(answered(bathPh(withDose(bath, acid, dose.amount))).ph).toBeCloseTo(targetPh, 6)
      }),
      { numRuns: 300 }
    )
    expect(reached).toBeGreaterThan(60)
  })

  it('is what a bath holds, asked with the pH that it has', () => {
    fc.assert(
      fc.property(someBath, acids, (bath, acid) => {
        const there = acid === 'vinegar' ? bath.vinegarML : bath.citricG
        fc.pre(there > 1)
        const targetPh = answered(bathPh(bath)).ph
        const dose = acidFor(wantedOf(bath, acid, targetPh))
        // Where the other acid makes the bath sourer than this one could, it is refused instead.
        if (!isRefused(dose)) expect(dose.amount / there).toBeCloseTo(1, 5)
      }),
      { numRuns: 200 }
    )
  })

  it('stands between its ends, where the ends of the doubt have that pH', () => {
    const wanted = wantedOf(plainBath, 'vinegar', 4.2)
    const { amount, unit, lowAmount, highAmount } = answered(acidFor(wanted))
    expect(unit).toBe('mL')
    expect(lowAmount).toBeLessThan(amount)
    expect(highAmount).toBeGreaterThan(amount)
    expect(answered(bathPh({ ...plainBath, vinegarML: lowAmount })).lowPh).toBeCloseTo(4.2, 4)
    expect(answered(bathPh({ ...plainBath, vinegarML: highAmount ?? 0 })).highPh).toBeCloseTo(4.2, 4)
  })

  it('is no more where the other acid helps', () => {
    const alone = answered(acidFor(wantedOf(plainBath, 'vinegar', 4)))
    const helped = answered(acidFor(wantedOf({ ...plainBath, citricG: 1 }, 'vinegar', 4)))
    expect(helped.amount).toBeLessThan(alone.amount)
    expect(answered(acidFor(wantedOf(plainBath, 'citric', 3.5))).unit).toBe('g')
  })

  it('reads nothing of what stands there of the acid that is looked for', () => {
    const { targetPh, ...rest } = wantedOf(plainBath, 'vinegar', 4)
    const plain = answered(acidFor({ ...rest, targetPh }))
    expect(answered(acidFor({ ...rest, targetPh, vinegarML: 999 }))).toEqual(plain)
  })
})

describe('an acid that does not bring the bath there is refused', () => {
  it.each<[string, AcidWanted, string, string]>([
    ['a pH above that without acid', wantedOf(plainBath, 'vinegar', 8.8), 'without it', 'Give a pH under 8.28.'],
    [
      'a pH above that of an open bath whose alkalinity is just used up',
      wantedOf({ ...plainBath, air: 'open' }, 'vinegar', 8.8),
      'as soon as its alkalinity is used up',
      'Give a pH under 8.01.'
    ],
    [
      'a pH below that of the vinegar itself',
      wantedOf(plainBath, 'vinegar', 2),
      'No amount of this vinegar brings the bath to pH 2.',
      'Give a pH of 2.43 or more, or a stronger acid.'
    ],
    [
      'a pH below 1 mol/kg of citric acid',
      wantedOf(plainBath, 'citric', 1.5),
      'No amount of citric acid brings the bath to pH 1.5.',
      'or a stronger acid.'
    ]
  ])('%s', (_, wanted, what, instead) => {
    const [problem] = problemsOf(acidFor(wanted))
    expect(problem).toMatchObject({ code: 'out-of-reach', field: 'targetPh' })
    expect(problem?.what).toContain(what)
    expect(problem?.instead).toContain(instead)
  })

  it('with every wrong field named at once, and each once', () => {
    const wanted = { ...wantedOf(plainBath, 'vinegar', 12), waterML: -1, vinegarPercentWV: 0, acid: 'vinegar' as const }
    const fields = problemsOf(acidFor(wanted)).map(({ field }) => field)
    expect(fields.sort()).toEqual(['targetPh', 'vinegarPercentWV', 'waterML'])
  })

  it('an acid that is none, and a bath too sour already', () => {
    const odd = { ...wantedOf(plainBath, 'vinegar', 4), acid: 'lemon' as Acid }
    expect(problemsOf(acidFor(odd))[0]).toMatchObject({ field: 'acid', instead: "Give 'vinegar' or 'citric'." })
    const sour = wantedOf({ ...plainBath, citricG: 900 }, 'vinegar', 3)
    expect(problemsOf(acidFor(sour))[0]).toMatchObject({ code: 'too-strong', field: 'citricG' })
  })
})
