import { describe, expect, it } from 'vitest'
import { metricUnits, type Units } from '../../../src/core/quantity/index.ts'
import type { Level } from '../../../src/core/shelf/levels.ts'
import { type Draft, draftOf, emptyDraft } from '../../../src/ui/screens/shelf/fields.ts'
import { emptyWish } from '../../../src/ui/screens/shelf/make-form.tsx'
import { readDraft } from '../../../src/ui/screens/shelf/read-draft.ts'
import { readWish, type Wish } from '../../../src/ui/screens/shelf/read-wish.ts'
import { ageWords, levelWords } from '../../../src/ui/screens/shelf/words.ts'
import { acidOf, merino, OnTheShelf, stockY, vinegar } from '../../core/shelf/bottles.ts'

const NOW = Date.UTC(2031, 5, 14, 9)
const us: Units = { temperature: 'F', volume: 'us', mass: 'us' }
const stock: Draft = { ...emptyDraft, name: 'stock Y', dye: 'C.I. Acid Yellow', percentWV: '1', level: '250' }
const read = (draft: Draft, units = metricUnits) => readDraft('stock', draft, units, NOW, null)
const wrong = (draft: Draft, kind: Parameters<typeof readDraft>[0] = 'stock') => {
  const found = readDraft(kind, draft, metricUnits, NOW, null)
  return found.ok ? {} : found.problems
}

describe('what is typed for a thing', () => {
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' 1,5 % ', 1.5],
    ['½', 0.5],
    ['0,1', 0.1]
  ])('a strength of %j is read', (typed, percentWV) => {
    expect(read({ ...stock, percentWV: typed })).toMatchObject({ ok: true, thing: { percentWV } })
  })

  it.each(['', 'one', '1.5.5', '1,5 g', '-1', '0', '120', '1 2'])(
    'a strength of %j is refused at its field alone',
    (typed) => {
      expect(Object.keys(wrong({ ...stock, percentWV: typed }))).toEqual(['percentWV'])
    }
  )

  it('a bare number is in the dyer’s own unit, and any other may stand behind it', () => {
    expect(read(stock)).toMatchObject({ level: 250 })
    expect(read({ ...stock, level: '0.25 L' })).toMatchObject({ level: 250 })
    // 8 US fl oz are 236.588 mL: NIST SP 811, App. B.
    expect(read({ ...stock, level: '8' }, us)).toMatchObject({ level: expect.closeTo(236.588, 3) })
    expect(read({ ...stock, level: '250 mL' }, us)).toMatchObject({ level: 250 })
  })

  it('an empty level is not told, and is no problem; grams of a liquid are one', () => {
    expect(read({ ...stock, level: ' ' })).toMatchObject({ ok: true, level: null })
    expect(wrong({ ...stock, level: '250 g' }).level).toContain('“250 g” can’t be read')
  })

  it('all that is wrong is said at once, each at its field', () => {
    const all = wrong({ ...emptyDraft, percent: 'x', basis: 'w/w', densityGPerML: '', level: 'some' }, 'acid')
    expect(Object.keys(all).sort()).toEqual(['acid', 'densityGPerML', 'level', 'name', 'percent'])
  })

  it('a powder is asked for no strength, a water for no level', () => {
    const powder = readDraft(
      'acid',
      { ...emptyDraft, name: 'citric', acid: 'citric', form: 'powder', level: '100' },
      metricUnits,
      NOW,
      null
    )
    expect(powder).toMatchObject({ ok: true, thing: { percent: null, form: 'powder' }, level: 100 })
    const water = readDraft('water', { ...emptyDraft, name: 'rain', level: '3' }, metricUnits, NOW, null)
    expect(water).toMatchObject({ ok: true, level: null, thing: { alkalinityMgPerL: null } })
  })

  it.each([
    ['a stock', stockY],
    ['a mixed stock', { ...stockY, parts: [{ name: 'Y', parts: 3, itemId: 'y' }] }],
    ['an acid', vinegar],
    ['yarn', merino],
    ['a vessel', { kind: 'pot' as const, name: 'big', volumeML: 8000, material: 'steel', lid: false, note: '' }]
  ])('%s whose form is opened and sent unchanged is what it was, in any unit', (_, thing) => {
    for (const units of [metricUnits, us]) {
      const again = readDraft(thing.kind, draftOf(thing, units), units, NOW, thing)
      expect(again).toMatchObject({
        ok: true,
        thing: thing.kind === 'pot' ? { volumeML: expect.closeTo(8000, 2) } : thing
      })
    }
  })
})

