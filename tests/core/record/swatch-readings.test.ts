import { describe, expect, it } from 'vitest'
import type { Fault, Lab, SplitVerdict } from '../../../src/core/colour/index.ts'
import type { Entry } from '../../../src/core/pot/entry.ts'
import { comparisonsOf, judgementsOf, type SwatchEvent } from '../../../src/core/record/swatch.ts'
import { readingsOf } from '../../../src/core/record/swatch-readings.ts'

const entry = (event: SwatchEvent, seq: number, streamId = 'swatch/moss') =>
  ({
    streamId,
    seq,
    writerId: 'w',
    atMs: seq * 1000,
    tzOffsetMin: 0,
    by: { kind: 'person', name: 'Mo', via: 'tap' },
    event
  }) as Entry<SwatchEvent>

const skein = (...ls: number[]) => ls.map((l, nth) => ({ of: 'skein' as const, nth, lab: { l, a: 1, b: 2 } }))
const verdict = (zones: readonly ('dyed' | 'wicking')[]) =>
  ({ verdict: 'cannot-tell', deltaH: zones.map((zone, nth) => ({ zone, band: nth + 1 })) }) as unknown as SplitVerdict

const photo = (sha256: string, ls: number[], faults: Fault[] = []): SwatchEvent => ({
  type: 'SwatchPhotoKept',
  media: { sha256, mime: 'image/jpeg', bytes: 3, widthPx: 4, heightPx: 3 },
  readWidthPx: 4,
  readHeightPx: 3,
  marks: { grey: { x: 1, y: 1, halfLong: 1, halfWide: 1, turnRad: 0 }, undyed: [], series: [], skein: [] },
  readings: [{ of: 'undyed', nth: 0, lab: { l: 90, a: 0, b: 5 } }, ...skein(...ls)],
  faults
})
const judged = (other: Partial<Extract<SwatchEvent, { type: 'SwatchJudged' }>> = {}): SwatchEvent => ({
  type: 'SwatchJudged',
  batchId: 'moss',
  by: 'photo',
  white: 'D65/2',
  photos: ['a', 'b'],
  dry: true,
  fibres: 1,
  readings: [{ of: 'undyed', nth: 0, lab: { l: 90, a: 0, b: 5 } }, ...skein(41, 51)],
  verdict: verdict(['dyed', 'wicking']),
  ...other
})
const clipped: Fault = { code: 'clipped', of: 'skein', nth: 0, say: 'Too bright.' }
const twoLights: Fault = { code: 'two-lights', of: 'undyed', nth: 1, say: 'Two lights.' }

describe('readings that were kept', () => {
  it('are the skein’s bands with each photo’s own readings; what wicked does not count', () => {
    const [one] = readingsOf(
      [photo('a', [40, 50]), photo('b', [42, 52]), judged()].map((each, i) => entry(each, i + 1))
    )
    expect(one).toMatchObject({ key: 'swatch/moss w 3', batchId: 'moss', photos: 2, refused: null })
    expect(one?.read).toMatchObject({ white: 'D65/2', together: true })
    expect(one?.read.bands.map(({ lab, each, counts }) => [lab.l, each.map(({ l }) => l), counts])).toEqual([
      [41, [40, 42], true],
      [51, [50, 52], false]
    ])
  })

  it('of a picture marked anew are by the marks it was judged by, in its own stream', () => {
    const [latest, first] = readingsOf([
      entry(photo('a', [40, 50]), 1),
      entry(judged({ photos: ['a'] }), 2),
      entry(photo('a', [10, 20]), 3),
      entry(photo('a', [70, 80]), 1, 'swatch/fern'),
      entry(judged({ photos: ['a'] }), 4)
    ])
    expect(first?.read.bands[0]?.each.map(({ l }) => l)).toEqual([40])
    expect(latest?.read.bands[0]?.each.map(({ l }) => l)).toEqual([10])
  })

  it('of an instrument have their single readings, and older entries none', () => {
    const repeats: Lab[][] = [
      [
        { l: 40, a: 1, b: 2 },
        { l: 42, a: 1, b: 2 }
      ],
      [{ l: 51, a: 1, b: 2 }]
    ]
    const by = { by: 'instrument', photos: [] as string[] } as const
    const [now, old] = readingsOf([entry(judged(by), 1), entry(judged({ ...by, repeats }), 2)])
    expect(now?.read.together).toBe(false)
    expect(now?.read.bands.map(({ each }) => each.length)).toEqual([2, 1])
    expect(old?.read.bands.map(({ each }) => each.length)).toEqual([0, 0])
  })

  it('of damp yarn or of spoilt photos say so; one clipped band is left out', () => {
    const all = (faults: Fault[], other = {}) =>
      readingsOf(
        [photo('a', [40, 50], faults), photo('b', [42, 52]), judged(other)].map((each, i) => entry(each, i + 1))
      )[0]
    expect(all([], { dry: false })?.refused).toContain('damp')
    expect(all([twoLights])?.refused).toBe('Its photos have a fault: Two lights. Take them anew.')
    expect(all([clipped])).toMatchObject({ refused: null, read: { bands: [{ counts: false }, {}] } })
  })

  it('are no verdicts: a match stands apart from them', () => {
    const side = { key: null, batchId: null, name: 'typed', by: 'typed', readings: [] } as const
    const matched = { type: 'SwatchMatched', batchId: 'moss', skein: side, target: side, match: {} } as unknown
    const entries = [entry(judged(), 1), entry(matched as SwatchEvent, 2)]
    expect(judgementsOf(entries).map(({ found }) => found.type)).toEqual(['SwatchJudged'])
    expect(comparisonsOf(entries).map(({ found, by }) => [found.type, by])).toEqual([['SwatchMatched', 'Mo']])
    expect(readingsOf(entries)).toHaveLength(1)
  })
})
