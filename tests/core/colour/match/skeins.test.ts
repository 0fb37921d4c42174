import { describe, expect, it } from 'vitest'
import { type BandRead, type Lab, matchSkeins, type SkeinRead } from '../../../../src/core/colour/index.ts'
import { answered, problemsOf } from '../../chemistry/answered.ts'

const lab = (l: number, a = 0, b = 0): Lab => ({ l, a, b })
const band = (l: number, stray = 0, counts = true): BandRead => ({
  lab: lab(l),
  each: stray === 0 ? [] : [lab(l - stray), lab(l), lab(l + stray)],
  counts
})
const skein = (bands: BandRead[], other: Partial<SkeinRead> = {}): SkeinRead => ({
  white: 'D65/2',
  together: true,
  bands,
  ...other
})

describe('a skein held against another', () => {
  it('says how much of the difference may be stray, by the readings of both', () => {
    const { whole } = answered(matchSkeins(skein([band(45, 1)]), skein([band(55, 1)])))
    // About L* 50 ΔE00 is ΔL*; the mean of three readings one apart strays by the root of a third, twice.
    expect(whole.de00).toBeCloseTo(10, 6)
    expect(whole.sd).toBeCloseTo(Math.sqrt(2 / 3), 1)
    expect(whole).toMatchObject({ sdOf: 'both', chance: false, words: ['lighter'] })
  })

  it('shows no difference where it lies within what four degrees of freedom let stray', () => {
    // Three standard deviations of 0.82 would be 2.4, but three photos a side know them badly: 6.6 times 0.82.
    const match = (l: number) => answered(matchSkeins(skein([band(50 - l / 2, 1)]), skein([band(50 + l / 2, 1)])))
    expect(match(4).whole.chance).toBe(true)
    expect(match(6.5).whole.chance).toBe(false)
    expect(match(0).whole).toMatchObject({ de00: 0, chance: true })
    expect(match(0).whole.sd).toBeCloseTo(Math.sqrt(2 / 3), 1)
  })

  it('knows of whose readings the stray is, and that it is not known', () => {
    const [read, once] = [skein([band(40, 0.3)]), skein([band(50)])]
    expect(answered(matchSkeins(once, read)).whole).toMatchObject({ sdOf: 'skein', chance: false })
    expect(answered(matchSkeins(read, once)).whole).toMatchObject({ sdOf: 'target', chance: false })
    expect(answered(matchSkeins(once, once)).whole).toMatchObject({ sd: null, sdOf: null, chance: null })
  })

  it('takes bands of one photo to stray together, and an instrument’s each by itself', () => {
    const bands = [40, 45, 50, 55].map((l) => band(l, 1))
    const sd = (together: boolean) =>
      answered(matchSkeins(skein([band(60)]), skein(bands, { together }))).whole.sd as number
    // The mean of four that stray each by themselves strays half as much.
    expect(sd(true) / sd(false)).toBeCloseTo(2, 3)
  })

  it('is compared band by band where both have as many, without what wicked in either', () => {
    const target = skein([band(40), band(50), band(60), band(90, 0, false)])
    const match = answered(matchSkeins(target, skein([band(41), band(50), band(63), band(70)])))
    expect(match.bands?.map(({ band: nth, pair }) => [nth, pair?.deltaL ?? null])).toEqual([
      [1, 1],
      [2, 0],
      [3, 3],
      [4, null]
    ])
    expect(match.target.l).toBeCloseTo(50, 9)
    expect(match.skein.l).toBeCloseTo(154 / 3, 9)
    expect(match.whole.deltaL).toBeCloseTo(4 / 3, 9)
  })

  it('with another number of bands is compared as a whole only', () => {
    const match = answered(matchSkeins(skein([band(40), band(50)]), skein([band(41), band(50), band(62)])))
    expect(match.bands).toBeNull()
    expect(match.whole.deltaL).toBeCloseTo(6, 9)
    expect(answered(matchSkeins(skein([band(40)]), skein([band(41)]))).bands).toBeNull()
  })

  it('is refused where the whites differ or no band counts, and it is said of which', () => {
    const other = matchSkeins(skein([band(40)], { white: 'D65/10' }), skein([band(40)]))
    expect(problemsOf(other)).toMatchObject([{ field: 'target', code: 'does-not-fit' }])
    expect(problemsOf(other)[0]?.what).toContain('D65/10')
    const wicked = skein([band(40, 0, false)])
    expect(problemsOf(matchSkeins(skein([band(40)]), wicked)).map(({ field }) => field)).toEqual(['skein'])
    expect(problemsOf(matchSkeins(wicked, wicked)).map(({ field }) => field)).toEqual(['target', 'skein'])
  })
})
