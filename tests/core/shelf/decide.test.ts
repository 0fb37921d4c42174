import { describe, expect, it } from 'vitest'
import { ageDays } from '../../../src/core/shelf/age.ts'
import type { ShelfCommand } from '../../../src/core/shelf/commands.ts'
import type { Acid, Thing } from '../../../src/core/shelf/thing.ts'
import { T0 } from '../pot/given.ts'
import { acidOf, merino, OnTheShelf, stockY, vinegar } from './bottles.ts'

const add = (thing: Thing, level: number | null = null) => new OnTheShelf('i1').try({ type: 'AddThing', thing, level })
const fieldsOf = (decision: ReturnType<OnTheShelf['try']>): string[] =>
  decision.ok ? [] : decision.refusal.problems.map(({ field }) => field)

describe('a thing that is to stand on the shelf', () => {
  const water: Thing = { kind: 'water', name: 'tap', alkalinityMgPerL: 180, source: 'test strip', note: '' }
  const pot: Thing = { kind: 'pot', name: 'big one', volumeML: 8000, material: 'steel', lid: true, note: '' }
  const strong: Acid = { ...vinegar, percent: 80, basis: 'w/w', densityGPerML: 1.07 }
  const powder: Acid = { ...vinegar, form: 'powder', acid: 'citric', percent: null }

  it.each<[string, Thing]>([
    ['a stock', stockY],
    ['a stock nobody knows the age of', { ...stockY, madeOn: null, lot: '' }],
    ['vinegar', vinegar],
    ['an acid in % w/w with its density', strong],
    ['an acid powder', powder],
    ['yarn', merino],
    ['water', water],
    ['water nobody measured', { ...water, alkalinityMgPerL: null, source: '' }],
    ['a vessel', pot],
    ['a burner', { kind: 'burner', name: 'front left', heat: 'gas', note: '' }]
  ])('is taken: %s', (_, thing) => {
    expect(add(thing)).toMatchObject({ ok: true, events: [{ type: 'ShelfItemAdded', thing }] })
  })

  it.each<[string, Thing, string[]]>([
    [
      'no name, no dye, no strength, all at once',
      { ...stockY, name: ' ', dye: '', percentWV: 0 },
      ['name', 'dye', 'percentWV']
    ],
    ['over 100 %', { ...stockY, percentWV: 101 }, ['percentWV']],
    ['a strength that is no number', { ...stockY, percentWV: Number.NaN }, ['percentWV']],
    ['a day that is none', { ...stockY, madeOn: '2031-02-30' }, ['madeOn']],
    ['a day in words', { ...stockY, madeOn: 'yesterday' }, ['madeOn']],
    ['a day to come', { ...stockY, madeOn: '2031-06-20' }, ['madeOn']],
    ['a part of nothing', { ...stockY, parts: [{ name: 'Y', parts: 0, itemId: null }] }, ['parts']],
    ['a liquid acid without strength', { ...vinegar, percent: null }, ['percent']],
    ['% w/w without density', { ...strong, densityGPerML: null }, ['densityGPerML']],
    ['a density of lead', { ...strong, densityGPerML: 11 }, ['densityGPerML']],
    ['yarn of nothing', { ...merino, fibre: '' }, ['fibre']],
    ['an alkalinity from nowhere', { ...water, source: '' }, ['source']],
    ['sea water', { ...water, alkalinityMgPerL: 40_000 }, ['alkalinityMgPerL']],
    ['a pot of no size', { ...pot, volumeML: 0 }, ['volumeML']],
    ['a name as long as a letter', { ...merino, name: 'x'.repeat(81) }, ['name']]
  ])('is refused at its field: %s', (_, thing, fields) => {
    expect(fieldsOf(add(thing))).toEqual(fields)
  })

  it('names the wrong level beside all else, and has none where nothing is counted', () => {
    expect(fieldsOf(add({ ...vinegar, name: '' }, -1))).toEqual(['name', 'level'])
    expect(add(water, 5)).toMatchObject({ events: [{ level: null }] })
  })
})

