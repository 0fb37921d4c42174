import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Given, type Position, splitVerdict } from '../../../../src/core/colour/index.ts'
import { type control, given, point, positions, quiet, rising, series } from '../made.ts'

const level = rising(0)
const loud = (times: number): typeof quiet.repeat =>
  quiet.repeat.map((row) => row.map((value) => times * value)) as typeof quiet.repeat

describe('a skein that turned hue by dilution alone', () => {
  it('only got lighter, though its hue angle turned by 16 degrees', () => {
    const found = splitVerdict(given(level))
    const [first, last] = [found.deltaH[0]?.control, found.deltaH.at(-1)?.control]
    expect((first?.hueDeg ?? 0) - (last?.hueDeg ?? 0)).toBeGreaterThan(15)
    expect(found.verdict).toBe('only-lighter')
    expect(found.lighterBy).toBeCloseTo(35, 5)
    expect(found.smallestVisibleSplit).toBeLessThan(3.4)
    expect(Math.abs(found.size?.deltaH ?? 9)).toBeLessThan(0.2)
    expect(found.why.say).toContain('would have been seen')
  })

  it('is told to lie beside its series where all of it does, evenly: another ratio is no split', () => {
    const found = splitVerdict(given(level.map(() => 6)))
    expect(found.verdict).toBe('only-lighter')
    expect(found.why.say).toContain('beside the series')
  })
})

describe('a skein that split', () => {
  it('by 6 units is called so, with its size, its way and the band from which it shows', () => {
    const found = splitVerdict(given(rising(6)))
    expect(found.verdict).toBe('split')
    expect(found.size?.deltaH).toBeCloseTo(6, 0)
    // From blue of 280 degrees up towards red.
    expect(found.turn).toEqual({ word: 'redder', fromBand: 3 })
    expect(found.why.say).toContain('turns redder from band 3')
    expect(splitVerdict(given(rising(-6))).turn?.word).toBe('bluer')
  })

  it('in its last bands only shows from there', () => {
    const found = splitVerdict(given([0, 0, 0, 0, 5, 7]))
    expect(found.verdict).toBe('split')
    expect(found.turn?.fromBand).toBe(5)
  })

  it('is found where it is twice the stated smallest, and what is under three standard deviations is not', () => {
    const { smallestVisibleSplit, size } = splitVerdict(given(level))
    expect(splitVerdict(given(rising(2 * (smallestVisibleSplit ?? 0)))).verdict).toBe('split')
    expect(splitVerdict(given(rising(2 * (size?.sd ?? 0)))).verdict).toBe('only-lighter')
  })

  it('and turns back is "cannot tell"', () => {
    const found = splitVerdict(given([0, 4, 8, 8, 4, 0]))
    expect(found).toMatchObject({ verdict: 'cannot-tell', why: { code: 'not-one-way' } })
    expect(splitVerdict(given([0, 4, 8, 12, 4, 12])).why.code).toBe('not-one-way')
  })
})

