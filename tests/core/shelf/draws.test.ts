import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { drawsOf } from '../../../src/core/shelf/draws.ts'
import { Bench } from '../pot/given.ts'
import { act, dose } from '../pot/programmes.ts'
import { bottle, from, served } from './bottles.ts'

const mL = (value: number, of = 'vinegar') => ({ value, unit: 'mL' as const, of, asEntered: `${value} mL` })
const drawn = (bench: Bench): Record<string, number> => {
  const sums: Record<string, number> = {}
  for (const { itemId, amount } of drawsOf(bench.entries)) sums[itemId] = (sums[itemId] ?? 0) + amount
  return sums
}
const entryOf = (bench: Bench, type: string) => {
  const entry = bench.entries.findLast(({ event }) => event.type === type)
  return { writerId: 'w', seq: entry?.seq ?? 0 }
}
const acidTwice = () => served([from('a1', 30), from('a2', 30), act('end')], { acid: [bottle('x')] })

describe('what a pot drew off the shelf', () => {
  it('is what really went in, out of the bottle that serves the material', () => {
    const bench = Bench.start(acidTwice())
    expect(drawn(bench)).toEqual({})
    bench.do({ type: 'MarkDone', path: 'a1', added: mL(28) })
    bench.do({ type: 'MarkDone', path: 'a2' })
    expect(drawn(bench)).toEqual({ x: 58 })
    expect(drawsOf(bench.entries)[0]).toMatchObject({ unit: 'mL', atMs: bench.nowMs })
  })

  it('leaves out what was undone, and an undone dose that is done again counts once', () => {
    const bench = Bench.start(acidTwice())
    bench.do({ type: 'MarkDone', path: 'a1' })
    bench.do({ type: 'Undo' })
    expect(drawn(bench)).toEqual({})
    bench.do({ type: 'MarkDone', path: 'a1', added: mL(25) })
    expect(drawn(bench)).toEqual({ x: 25 })
  })

  it('goes by the last correction that says a number, and by the old amount where it says none', () => {
    const bench = Bench.start(acidTwice())
    bench.do({ type: 'MarkDone', path: 'a1' })
    const entry = entryOf(bench, 'Dosed')
    const correct = (now: string) =>
      bench.do({ type: 'Correct', entry, field: 'added.value', was: '30', now, why: 'read again' })
    correct('12.5')
    expect(drawn(bench)).toEqual({ x: 12.5 })
    correct('a lot')
    expect(drawn(bench)).toEqual({ x: 12.5 })
    correct('13')
    expect(drawn(bench)).toEqual({ x: 13 })
  })

  it('moves to the other bottle where the record is corrected to it', () => {
    const run = served([from('a1', 30), act('end')], {
      acid: [bottle('x')],
      other: [bottle('y', null, { name: 'citric' })]
    })
    const bench = Bench.start(run)
    bench.do({ type: 'MarkDone', path: 'a1' })
    bench.do({
      type: 'Correct',
      entry: entryOf(bench, 'Dosed'),
      field: 'of',
      was: 'vinegar',
      now: 'citric',
      why: 'cup'
    })
    expect(drawn(bench)).toEqual({ y: 30 })
  })

  it('is drawn by the pot it was meant for, and not by the one it went into', () => {
    const plum = Bench.start(acidTwice())
    plum.do({ type: 'ReportAddedElsewhere', path: 'a1', amount: mL(30), toPotId: 'moss' })
    expect(drawn(plum)).toEqual({ x: 30 })
    plum.do({ type: 'MarkDone', path: 'a1' })
    expect(drawn(plum)).toEqual({ x: 60 })
    const moss = Bench.start(acidTwice())
    moss.do({ type: 'AddUnplanned', amount: mL(30), fromPotId: 'plum' })
    expect(drawn(moss)).toEqual({})
  })

  it('empties the first of two lots before it goes on with the second, whatever the doses are', () => {
    const bench = Bench.start(
      served([from('a1', 30), from('a2', 30), act('end')], { acid: [bottle('old', 40), bottle('new')] })
    )
    bench.do({ type: 'MarkDone', path: 'a1' })
    expect(drawn(bench)).toEqual({ old: 30 })
    bench.do({ type: 'MarkDone', path: 'a2' })
    expect(drawn(bench)).toEqual({ old: 40, new: 20 })
    bench.do({ type: 'AddUnplanned', amount: mL(5) })
    expect(drawn(bench)).toEqual({ old: 40, new: 25 })
  })

  it('asks the last bottle for what is more than all were to give: nothing is drawn from nowhere', () => {
    const bench = Bench.start(served([from('a1', 30), act('end')], { acid: [bottle('old', 10), bottle('new', 10)] }))
    bench.do({ type: 'MarkDone', path: 'a1' })
    expect(drawn(bench)).toEqual({ old: 10, new: 20 })
  })

  it('draws a mix from the stocks it is mixed of', () => {
    const mix = dose('dye', 40, 'mixed', {
      dose: {
        amount: mL(40, 'mixed'),
        cup: null,
        setOutId: 'mix',
        from: [
          { material: 'Y', each: 0.75 },
          { material: 'B', each: 0.25 }
        ]
      }
    })
    const bench = Bench.start(
      served([mix, act('end')], {
        Y: [bottle('y', null, { name: 'stock Y' })],
        B: [bottle('b', null, { name: 'stock B' })]
      })
    )
    bench.do({ type: 'MarkDone', path: 'dye' })
    expect(drawn(bench)).toEqual({ y: 30, b: 10 })
  })

  it('takes an unplanned dose from the bottle that was told, else from the one that is called so', () => {
    const bench = Bench.start(acidTwice())
    bench.do({ type: 'AddUnplanned', amount: mL(7, 'salt water'), itemId: 'z' })
    bench.do({ type: 'AddUnplanned', amount: mL(3) })
    bench.do({ type: 'AddUnplanned', amount: mL(9, 'something else') })
    expect(drawn(bench)).toEqual({ z: 7, x: 3 })
  })

  it('takes the goods, by their corrected weight, from the yarn that was chosen; vessel and burner are only used', () => {
    const bench = Bench.start(acidTwice())
    const [first] = bench.entries
    if (first?.event.type !== 'PotStarted') throw new Error('no start')
    const use = { lot: '', about: '' }
    first.event.pot.uses = [
      { ...use, kind: 'yarn', itemId: 'wool', name: 'base A' },
      { ...use, kind: 'burner', itemId: 'ring', name: 'front left' }
    ]
    expect(drawsOf(bench.entries)).toMatchObject([
      { itemId: 'wool', amount: 100, unit: 'g' },
      { itemId: 'ring', amount: 0, unit: 'use' }
    ])
    const entry = { writerId: 'w', seq: 1 }
    bench.do({ type: 'Correct', entry, field: 'pot.skeins.0.massG', was: '100', now: '96', why: 'tag was on' })
    expect(drawsOf(bench.entries)[0]).toMatchObject({ itemId: 'wool', amount: 96 })
  })

  it('is, for any day, what the record says went in (seed 20310614)', () => {
    const deed = fc.oneof(
      fc.record({ kind: fc.constant('dose' as const), mL: fc.integer({ min: 1, max: 60 }) }),
      fc.record({ kind: fc.constant('unplanned' as const), mL: fc.integer({ min: 1, max: 60 }) }),
      fc.record({ kind: fc.constant('elsewhere' as const), mL: fc.integer({ min: 1, max: 60 }) }),
      fc.record({ kind: fc.constant('foreign' as const), mL: fc.integer({ min: 1, max: 60 }) }),
      fc.record({ kind: fc.constant('undo' as const), mL: fc.constant(0) }),
      fc.record({ kind: fc.constant('correct' as const), mL: fc.integer({ min: 0, max: 60 }) })
    )
    const steps = Array.from({ length: 8 }, (_, i) => from(`a${i}`, 10))
    let doses = 0
    fc.assert(
      fc.property(fc.array(deed, { maxLength: 20 }), fc.integer({ min: 0, max: 200 }), (deeds, upTo) => {
        const bench = Bench.start(served([...steps, act('end')], { acid: [bottle('old', upTo), bottle('new')] }))
        for (const { kind, mL: value } of deeds) {
          bench.pass(1)
          const path = bench.open()[0] ?? ''
          const entry = entryOf(bench, 'Dosed')
          if (kind === 'dose' && path.startsWith('a')) bench.do({ type: 'MarkDone', path, added: mL(value) })
          if (kind === 'unplanned') bench.do({ type: 'AddUnplanned', amount: mL(value) })
          if (kind === 'elsewhere') bench.do({ type: 'ReportAddedElsewhere', path, amount: mL(value), toPotId: 'moss' })
          if (kind === 'foreign') bench.do({ type: 'AddUnplanned', amount: mL(value), fromPotId: 'moss' })
          if (kind === 'undo') bench.try({ type: 'Undo' })
          if (kind === 'correct' && entry.seq > 0) {
            bench.do({ type: 'Correct', entry, field: 'added.value', was: '', now: String(value), why: 'x' })
          }
        }
        const record = recordOf(bench.entries)
        const mine = record?.amounts.filter(({ fate, otherPotId }) => fate === 'elsewhere' || otherPotId === null) ?? []
        const came = mine.reduce((sum, { added }) => sum + (added?.value ?? 0), 0)
        const { old = 0, new: rest = 0 } = drawn(bench)
        expect(old + rest).toBeCloseTo(came, 9)
        expect(old).toBeCloseTo(Math.min(came, upTo), 9)
        doses += mine.length
      }),
      { seed: 20310614, numRuns: 150 }
    )
    expect(doses).toBeGreaterThan(500)
  })
})
