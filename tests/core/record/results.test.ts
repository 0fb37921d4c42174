import { describe, expect, it } from 'vitest'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { latestResults, readResult, resultKind } from '../../../src/core/record/results.ts'
import { mossFinished, mossRun } from './moss.ts'

const HOUR = 3_600_000
const record = (entries: Parameters<typeof recordOf>[0]): BatchRecord => {
  const read = recordOf(entries)
  if (!read) throw new Error('no record')
  return read
}
const rinses = (value: number) =>
  ({ type: 'TellResult', what: 'rinses', own: false, value: { kind: 'number', value, unit: '' } }) as const

describe('results told after the fact', () => {
  it('are taken of a finished pot, with how long after its end they were found', () => {
    const bench = mossFinished()
    bench.pass(14 * 60)
    bench.do(rinses(3))
    expect(record(bench.entries).results).toMatchObject([
      { what: 'rinses', label: 'Rinses', words: '3', afterEndMs: 14 * HOUR, said: { writtenLateMs: null } }
    ])
  })

  it('are marked late where they were found earlier than they were written', () => {
    const bench = mossFinished()
    bench.pass(14 * 60)
    bench.do(rinses(3), 14 * HOUR)
    expect(record(bench.entries).results).toMatchObject([{ afterEndMs: null, said: { writtenLateMs: 14 * HOUR } }])
  })

  it('keep the old value when they are corrected, with the reason', () => {
    const bench = mossFinished()
    bench.do(rinses(3))
    const told = bench.entries.at(-1)
    if (!told) throw new Error('nothing told')
    const entry = { writerId: told.writerId, seq: told.seq }
    bench.do({ type: 'Correct', entry, field: 'value.value', was: '3', now: '4', why: 'miscounted' })
    const read = record(bench.entries)
    expect(read.results).toMatchObject([{ words: '4' }])
    expect(read.corrections).toMatchObject([{ was: '3', now: '4', why: 'miscounted', applied: true }])
  })

  it('take no grade that does not exist, not by correction either', () => {
    const bench = mossFinished()
    bench.do({ type: 'TellResult', what: 'residue', own: false, value: { kind: 'text', text: 'tint' } })
    const { writerId = '', seq = 0 } = bench.entries.at(-1) ?? {}
    bench.do({ type: 'Correct', entry: { writerId, seq }, field: 'value.text', was: 'tint', now: 'purple', why: 'x' })
    const read = record(bench.entries)
    expect(read.results).toMatchObject([{ words: 'tint' }])
    expect(read.corrections).toMatchObject([{ applied: false }])
  })

  it('count for nothing once they are undone, and the last of one holds', () => {
    const bench = mossFinished()
    bench.do(rinses(3))
    bench.do(rinses(5))
    expect(latestResults(record(bench.entries).results).map(({ words }) => words)).toEqual(['5'])
    bench.do({ type: 'Undo' })
    expect(record(bench.entries).results.map(({ words }) => words)).toEqual(['3'])
  })

  it('are told while a pot still runs, and change nothing of its way', () => {
    const bench = mossRun()
    const open = bench.open()
    bench.do({ type: 'TellResult', what: 'Handle', own: true, value: { kind: 'text', text: 'soft' } })
    expect(bench.open()).toEqual(open)
    expect(record(bench.entries).results).toMatchObject([{ label: 'Handle', own: true, afterEndMs: null }])
  })

  it.each([
    ['no name', { what: ' ', value: { kind: 'text', text: 'soft' } }],
    ['no words', { what: 'Handle', value: { kind: 'text', text: ' ' } }],
    ['no number', { what: 'Handle', value: { kind: 'number', value: Number.NaN, unit: '' } }],
    ['a name too long', { what: 'x'.repeat(41), value: { kind: 'text', text: 'soft' } }],
    ['words too long', { what: 'Handle', value: { kind: 'text', text: 'x'.repeat(501) } }]
  ] as const)('%s is refused', (_, { what, value }) => {
    const tried = mossFinished().try({ type: 'TellResult', what, own: true, value })
    expect(tried).toMatchObject({ ok: false, refusal: { code: 'wrong-answer' } })
  })
})

describe('a result as typed', () => {
  it.each([
    ['ph', '5,2', { kind: 'number', value: 5.2, unit: '' }],
    ['dry-weight', '97.5 g', { kind: 'number', value: 97.5, unit: 'g' }],
    ['rinses', '3', { kind: 'number', value: 3, unit: '' }],
    ['bleed', 'trace', { kind: 'text', text: 'trace' }]
  ])('%s takes %s', (what, typed, value) => {
    expect(readResult(resultKind(what, false), false, typed)).toEqual({ ok: true, value })
  })

  it.each([
    ['ph', '15', 'from 0 to 14'],
    ['rinses', '2.5', 'a whole number'],
    ['rinses', 'three', 'a whole number'],
    ['dry-weight', '-4', 'in g'],
    ['bleed', 'grade 4', 'Choose none'],
    ['ph', '', 'is empty'],
    ['next-time', 'x'.repeat(501), 'At most 500']
  ])('%s does not take "%s", and says what would be right', (what, typed, say) => {
    const read = readResult(resultKind(what, false), false, typed)
    expect(read.ok ? '' : read.say).toContain(say)
  })

  it.each([
    ['12 cm', { kind: 'number', value: 12, unit: 'cm' }],
    ['−3,5', { kind: 'number', value: -3.5, unit: '' }],
    ['soft', { kind: 'text', text: 'soft' }],
    ['2 of 3 even', { kind: 'text', text: '2 of 3 even' }]
  ])('a field of the dyer’s own reads "%s"', (typed, value) => {
    expect(readResult(resultKind('Handle', true), true, typed)).toEqual({ ok: true, value })
  })
})
