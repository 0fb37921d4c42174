// The sums under the verdict.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { controlCurve } from '../../../../src/core/colour/verdict/control-curve.ts'
import { rising } from '../../../../src/core/colour/verdict/one-way.ts'
import { repeatNoise } from '../../../../src/core/colour/verdict/several-photos.ts'
import { threeSd } from '../../../../src/core/colour/verdict/three-sd.ts'
import { turnWord } from '../../../../src/core/colour/verdict/turn-words.ts'
import { photoChance } from '../../../photo-corpus/chance.ts'
import { control } from '../made.ts'

describe('three standard deviations on few degrees of freedom', () => {
  // JCGM 100:2008 (GUM), table G.2, column 99.73 % (from memory). Two decimals are printed; the expansion is good to 1 %.
  it.each([
    [4, 6.62],
    [5, 5.51],
    [6, 4.9],
    [8, 4.28],
    [10, 3.96],
    [20, 3.42],
    [50, 3.16],
    [100, 3.08]
  ])('on %d: %d', (freedom, t) => {
    expect(Math.abs(threeSd(freedom) / t - 1)).toBeLessThan(0.01)
  })
})

describe('the nearest run that only rises', () => {
  it('pools neighbours that go the wrong way', () => {
    expect(rising([1, 3, 2, 4], [1, 1, 1, 1])).toEqual([1, 2.5, 2.5, 4])
    expect(rising([3, 2, 1], [1, 1, 2])).toEqual([1.75, 1.75, 1.75])
  })

  it('rises, keeps the weighted sum, and is no further away than any other rising run', () => {
    const numbers = fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: 9
    })
    fc.assert(
      fc.property(
        numbers,
        fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 9, maxLength: 9 }),
        (pairs, any) => {
          const [values, weights] = [pairs.map(([value]) => value), pairs.map(([, weight]) => weight)]
          const run = rising(values, weights)
          const away = (other: number[]): number =>
            values.reduce((sum, value, nth) => sum + (weights[nth] ?? 0) * (value - (other[nth] ?? 0)) ** 2, 0)
          for (const [nth, value] of run.slice(1).entries()) expect(value).toBeGreaterThanOrEqual(run[nth] as number)
          expect(away(run)).toBeLessThanOrEqual(away([...any].sort((one, other) => one - other)) + 1e-9)
        }
      )
    )
  })
})

describe('the control curve', () => {
  const depths = [22, 30, 38, 46, 54, 62, 70]
  const curve = controlCurve(
    depths.map(control),
    depths.map(() => 0.01)
  )

  it('goes by its swatches and between them, nearer than it says it may stray', () => {
    for (let depth = 22; depth <= 70; depth += 0.5) {
      const [found, truth] = [curve.at(depth), control(depth)]
      const sd = Math.sqrt(curve.stray(depth, depth))
      expect(sd).toBeGreaterThan(0)
      expect(Math.hypot(found.a - truth.a, found.b - truth.b)).toBeLessThan(2 * sd)
    }
  })

  it('knows less between swatches than at them, and less and less past the last', () => {
    const sd = (depth: number): number => Math.sqrt(curve.stray(depth, depth))
    expect(sd(50)).toBeGreaterThan(sd(46))
    expect(sd(76)).toBeGreaterThan(1.5 * sd(70))
    expect(sd(90)).toBeGreaterThan(2 * sd(76))
  })
})

describe('repeat noise', () => {
  const chance = photoChance(31)
  const noisy = (things: number, photos: number, whole: number) => {
    const shifts = Array.from({ length: photos }, () => whole * chance.normal())
    return Array.from({ length: things }, (_, nth) =>
      shifts.map((shift) => ({ l: 10 * nth + shift + 0.5 * chance.normal(), a: 5 + 0.2 * chance.normal(), b: 7 }))
    )
  }

  it('is how things differ from photo to photo, without what a whole photo has in common', () => {
    const { repeat, freedom } = repeatNoise(noisy(200, 5, 3))
    expect(freedom).toBe(199 * 4)
    expect(Math.sqrt(repeat[0][0])).toBeCloseTo(0.5, 1)
    expect(Math.sqrt(repeat[1][1])).toBeCloseTo(0.2, 1)
    expect(repeat[2][2]).toBeCloseTo(0, 12)
  })

  it('does not depend on the order of the photos or of the things', () => {
    const things = noisy(6, 4, 1)
    const other = things.map((thing) => [thing[2], thing[0], thing[3], thing[1]].flatMap((lab) => lab ?? [])).reverse()
    const [one, two] = [repeatNoise(things), repeatNoise(other)]
    expect(two.freedom).toBe(one.freedom)
    for (const i of [0, 1, 2] as const)
      for (const j of [0, 1, 2] as const) expect(two.repeat[i][j]).toBeCloseTo(one.repeat[i][j], 10)
  })

  it('is not known from one photo, or of one thing', () => {
    expect(repeatNoise(noisy(6, 1, 0)).freedom).toBe(0)
    expect(repeatNoise(noisy(1, 6, 0)).freedom).toBe(0)
    expect(repeatNoise([]).freedom).toBe(0)
  })
})

it.each([
  [300, 1, 'redder'],
  [300, -1, 'bluer'],
  [50, 1, 'yellower'],
  [50, -1, 'redder'],
  [130, 1, 'greener'],
  [130, -1, 'yellower'],
  [200, 1, 'bluer'],
  [200, -1, 'greener'],
  [10, 1, 'redder'],
  [10, -1, 'bluer'],
  [92, 1, 'greener']
] as const)('a hue of %d degrees that turns by %d turns %s', (deg, turn, word) => {
  expect(turnWord(deg, turn)).toBe(word)
})