describe('what is typed for a stock to be made', () => {
  const shelf = (...things: OnTheShelf[]) => things.map(({ item }) => ({ item, level: null, readOnly: null }))
  const stocks = shelf(
    new OnTheShelf('y', { type: 'AddThing', thing: stockY, level: 100 }),
    new OnTheShelf('b', { type: 'AddThing', thing: { ...stockY, name: 'stock B', percentWV: 2 }, level: 100 }),
    acidOf(5, 'v')
  )
  const wish: Wish = { ...emptyWish, name: 'stock G', dye: 'C.I. Acid Green', volumeML: '250' }
  const readIt = (change: Partial<Wish>) => readWish({ ...wish, ...change }, stocks, metricUnits, NOW)
  const fields = (change: Partial<Wish>) => {
    const found = readIt(change)
    return found.ok ? [] : Object.keys(found.problems).sort()
  }

  it('becomes a stock of today with its amounts', () => {
    expect(readIt({ percentWV: '0,5' })).toMatchObject({
      ok: true,
      thing: { percentWV: 0.5, madeOn: '2031-06-14' },
      plan: { making: { powderG: 1.25 } }
    })
  })

  it('a thinned one is the dye it was', () => {
    expect(readIt({ how: 'dilution', from: 'y', dye: '', percentWV: '0.1' })).toMatchObject({
      ok: true,
      thing: { dye: stockY.dye },
      plan: { making: { from: [{ itemId: 'y', volumeML: 25 }] } }
    })
  })

  it('is refused at the fields: from nothing, from an acid, stronger by water, no number', () => {
    expect(fields({ how: 'dilution', from: '' })).toEqual(['from'])
    expect(fields({ how: 'dilution', from: 'v' })).toEqual(['from'])
    expect(fields({ how: 'dilution', from: 'y', percentWV: '2' })).toEqual(['percentWV'])
    expect(fields({ volumeML: 'much', name: '' })).toEqual(['name', 'volumeML'])
  })

  it('says which row of a mix has no number, whatever rows are left empty', () => {
    const mix = [
      { itemId: '', parts: '1' },
      { itemId: 'y', parts: '3' },
      { itemId: 'b', parts: '0' }
    ]
    expect(fields({ how: 'mix', mix })).toEqual(['parts.2'])
    const right = readIt({ how: 'mix', mix: [mix[1], { itemId: 'b', parts: '1' }] as Wish['mix'] })
    expect(right).toMatchObject({ ok: true, thing: { parts: [{ name: 'stock Y', parts: 3 }, { parts: 1 }] } })
  })
})

describe('what is said of a level and an age', () => {
  const level: Level = {
    unit: 'mL',
    known: 500,
    knownAtMs: 0,
    drawn: 0,
    reserved: 0,
    left: 500,
    free: 500,
    otherUnits: false
  }
  // A figure and its unit stand together by a space that does not break.
  const plain = (text: string): string => text.replaceAll('\u00a0', ' ')
  const say = (change: Partial<Level>) => {
    const { left, more } = levelWords({ ...level, ...change }, metricUnits)
    return { left: plain(left), more: more.map(plain) }
  }

  it('a full bottle, a used one, one that pots wait for, one that they want more of', () => {
    expect(say({})).toEqual({ left: '500 mL left', more: [] })
    expect(say({ left: 470, free: 470 }).left).toBe('470 mL left of 500 mL')
    expect(say({ reserved: 50, free: 450 }).more).toEqual(['Pots that are on may take 50 mL of it.'])
    expect(say({ left: 20, reserved: 50, free: -30 }).more.at(-1)).toBe('That is 30 mL more than is left.')
  })

  it('never shows less than nothing: it says that the level is wrong', () => {
    expect(say({ left: -30, free: -30 })).toEqual({
      left: 'Nothing left',
      more: ['30 mL more was drawn than was there: correct the level.']
    })
  })

  it('an age is told in days, and nothing is ever called expired', () => {
    expect(ageWords('2031-06-02', NOW)).toBe('made 12 days ago')
    expect(ageWords('2031-06-13', NOW)).toBe('made yesterday')
    expect(ageWords(null, NOW)).toBe('age not known')
    expect(ageWords('2021-06-14', NOW)).toBe('made 3652 days ago')
  })
})