describe('what can not be judged says why, and what would settle it', () => {
  const cases: [string, Given, string][] = [
    ['wet yarn', given(rising(9), { skein: { positions: positions(rising(9)), dry: false, fibres: 1 } }), 'wet'],
    [
      'two fibres',
      given(rising(9), { skein: { positions: positions(rising(9)), dry: true, fibres: 2 } }),
      'two-fibres'
    ],
    ['no series', given(rising(9), { series: [] }), 'no-control'],
    ['a series of three', given(rising(9), { series: series([30, 45, 60]) }), 'no-control'],
    ['a series of one lightness', given(rising(9), { series: series([50, 52, 54, 56]) }), 'flat-series'],
    ['one photo', given(rising(9), { noise: { ...quiet, freedom: 0, photos: 1 } }), 'no-repeats'],
    ['a series that ends before the skein', given(rising(9), { series: series([22, 26, 30, 34]) }), 'outside-series'],
    [
      'two lights',
      given(rising(9), { faults: [{ code: 'two-lights', of: 'undyed', nth: 1, say: 'Two.' }] }),
      'bad-photo'
    ],
    ['noise', given(level, { noise: { ...quiet, repeat: loud(225) } }), 'too-noisy']
  ]
  it.each(cases)('%s', (_, asked, code) => {
    const { verdict, why } = splitVerdict(asked)
    expect({ verdict, code: why.code }).toEqual({ verdict: 'cannot-tell', code })
    expect(why.say.length).toBeGreaterThan(20)
    expect(why.settle.length).toBeGreaterThan(20)
  })

  const pale = (chroma: number): Position[] =>
    positions(level).map((one) => {
      const { l, a, b } = one.lab
      const size = Math.hypot(a, b)
      return { ...one, lab: { l, a: (a * chroma) / size, b: (b * chroma) / size } }
    })

  it('a skein of less chroma than 8', () => {
    const skein = (chroma: number) => ({ positions: pale(chroma), dry: true, fibres: 1 })
    const found = splitVerdict(given(level, { skein: skein(6) }))
    expect(found.why.code).toBe('too-pale')
    expect(found.deltaH.every(({ leftOut }) => leftOut === 'too-pale')).toBe(true)
    expect(splitVerdict(given(level, { skein: skein(6), series: [] })).why.code).toBe('too-pale')
    expect(splitVerdict(given(level, { skein: skein(9) })).why.code).not.toBe('too-pale')
  })

  it('a skein that is hardly more than its undyed yarn, which has a chroma of its own', () => {
    const undyed = point({ l: 90, a: 0, b: 14 })
    const cream = positions(level).map((one) => ({ ...one, lab: { l: one.lab.l, a: 1, b: 16 } }))
    expect(splitVerdict(given(level, { undyed, skein: { positions: cream, dry: true, fibres: 1 } })).why.code).toBe(
      'too-pale'
    )
  })
})

describe('what does not belong to the verdict', () => {
  it('a wicking zone is shown and never counts, however far it turned', () => {
    const dry = positions(level)
    const wicked = positions([...level, 20]).at(-1) as Position
    const zone = 'wicking' as const
    const asked = given(level, { skein: { positions: [...dry, { ...wicked, zone, at: 1.2 }], dry: true, fibres: 1 } })
    const found = splitVerdict(asked)
    expect(found.verdict).toBe('only-lighter')
    expect(found.size).toEqual(splitVerdict(given(level)).size)
    expect(found.deltaH.at(-1)).toMatchObject({ leftOut: 'wicking', zone })
    expect(Math.abs(found.deltaH.at(-1)?.deltaH ?? 0)).toBeGreaterThan(10)
  })

  it('a swatch or a place that the photos could not read is left out; the rest is judged', () => {
    const faults = [
      { code: 'clipped', of: 'series', nth: 0, say: 'Too bright.' },
      { code: 'clipped', of: 'skein', nth: 5, say: 'Too dark.' }
    ] as const
    const wrong = given([...rising(0, 6).slice(0, 5), 15])
    wrong.series[0] = point({ l: 25, a: 60, b: 60 })
    const found = splitVerdict({ ...wrong, faults: [...faults] })
    expect(found.verdict).not.toBe('split')
    expect(found.deltaH.at(-1)?.leftOut).toBe('bad-patch')
    expect(splitVerdict({ ...wrong, faults: [] }).verdict).not.toBe('only-lighter')
  })
})

