import { describe, expect, it } from 'vitest'
import { bathClear, matchTo, stainOn, type Told } from '../../../../src/core/colour/index.ts'
import { answered, problemsOf } from '../../chemistry/answered.ts'

const told = (l: number, a: number, b: number): Told => ({ lab: { l, a, b }, white: 'D65/2' })

describe('a batch beside its parent', () => {
  it('is told in figures and in words, the largest difference first', () => {
    const match = answered(matchTo(told(40, 20, -30), told(43, 19, -30)))
    expect(match).toMatchObject({ deltaL: 3, greyStep: 3 })
    expect(match.deltaE).toBeCloseTo(Math.sqrt(10), 9)
    expect(match.words).toEqual(['lighter', 'bluer', 'duller'])
    expect(answered(matchTo(told(40, 20, -30), told(40.2, 20, -30)))).toMatchObject({ words: [], greyStep: 5 })
  })

  it('from the other side turns every sign', () => {
    const [there, back] = [matchTo(told(40, 20, -30), told(35, 30, -25)), matchTo(told(35, 30, -25), told(40, 20, -30))]
    const [one, other] = [answered(there), answered(back)]
    for (const figure of ['deltaL', 'deltaC', 'deltaH'] as const) expect(other[figure]).toBeCloseTo(-one[figure], 9)
    expect(other.de00).toBeCloseTo(one.de00, 9)
    expect(one.words).toContain('deeper')
    expect(other.words).toContain('lighter')
  })

  it('is refused where the two are told against different whites, or are no numbers', () => {
    const other: Told = { lab: { l: 40, a: 20, b: -30 }, white: 'D65/10' }
    expect(problemsOf(matchTo(told(40, 20, -30), other))[0]).toMatchObject({ field: 'white', code: 'does-not-fit' })
    expect(problemsOf(matchTo(told(40, Number.NaN, -30), told(40, 20, -30)))[0]?.field).toBe('target')
  })
})

it('a witness cloth that took 8.5 units is stained to step 3', () => {
  const stain = answered(stainOn(told(93, 0, 4), told(93, 8.5, 4)))
  expect(stain.greyStep).toBe(3)
  expect(stain.deltaE).toBeCloseTo(8.5, 9)
  expect(problemsOf(stainOn(told(93, 0, 4), { ...told(93, 0, 4), white: 'A/10' }))).toHaveLength(1)
})

describe('how clear is the bath', () => {
  const cupLab = (percent: number) => ({
    l: 92 - 50 * (1 - Math.exp(-percent / 30)),
    a: percent / 2,
    b: 5 - percent / 4
  })
  const ladder = [50, 25, 12, 6, 3, 0].map((percent) => ({ percent, lab: cupLab(percent) }))

  it.each(ladder)('like the cup of $percent %', ({ percent, lab }) => {
    const found = answered(bathClear(ladder, lab))
    expect(found.leftPercent).toBeCloseTo(percent, 6)
    expect(found.offLadder).toBeLessThan(1e-6)
  })

  it('between two cups lies between them, in whatever order they were marked', () => {
    const found = answered(bathClear([...ladder].reverse(), cupLab(17)))
    expect(found).toMatchObject({ lowPercent: 12, highPercent: 25 })
    expect(Math.abs(found.leftPercent - 17)).toBeLessThan(1.5)
  })

  it('of another hue is told to lie off the ladder', () => {
    const { l, a, b } = cupLab(12)
    expect(answered(bathClear(ladder, { l, a, b: b + 9 })).offLadder).toBeGreaterThan(5)
  })

  it('deeper than the deepest cup is told as that one', () => {
    expect(answered(bathClear(ladder, cupLab(90))).leftPercent).toBe(50)
  })

  it('is refused with too few cups, with cups that can not be, or that look alike', () => {
    expect(problemsOf(bathClear(ladder.slice(0, 2), cupLab(5)))[0]?.instead).toContain('50, 25, 12, 6, 3, 0 %')
    expect(problemsOf(bathClear([...ladder, { percent: 120, lab: cupLab(99) }], cupLab(5)))[0]?.code).toBe('outside')
    const alike = ladder.map((cup) => (cup.percent === 3 ? { percent: 3, lab: cupLab(6) } : cup))
    expect(problemsOf(bathClear(alike, cupLab(5)))[0]?.what).toContain('6 and 3 %')
  })
})
