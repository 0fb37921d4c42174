import { describe, expect, it } from 'vitest'
import { type Made, phOfDoses } from '../../../../src/core/pot/expected/ph.ts'
import type { Amount } from '../../../../src/core/protocol/model.ts'
import { identity } from '../given.ts'
import { programme } from '../programmes.ts'

const mL = (value: number, of: string, unit: Amount['unit'] = 'mL'): Amount => ({ value, unit, of, asEntered: '' })
const dose = (added: Amount): Made['doses'][number] => ({
  path: null,
  of: added.of,
  planned: null,
  added,
  atMs: 0,
  fromPotId: null
})

const made = (amounts: Amount[], more: Partial<Made> = {}): Made => ({
  pot: identity(),
  programme: programme([], [], { liquorML: null }),
  doses: amounts.map(dose),
  toppedUpML: 0,
  ...more
})

describe('the pH that the doses would make', () => {
  it('holds that of 60 mL of 5 % vinegar in 3 L, from soft water to hard', () => {
    // 50 mmol in 3.06 L is 0.0163 mol/L; pKa 4.76: pH (4.76 + 1.79) / 2 = 3.27 in pure water. Hard water of 300 mg/L as
    // CaCO3 takes up 6 mmol/L of it: 4.76 + log(6 / 10.3) = 4.5.
    const found = phOfDoses(made([mL(3000, 'water'), mL(60, 'vinegar')]))
    expect(found?.low).toBeGreaterThanOrEqual(3.1)
    expect(found?.low).toBeLessThanOrEqual(3.27)
    expect(found?.high).toBeGreaterThanOrEqual(4.5)
    expect(found?.high).toBeLessThanOrEqual(4.8)
  })

  it('counts the water that came later and the liquor where no fill was told', () => {
    const less = phOfDoses(made([mL(1000, 'water'), mL(60, 'vinegar')]))
    expect(phOfDoses(made([mL(1000, 'water'), mL(60, 'vinegar')], { toppedUpML: 2000 }))).toEqual(
      phOfDoses(made([mL(3000, 'water'), mL(60, 'vinegar')]))
    )
    const byRatio = phOfDoses(made([mL(60, 'vinegar')], { programme: programme([], [], { liquorML: 1000 }) }))
    expect(byRatio).toEqual(less)
  })

  it('knows an acid that is only called so by what was said of its bottle', () => {
    const of = (acid: 'acetic' | 'citric' | 'other' | undefined, name: string): ReturnType<typeof phOfDoses> => {
      const amount = mL(60, name)
      const setOut = [
        { id: 'a', label: name, amount, sum: '', kind: 'acid' as const, percent: 5, paths: [], material: 'acid' }
      ]
      const bottle = { name, percent: 5, basis: 'w/v' as const, densityGPerML: null, ...(acid && { acid }) }
      const given = { skeins: [], values: {}, materials: { acid: bottle }, roomC: null, boilC: null }
      return phOfDoses(
        made([mL(3000, 'water'), amount], { programme: programme([], [], { liquorML: null, setOut, given }) })
      )
    }
    expect(of('acetic', 'acid')).toEqual(of(undefined, 'vinegar'))
    expect(of('acetic', 'acid')).not.toBeNull()
    expect(of('citric', 'acid')?.low).toBeLessThan(of('acetic', 'acid')?.low ?? 0)
    expect(of(undefined, 'acid')).toBeNull()
    expect(of('other', 'vinegar')).toBeNull()
  })

  it('is not said where nobody can know it', () => {
    const unknown: [string, Made][] = [
      ['no acid', made([mL(3000, 'water')])],
      ['no water', made([mL(60, 'vinegar')])],
      ['soda', made([mL(3000, 'water'), mL(60, 'vinegar'), mL(5, 'soda', 'g')])],
      ['an acid without a name', made([mL(3000, 'water'), mL(60, 'acid')])],
      ['a used bath', made([mL(3000, 'water'), mL(60, 'vinegar')], { pot: usedBath() })],
      ['too little acid for the hardest water', made([mL(3000, 'water'), mL(5, 'vinegar')])]
    ]
    for (const [why, one] of unknown) expect(phOfDoses(one), why).toBeNull()
  })
})

function usedBath(): Made['pot'] {
  const pot = identity()
  return { ...pot, bath: { ...pot.bath, unknownDyeLeft: true } }
}
