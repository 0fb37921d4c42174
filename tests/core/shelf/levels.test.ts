import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawsOf } from '../../../src/core/shelf/draws.ts'
import { leftOn, reservedBy } from '../../../src/core/shelf/levels.ts'
import { Bench } from '../pot/given.ts'
import { act, dose, gradeOf, repeat, until } from '../pot/programmes.ts'
import { acidOf, bottle, from, merino, OnTheShelf, served, stockY } from './bottles.ts'

const mL = (value: number) => ({ value, unit: 'mL' as const, of: 'vinegar', asEntered: `${value} mL` })
const linesOf = (bench: Bench) => [{ potId: 'pot-a', draws: drawsOf(bench.entries) }]
const levelIn = (shelf: OnTheShelf, bench: Bench) =>
  leftOn([shelf.item], linesOf(bench), [bench.state]).get(shelf.itemId)

const twoDoses = (bottles = [bottle('a1')]) =>
  Bench.start(served([from('one', 30), from('two', 20), act('end')], { acid: bottles }))

describe('what is left of a thing', () => {
  it('is what was there less what was drawn; what a running pot may still take is reserved', () => {
    const bench = twoDoses()
    const shelf = acidOf(500)
    expect(levelIn(shelf, bench)).toMatchObject({
      known: 500,
      drawn: 0,
      left: 500,
      reserved: 50,
      free: 450,
      unit: 'mL'
    })
    bench.do({ type: 'MarkDone', path: 'one' })
    expect(levelIn(shelf, bench)).toMatchObject({ drawn: 30, left: 470, reserved: 20, free: 450 })
    bench.do({ type: 'MarkDone', path: 'two' })
    expect(levelIn(shelf, bench)).toMatchObject({ drawn: 50, left: 450, reserved: 0, free: 450 })
  })

  it('counts from the last correction: what was drawn before it is in the new figure already', () => {
    const bench = twoDoses()
    const shelf = acidOf(500)
    bench.pass(1)
    bench.do({ type: 'MarkDone', path: 'one' })
    bench.pass(1)
    shelf.nowMs = bench.nowMs
    shelf.do({ type: 'CorrectLevel', was: 470, now: 410, why: 'measured' })
    bench.pass(1)
    bench.do({ type: 'MarkDone', path: 'two' })
    expect(levelIn(shelf, bench)).toMatchObject({ known: 410, drawn: 20, left: 390 })
  })

  it('grows by what was put to it, and says below nothing where more was drawn than was there', () => {
    const bench = twoDoses()
    const shelf = acidOf(10)
    bench.do({ type: 'MarkDone', path: 'one' })
    expect(levelIn(shelf, bench)).toMatchObject({ left: -20 })
    shelf.do({ type: 'Refill', amount: 100 })
    expect(levelIn(shelf, bench)).toMatchObject({ known: 110, left: 80 })
  })

  it('is not told where nobody said how much there is, or where nothing is counted', () => {
    const ring = new OnTheShelf('ring', {
      type: 'AddThing',
      thing: { kind: 'burner', name: 'front left', heat: 'gas', note: '' },
      level: 3
    })
    expect(leftOn([acidOf(null).item, ring.item], [], []).size).toBe(0)
  })

  it('does not take grams off mL, and says that there were some', () => {
    const draws = [{ itemId: 'a1', atMs: Date.UTC(2032, 0), amount: 5, unit: 'g' as const }]
    expect(leftOn([acidOf(500).item], [{ potId: 'p', draws }], []).get('a1')).toMatchObject({
      left: 500,
      otherUnits: true
    })
  })

  it('is drawn from by a weaker stock made of it', () => {
    const strong = new OnTheShelf('s1', { type: 'AddThing', thing: stockY, level: 250 })
    const label = { itemId: 's1', name: 'stock Y', lot: 'Y-3', percentWV: 1, madeOn: '2031-06-01' }
    const making = {
      how: 'dilution' as const,
      volumeML: 250,
      powderG: null,
      powderLot: '',
      water: 'tap',
      from: [{ ...label, volumeML: 25 }]
    }
    const weak = new OnTheShelf('s2')
    weak.nowMs = strong.nowMs
    weak.do({ type: 'MakeStock', thing: { ...stockY, percentWV: 0.1 }, making })
    const levels = leftOn([strong.item, weak.item], [], [])
    expect(levels.get('s1')).toMatchObject({ left: 225 })
    expect(levels.get('s2')).toMatchObject({ left: 250 })
  })

  it('of yarn is grams, and goes down by the goods', () => {
    const wool = new OnTheShelf('wool', { type: 'AddThing', thing: merino, level: 1000 })
    const draws = [{ itemId: 'wool', atMs: Date.UTC(2032, 0), amount: 100, unit: 'g' as const }]
    expect(leftOn([wool.item], [{ potId: 'p', draws }], []).get('wool')).toMatchObject({ left: 900, unit: 'g' })
  })
})