describe('the uncertainty', () => {
  const smallest = (other: Partial<Given>): number => splitVerdict(given(level, other)).smallestVisibleSplit ?? 0
  const usual = smallest({})

  it('grows with repeat noise, with few photos, with uneven yarn, with a thin series, with uneven light, and with light that nobody saw to', () => {
    expect(smallest({ noise: { ...quiet, repeat: loud(16) } })).toBeGreaterThan(1.2 * usual)
    expect(smallest({ noise: { ...quiet, photos: 1 } })).toBeGreaterThan(1.05 * usual)
    const patchy = positions(level).map((one) => ({ ...one, doubt: point(one.lab, 0.8).doubt }))
    expect(smallest({ skein: { positions: patchy, dry: true, fibres: 1 } })).toBeGreaterThan(1.2 * usual)
    expect(smallest({ series: series([25, 35, 55, 70]) })).toBeGreaterThan(1.2 * usual)
    const uneven = (light: typeof quiet.light) => {
      const places = positions(level).map((one) => ({ ...one, lightAt: one.at }))
      return smallest({ skein: { positions: places, dry: true, fibres: 1 }, noise: { ...quiet, light } })
    }
    expect(uneven({ l: 0, a: 2, b: 2 })).toBeGreaterThan(1.5 * usual)
    expect(uneven(null)).toBeGreaterThan(1.2 * usual)
  })

  it('names what weighs most where a split could have been missed', () => {
    const places = positions(level).map((one) => ({ ...one, lightAt: one.at }))
    const skein = { positions: places, dry: true, fibres: 1 }
    const code = (other: Partial<Given>) => splitVerdict(given(level, { smallestWanted: 1, skein, ...other })).why.code
    expect(code({ noise: { ...quiet, light: { l: 0, a: 3, b: 3 } } })).toBe('uneven-light')
    expect(code({ series: series([25, 33, 60, 70]) })).toBe('thin-series')
  })

  it('of few repeats asks for more than three standard deviations', () => {
    const repeat = loud(100)
    const limit = (freedom: number): number => {
      const { size, smallestVisibleSplit } = splitVerdict(given(level, { noise: { ...quiet, repeat, freedom } }))
      return (smallestVisibleSplit ?? 0) / (size?.sd ?? 1)
    }
    expect(limit(4)).toBeGreaterThan(limit(30) + 1)
    expect(limit(100_000)).toBeCloseTo(3 + 1.645, 2)
  })
})

const profile = fc.array(fc.double({ min: -8, max: 8, noNaN: true }), { minLength: 4, maxLength: 8 })

describe('whatever the skein', () => {
  it('the order in which positions and swatches were marked makes no difference', () => {
    fc.assert(
      fc.property(profile, fc.infiniteStream(fc.nat()), (turns, keys) => {
        const asked = given(turns)
        const shuffled = <T>(list: T[]): T[] =>
          list
            .map((one): [number, T] => [keys.next().value as number, one])
            .sort(([p], [q]) => p - q)
            .map(([, one]) => one)
        const other = {
          ...asked,
          series: shuffled(asked.series),
          skein: { ...asked.skein, positions: shuffled(asked.skein.positions) }
        }
        const [one, two] = [splitVerdict(asked), splitVerdict(other)]
        expect(two.verdict).toBe(one.verdict)
        expect(two.size?.deltaH).toBeCloseTo(one.size?.deltaH ?? 0, 6)
        expect(two.size?.sd).toBeCloseTo(one.size?.sd ?? 0, 6)
      }),
      { numRuns: 40 }
    )
  })

  it('marking it from the other end turns the sign round, and nothing else', () => {
    fc.assert(
      fc.property(profile, (turns) => {
        const asked = given(turns)
        const back = asked.skein.positions.map((one) => ({ ...one, at: 1 - one.at }))
        const [one, two] = [splitVerdict(asked), splitVerdict({ ...asked, skein: { ...asked.skein, positions: back } })]
        expect(two.size?.deltaH).toBeCloseTo(-(one.size?.deltaH ?? 0), 6)
        expect(two.smallestVisibleSplit).toBeCloseTo(one.smallestVisibleSplit ?? 0, 6)
        expect(two.verdict).toBe(one.verdict)
      }),
      { numRuns: 40 }
    )
  })

  it('turning every hue by the same angle turns nothing of the verdict', () => {
    fc.assert(
      fc.property(profile, fc.double({ min: 0, max: 360, noNaN: true }), (turns, deg) => {
        const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
        const spun = <T extends { lab: ReturnType<typeof control> }>(one: T): T => {
          const { l, a, b } = one.lab
          return { ...one, lab: { l, a: a * cos - b * sin, b: a * sin + b * cos } }
        }
        const asked = given(turns)
        const other = {
          ...asked,
          series: asked.series.map(spun),
          skein: { ...asked.skein, positions: asked.skein.positions.map(spun) }
        }
        const [one, two] = [splitVerdict(asked), splitVerdict(other)]
        // Slopes are taken over a step of a certain length in a* and b*, which does not turn along: 5e-6 of difference is seen.
        expect(two.size?.deltaH).toBeCloseTo(one.size?.deltaH ?? 0, 3)
        expect(two.size?.sd).toBeCloseTo(one.size?.sd ?? 0, 3)
      }),
      { numRuns: 40 }
    )
  })
})
