import { describe, expect, it } from 'vitest'
import { type Curve, labOfReflectance, typedLab } from '../../../../src/core/colour/index.ts'
import { answered, problemsOf } from '../../chemistry/answered.ts'

const curve = (change: Partial<Curve> = {}): Curve => ({
  firstNm: 400,
  everyNm: 10,
  shares: Array.from({ length: 31 }, (_, nth) => 0.1 + (0.6 * nth) / 30),
  white: 'D65/10',
  ...change
})

describe('a reflectance curve', () => {
  it('that rises towards red is warm, and the white is stated with it', () => {
    const { lab, xyz, white } = answered(labOfReflectance(curve()))
    expect(white).toBe('D65/10')
    expect(lab.b).toBeGreaterThan(20)
    expect(lab.a).toBeGreaterThan(5)
    expect(lab.l).toBeCloseTo(116 * Math.cbrt(xyz.y) - 16, 9)
  })

  it('of every second value is nearly the same where it is smooth', () => {
    const half = curve({ everyNm: 20, shares: curve().shares.filter((_, nth) => nth % 2 === 0) })
    const [one, other] = [answered(labOfReflectance(curve())).lab, answered(labOfReflectance(half)).lab]
    for (const axis of ['l', 'a', 'b'] as const) expect(other[axis]).toBeCloseTo(one[axis], 6)
  })

  it.each([
    ['in %', { shares: curve().shares.map((share) => 100 * share) }, 'shares', 'not %'],
    ['under nothing', { shares: [-0.1, ...curve().shares.slice(1)] }, 'shares', '0 to 1'],
    ['with a gap', { shares: [Number.NaN, ...curve().shares.slice(1)] }, 'shares', '0 to 1'],
    ['that ends too soon', { shares: curve().shares.slice(0, 20) }, 'shares', '680'],
    ['that begins too late', { firstNm: 500 }, 'firstNm', '300 to 420 nm'],
    ['off the tens', { firstNm: 405 }, 'firstNm', 'multiple of 10'],
    ['every 7 nm', { everyNm: 7 }, 'everyNm', '10 or 20'],
    ['without a light', { white: 'sun' as never }, 'white', 'D65/10']
  ] as const)('%s is refused with what would be right', (_, change, field, instead) => {
    const [problem] = problemsOf(labOfReflectance(curve(change as Partial<Curve>)))
    expect(problem?.field).toBe(field)
    expect(problem?.instead).toContain(instead)
  })
})

describe('typed L*, a* and b*', () => {
  it('are taken with the white that they were measured against', () => {
    expect(answered(typedLab({ l: 40, a: -12.5, b: 8, white: 'D50/2' }))).toEqual({
      lab: { l: 40, a: -12.5, b: 8 },
      white: 'D50/2'
    })
  })

  it('are refused, every wrong one at once', () => {
    const problems = problemsOf(typedLab({ l: 140, a: Number.NaN, b: 8, white: undefined as never }))
    expect(problems.map(({ field, code }) => `${field} ${code}`)).toEqual([
      'l outside',
      'a not-a-number',
      'white missing'
    ])
  })
})