describe('a thing on the shelf', () => {
  it('hears a command once: a repeated one changes nothing', () => {
    const shelf = acidOf(500)
    const correct: ShelfCommand = { type: 'CorrectLevel', was: 500, now: 400, why: 'spilled' }
    expect(shelf.do(correct, 'tap')).toHaveLength(1)
    expect(shelf.do(correct, 'tap')).toEqual([])
    expect(shelf.item.marks).toHaveLength(2)
    expect(shelf.do({ type: 'AddThing', thing: vinegar, level: 500 }, 'c1')).toEqual([])
  })

  it('keeps the old level and the reason when it is corrected, and wants a reason', () => {
    const shelf = acidOf(500)
    expect(fieldsOf(shelf.try({ type: 'CorrectLevel', was: 500, now: -3, why: ' ' }))).toEqual(['now', 'why'])
    shelf.do({ type: 'CorrectLevel', was: 470, now: 400, why: ' spilled ' })
    expect(shelf.item.marks.at(-1)).toMatchObject({ kind: 'corrected', was: 470, amount: 400, why: 'spilled' })
  })

  it('keeps what its label said before it was changed', () => {
    const shelf = acidOf(500)
    shelf.do({ type: 'ChangeThing', thing: { ...vinegar, percent: 6 }, why: 'read the label again' })
    expect(shelf.item).toMatchObject({
      thing: { percent: 6 },
      changes: [{ was: { percent: 5 }, why: 'read the label again' }]
    })
    expect(shelf.try({ type: 'ChangeThing', thing: merino, why: '' }).ok).toBe(false)
  })

  it('is put away and brought back, used up, thrown out; only once each', () => {
    const shelf = acidOf(500)
    expect(shelf.try({ type: 'BringBack' })).toMatchObject({ refusal: { code: 'not-away' } })
    shelf.do({ type: 'PutAway', why: 'summer' })
    expect(shelf.try({ type: 'PutAway', why: '' })).toMatchObject({ refusal: { code: 'away' } })
    expect(shelf.item).toMatchObject({ status: 'away', how: 'put away', why: 'summer' })
    shelf.do({ type: 'BringBack' })
    expect(shelf.item.status).toBe('here')
    shelf.do({ type: 'UseUp', was: 4 })
    expect(shelf.item).toMatchObject({ how: 'used up' })
    expect(shelf.item.marks.at(-1)).toMatchObject({ amount: 0, was: 4 })
    shelf.do({ type: 'BringBack' })
    shelf.do({ type: 'Discard', was: 0, how: 'to the waste point' })
    expect(shelf.item).toMatchObject({ how: 'discarded', why: 'to the waste point' })
  })

  it('refuses what is not there, and a second of the same id', () => {
    expect(new OnTheShelf('i9').try({ type: 'PutAway', why: '' })).toMatchObject({ refusal: { code: 'not-there' } })
    expect(acidOf(1).try({ type: 'AddThing', thing: vinegar, level: 1 })).toMatchObject({
      refusal: { code: 'there-already' }
    })
  })

  it('a stock is never topped up: made anew it has a lot and a day of its own', () => {
    const shelf = new OnTheShelf('s1', { type: 'AddThing', thing: stockY, level: 100 })
    expect(shelf.try({ type: 'Refill', amount: 50 })).toMatchObject({ refusal: { code: 'not-counted' } })
  })
})

describe('making a stock', () => {
  const powder = { how: 'powder' as const, volumeML: 250, powderG: 2.5, powderLot: 'P1', from: [], water: 'tap' }

  it('is kept with what was weighed in, and fills the bottle', () => {
    const shelf = new OnTheShelf('s1', { type: 'MakeStock', thing: stockY, making: powder })
    expect(shelf.item).toMatchObject({ making: powder, marks: [{ kind: 'made', amount: 250 }] })
  })

  it('is refused where nothing is weighed, made from nothing, or more is poured than it holds', () => {
    const shelf = new OnTheShelf('s1')
    const make = (making: object) =>
      fieldsOf(shelf.try({ type: 'MakeStock', thing: stockY, making: { ...powder, ...making } }))
    expect(make({ powderG: null })).toEqual(['powderG'])
    expect(make({ how: 'dilution' })).toEqual(['from'])
    const from = [{ itemId: 's0', volumeML: 300, name: 'stock Y', lot: '', percentWV: 1, madeOn: null }]
    expect(make({ how: 'dilution', from })).toEqual(['volumeML'])
  })
})

describe('the age of a stock', () => {
  it('is days of the calendar, and is not known where the day is not', () => {
    expect(ageDays('2031-06-01', '2031-06-14')).toBe(13)
    expect(ageDays('2031-06-14', '2031-06-14')).toBe(0)
    expect(ageDays('2031-03-29', '2031-03-31')).toBe(2)
    expect(ageDays('2031-06-15', '2031-06-14')).toBe(0)
    expect(ageDays(null, '2031-06-14')).toBeNull()
    expect(ageDays('soon', '2031-06-14')).toBeNull()
  })

  it('a day that has begun somewhere on earth has begun', () => {
    const shelf = new OnTheShelf('s1')
    shelf.nowMs = T0
    expect(shelf.try({ type: 'AddThing', thing: { ...stockY, madeOn: '2031-06-14' }, level: null }).ok).toBe(true)
  })
})