describe('what is reserved', () => {
  it('is taken from two lots in their order, as far as the first still goes', () => {
    const bench = twoDoses([bottle('old', 40), bottle('new')])
    const reserved = () => Object.fromEntries(reservedBy([bench.state], linesOf(bench)))
    expect(reserved()).toEqual({ old: 40, new: 10 })
    bench.do({ type: 'MarkDone', path: 'one' })
    expect(reserved()).toEqual({ old: 10, new: 10 })
    bench.do({ type: 'Abort', reason: 'boiled over' })
    expect(reserved()).toEqual({})
  })

  it('counts every pass that may still come, and none that is over', () => {
    const run = served([until('clear', gradeOf('bath'), 3, [from('more', 10)]), act('end')], { acid: [bottle('a1')] })
    const bench = Bench.start(run)
    const reserved = () => reservedBy([bench.state], linesOf(bench)).get('a1') ?? 0
    expect(reserved()).toBe(30)
    bench.do({ type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'half', hue: null } })
    bench.do({ type: 'MarkDone', path: 'clear[1]/more' })
    expect(reserved()).toBe(20)
    bench.do({ type: 'AnswerStep', path: 'clear[2]/ask', answer: { kind: 'grade', grade: 'clear', hue: null } })
    expect(reserved()).toBe(0)
  })

  it('counts passed-over doses no more', () => {
    const bench = Bench.start(served([repeat('dips', 3, [from('dip', 10)]), act('end')], { acid: [bottle('a1')] }))
    bench.do({ type: 'Skip', path: 'dips[1]/dip', reason: 'enough' })
    expect(reservedBy([bench.state], linesOf(bench)).get('a1')).toBe(20)
  })

  it('is nothing for a pot that takes nothing off the shelf', () => {
    const bench = Bench.start(served([dose('one', 30), act('end')], {}))
    expect(reservedBy([bench.state], linesOf(bench)).size).toBe(0)
  })
})

describe('for any day (seed 7)', () => {
  it('what is free does not change by a planned dose being given as planned, and left is known less drawn', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 400 }),
        (amounts, upTo, there) => {
          const steps = amounts.map((amount, i) => from(`d${i}`, amount))
          const bench = Bench.start(served([...steps, act('end')], { acid: [bottle('a1', upTo), bottle('a2')] }))
          const shelf = [acidOf(there, 'a1'), acidOf(there, 'a2')]
          const levels = () =>
            leftOn(
              shelf.map(({ item }) => item),
              linesOf(bench),
              [bench.state]
            )
          const free = [...levels().values()].map((level) => level.free)
          for (const i of amounts.keys()) {
            bench.pass(1)
            bench.do({ type: 'MarkDone', path: `d${i}`, added: mL(amounts[i] ?? 0) })
            const now = [...levels().values()]
            now.forEach((level, at) => {
              expect(level.free).toBeCloseTo(free[at] ?? 0, 9)
              expect(level.left).toBeCloseTo(level.known - level.drawn, 9)
            })
          }
        }
      ),
      { seed: 7, numRuns: 60 }
    )
  })

  it('the order in which draws are told does not matter, only when they were made', () => {
    const draw = fc.record({ atMs: fc.integer({ min: Date.UTC(2031, 0), max: Date.UTC(2032, 0) }), amount: fc.nat(90) })
    const shelf = acidOf(300)
    shelf.nowMs = Date.UTC(2031, 6)
    shelf.do({ type: 'CorrectLevel', was: 300, now: 200, why: 'measured' })
    fc.assert(
      fc.property(fc.array(draw, { maxLength: 12 }), (all) => {
        const lines = (list: typeof all) =>
          list.map((one, i) => ({ potId: `${i}`, draws: [{ ...one, itemId: 'a1', unit: 'mL' as const }] }))
        const left = leftOn([shelf.item], lines(all), []).get('a1')?.left
        expect(leftOn([shelf.item], lines([...all].reverse()), []).get('a1')?.left).toBe(left)
        const since = all.filter(({ atMs }) => atMs > Date.UTC(2031, 6))
        expect(left).toBe(200 - since.reduce((sum, { amount }) => sum + amount, 0))
      }),
      { seed: 7, numRuns: 60 }
    )
  })
})
