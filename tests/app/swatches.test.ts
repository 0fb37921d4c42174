import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import type { KitchenParts } from '../../src/app/kitchen.ts'
import { swatchesOf } from '../../src/app/swatches.ts'
import { type BandRead, matchSkeins, type SplitVerdict, stainOfCloth } from '../../src/core/colour/index.ts'
import type { SwatchEvent } from '../../src/core/record/swatch.ts'
import { handClock } from '../../src/shell/clock/hand-clock.ts'
import { type Fault, memoryJournal, memoryStore } from '../../src/shell/journal/memory-journal.ts'
import { answered } from '../core/chemistry/answered.ts'
import { T0 } from '../core/pot/given.ts'

function swatches(store = memoryStore(), faults: (Fault | null)[] = [], writerId = 'w1') {
  const clock = handClock(T0)
  const journal = memoryJournal({ store, fault: () => faults.shift() ?? null })
  const settings = { settings: signal({ dyer: 'Mo' }) } as unknown as KitchenParts['settings']
  const made = swatchesOf({ clock, journal, newId: () => 'new', settings }, { writerId })
  return { ...made, journal, clock }
}

const verdict: SplitVerdict = {
  verdict: 'only-lighter',
  deltaH: [],
  size: { deltaH: 0.2, sd: 0.5 },
  smallestVisibleSplit: 2.5,
  lighterBy: 12,
  turn: null,
  why: { code: 'would-have-been-seen', say: 'It stays within.', settle: 'More photos.' }
}
const sha256 = 'a'.repeat(64)
const media = { sha256, mime: 'image/jpeg', bytes: 3, widthPx: 40, heightPx: 30 }
const bytes = { sha256, mime: 'image/jpeg', bytes: new Uint8Array([1, 2, 3]).buffer }
const marks = { grey: { x: 1, y: 1, halfLong: 1, halfWide: 1, turnRad: 0 }, undyed: [], series: [], skein: [] }
const photo: SwatchEvent = {
  type: 'SwatchPhotoKept',
  media,
  readWidthPx: 400,
  readHeightPx: 300,
  marks,
  readings: [],
  faults: []
}
const judged: SwatchEvent = {
  type: 'SwatchJudged',
  batchId: 'moss',
  by: 'photo',
  white: 'D65/2',
  photos: [sha256],
  dry: true,
  fibres: 1,
  readings: [],
  verdict
}
const seen: SwatchEvent = {
  type: 'SwatchSeen',
  batchId: null,
  says: 'split',
  words: 'Yellower at the tip.',
  light: 'a north window',
  dry: true
}

describe('what is found of a skein', () => {
  it('is kept with its pictures under its batch, and read back by another opening of the app', async () => {
    const store = memoryStore()
    const first = swatches(store)
    expect(await first.keep('moss', [photo, judged], [bytes], 'c1')).toEqual({ ok: true })
    const { judgements, problem } = await swatches(store).kept('moss')
    expect(problem).toBeNull()
    expect(judgements).toMatchObject([{ by: 'Mo', atMs: T0, found: judged, photos: [media] }])
    expect((await first.journal.media(sha256))?.mime).toBe('image/jpeg')
    expect((await swatches(store).kept('fern')).judgements).toEqual([])
  })

  it('is kept once, however often the same deed is tried', async () => {
    const { keep, kept } = swatches()
    for (const _ of [1, 2]) expect(await keep('moss', [judged], [], 'c1')).toEqual({ ok: true })
    expect((await kept('moss')).judgements).toHaveLength(1)
  })

  it('stays when it is judged again: the latest stands first', async () => {
    const { keep, kept, clock } = swatches()
    await keep('moss', [photo, judged], [bytes], 'c1')
    clock.advance(60_000)
    await keep('moss', [{ ...judged, photos: [sha256], verdict: { ...verdict, verdict: 'split' } }], [], 'c2')
    const { judgements } = await kept('moss')
    expect(judgements.map(({ found }) => found.type === 'SwatchJudged' && found.verdict.verdict)).toEqual([
      'split',
      'only-lighter'
    ])
    expect(judgements[0]?.photos).toEqual([media])
  })

  it('of no batch has a stream of its own, and stands among all', async () => {
    const { keep, kept } = swatches()
    await keep(null, [seen], [], 'c1')
    await keep('moss', [judged], [], 'c2')
    expect((await kept(null)).judgements.map(({ found }) => found.type).sort()).toEqual(['SwatchJudged', 'SwatchSeen'])
  })

  it('is there to hold another skein against, and what came of that is kept and read back', async () => {
    const store = memoryStore()
    const first = swatches(store)
    const readings = [{ of: 'skein', nth: 0, lab: { l: 40, a: 10, b: 5 } }] as const
    await first.keep('moss', [{ ...judged, by: 'instrument', photos: [], readings: [...readings] }], [], 'c1')
    const [reading] = (await first.kept(null)).readings
    expect(reading).toMatchObject({ batchId: 'moss', read: { bands: [{ lab: { l: 40 } }] } })
    if (!reading) throw new Error('no reading')
    const answer = matchSkeins(reading.read, {
      ...reading.read,
      bands: [{ ...reading.read.bands[0], lab: { l: 43, a: 10, b: 5 } } as BandRead]
    })
    const side = { key: reading.key, batchId: 'moss', name: 'Moss', by: 'instrument', readings: [] } as const
    const matched: SwatchEvent = {
      type: 'SwatchMatched',
      batchId: 'fern',
      skein: { ...side, key: null, by: 'typed', readings: [] },
      target: { ...side, readings: [] },
      match: answered(answer)
    }
    expect(await first.keep('fern', [matched], [], 'c2')).toEqual({ ok: true })
    const { comparisons, judgements, problem } = await swatches(store).kept('fern')
    expect(problem).toBeNull()
    expect(judgements).toEqual([])
    expect(comparisons).toMatchObject([{ by: 'Mo', found: matched }])
  })

  it('has a stained cloth kept with its pictures', async () => {
    const store = memoryStore()
    const first = swatches(store)
    const read = {
      white: 'D65/2',
      clean: [{ l: 93, a: 0, b: 4 }],
      stained: [{ l: 90, a: 6, b: 3 }],
      together: true
    } as const
    const stained: SwatchEvent = {
      type: 'ClothStained',
      batchId: 'moss',
      by: 'photo',
      photos: [sha256],
      cloth: 'White cotton',
      done: 'washed with it',
      stain: answered(stainOfCloth({ ...read, clean: [...read.clean], stained: [...read.stained] }))
    }
    expect(await first.keep('moss', [photo, stained], [bytes], 'c1')).toEqual({ ok: true })
    const { comparisons, judgements, readings, problem } = await swatches(store).kept('moss')
    expect({ judgements, readings, problem }).toEqual({ judgements: [], readings: [], problem: null })
    expect(comparisons).toMatchObject([{ found: stained, photos: [media] }])
    expect((await first.journal.media(sha256))?.mime).toBe('image/jpeg')
  })

  it('is told to be not saved when the store is full, and the same deed can be tried again', async () => {
    const { keep, kept } = swatches(memoryStore(), ['full'])
    const sent = await keep('moss', [judged], [], 'c1')
    expect(sent.ok).toBe(false)
    expect(!sent.ok && sent.say).toMatch(/^Not saved\. /)
    expect((await kept('moss')).judgements).toEqual([])
    expect(await keep('moss', [judged], [], 'c1')).toEqual({ ok: true })
    expect((await kept('moss')).judgements).toHaveLength(1)
  })
})
