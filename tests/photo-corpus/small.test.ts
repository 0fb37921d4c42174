// A small part of the corpus, of numbers that nothing was tuned on: 41 photographs. `npm run judge` measures the whole.
import { describe, expect, it } from 'vitest'
import { judge, seedOf } from './case.ts'
import { kindOf } from './judge.ts'
import type { Kind } from './kinds.ts'
import { figures, lineOf } from './tally.ts'

const first = 50_000
const kinds: Kind[] = [
  ...new Array<Kind>(5).fill('split'),
  ...new Array<Kind>(5).fill('dilution'),
  'pale',
  'pale split',
  'two lights',
  'one photo',
  'thin series'
]

describe(`skeins photographed by a script, seeds ${seedOf('judge', first)} on`, () => {
  const lines = kinds.map((kind, nth) => lineOf(judge(kind, 'judge', first + nth)))
  const of = (kind: Kind) => lines.filter((line) => line.kind === kind)

  it('that only got lighter are never called split, and most are called what they are', () => {
    const verdicts = of('dilution').map(({ verdict }) => verdict)
    expect(verdicts).not.toContain('split')
    expect(verdicts.filter((verdict) => verdict === 'only-lighter').length).toBeGreaterThanOrEqual(3)
  })

  it('that split by twice the smallest that was stated are called split, the right way round', () => {
    const large = of('split').filter(
      ({ size, smallest }) => Math.abs(size) >= 2 * (smallest ?? Number.POSITIVE_INFINITY)
    )
    expect(large.length).toBeGreaterThanOrEqual(1)
    for (const { verdict, found, size } of large) {
      expect(verdict).toBe('split')
      expect(Math.sign(found ?? 0)).toBe(Math.sign(size))
    }
  })

  it('that nobody can judge are "cannot tell", for the reason there is', () => {
    const why = (kind: Kind) => of(kind).map((line) => `${line.verdict} ${line.why}`)
    expect(why('pale')).toEqual(['cannot-tell too-pale'])
    expect(why('pale split')).toEqual(['cannot-tell too-pale'])
    expect(why('two lights')).toEqual(['cannot-tell bad-photo'])
    expect(why('one photo')).toEqual(['cannot-tell no-repeats'])
    expect(why('thin series')).toEqual(['cannot-tell no-control'])
  })

  it('come out the same each time', () => {
    expect(lineOf(judge('one photo', 'judge', first))).toEqual(lineOf(judge('one photo', 'judge', first)))
  })
})

it('twenty skeins in a row hold every kind, seven of each that can be judged', () => {
  const row = Array.from({ length: 20 }, (_, nth) => kindOf(nth))
  expect(row.filter((kind) => kind === 'split')).toHaveLength(7)
  expect(row.filter((kind) => kind === 'dilution')).toHaveLength(7)
  expect(new Set(row).size).toBe(7)
})

describe('the tally', () => {
  const line = {
    kind: 'dilution',
    light: 'daylight',
    photos: 3,
    size: 0,
    turnedDeg: 5,
    why: '',
    found: 0.1,
    sd: 0.5,
    smallest: 2
  } as const
  const met = (verdicts: ('split' | 'only-lighter' | 'cannot-tell')[], change: object = {}) =>
    figures(verdicts.map((verdict) => ({ ...line, ...change, verdict }))).map((figure) => figure.met)

  it('sees a false split in a hundred, a missed one in ten, and a verdict where there can be none', () => {
    const rest = new Array(99).fill('only-lighter')
    expect(met([...rest, 'only-lighter'])[0]).toBe(true)
    expect(met([...rest, 'split'])[0]).toBe(false)
    const splits = { kind: 'split', size: 4, found: 4 }
    const seen = new Array(9).fill('split')
    expect(met([...seen, 'split'], splits)[1]).toBe(true)
    expect(met([...seen, 'cannot-tell'], splits)[1]).toBe(false)
    expect(met(seen, { ...splits, found: -4 })[1]).toBe(false)
    expect(met(['only-lighter'], { kind: 'pale' })[3]).toBe(false)
    expect(met(['cannot-tell'], { kind: 'pale' })[3]).toBe(true)
  })
})
