// A pot without a protocol: told as it is done, called for while the heat is on, ended only by a person.
import { describe, expect, it } from 'vitest'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import { freeProgramme, freeProtocol, freeText, isFree } from '../../../src/core/protocol/free-pot.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { inputs } from '../protocol/made.ts'
import { Bench, types } from './given.ts'

function free(): Bench {
  const made = freeProgramme(inputs())
  if (!made.ok) throw new Error('no free pot')
  return Bench.start(made.programme)
}
const calls = (bench: Bench): string[] =>
  alertsDue(bench.state, bench.nowMs).map(({ kind, urgency }) => `${kind} ${urgency}`)

describe('a free pot', () => {
  it('runs by a text that the reader makes the same protocol of', () => {
    const read = readProtocol(freeText)
    expect(read).toEqual({ ok: true, protocol: freeProtocol })
  })

  it('stays open, and calls nobody while the heat is off', () => {
    const bench = free()
    bench.pass(11 * 60)
    expect(bench.open()).toEqual(['free'])
    expect(calls(bench)).toEqual([])
  })

  it('is called for after 12 h, in case it was forgotten', () => {
    const bench = free()
    bench.pass(12 * 60 + 1)
    expect(calls(bench)).toEqual(['call late'])
  })

  it('calls 15 min after the last deed while the heat is on, and is late and escalates 2 min after', () => {
    const bench = free()
    bench.do({ type: 'ChangeHeat', on: true, level: null })
    bench.pass(10)
    bench.do({ type: 'NoteDeed', word: 'turn', say: '' })
    bench.pass(14)
    expect(calls(bench)).toEqual([])
    bench.pass(1)
    expect(calls(bench)).toEqual(['look now'])
    bench.pass(3)
    expect(alertsDue(bench.state, bench.nowMs)).toMatchObject([{ kind: 'look', urgency: 'late', escalates: true }])
    bench.do({ type: 'MarkLooked', path: 'free' })
    expect(calls(bench)).toEqual([])
    bench.pass(15)
    expect(calls(bench)).toEqual(['look now'])
    bench.do({ type: 'ChangeHeat', on: false, level: null })
    bench.pass(120)
    expect(calls(bench)).toEqual([])
  })

  it('calls at the time that was asked for instead, for an hour at most', () => {
    const bench = free()
    bench.do({ type: 'ChangeHeat', on: true, level: null })
    const in30 = bench.nowMs + 30 * 60_000
    bench.do({ type: 'MoveDeadline', path: 'free', dueAtMs: in30, reason: 'call me in 30 min' })
    bench.pass(29)
    expect(calls(bench)).toEqual([])
    bench.pass(1)
    expect(calls(bench)).toContain('call now')
    bench.do({ type: 'NoteDeed', word: 'do', say: 'Stir the bath' })
    expect(calls(bench)).toEqual([])
    bench.do({ type: 'MoveDeadline', path: 'free', dueAtMs: bench.nowMs + 3 * 3_600_000, reason: 'later' })
    bench.pass(16)
    expect(calls(bench)).toEqual(['look now'])
  })

  it('moves the yarn where the word says so, and nothing else', () => {
    const bench = free()
    bench.do({ type: 'PutSkeinsIn', tags: ['S1'] })
    expect(types(bench.do({ type: 'NoteDeed', word: 'turn', say: '' }))).toEqual(['DeedDone'])
    bench.do({ type: 'NoteDeed', word: 'lower', say: '1/4 of the skein' })
    expect(bench.run).toMatchObject({ yarn: 'in', depth: 0.25, heatOn: false, doses: [] })
    bench.do({ type: 'NoteDeed', word: 'lift', say: '' })
    expect(bench.run.yarn).toBe('out')
    bench.do({ type: 'Undo' })
    expect(bench.run).toMatchObject({ yarn: 'in', depth: 0.25 })
  })

  it('refuses a depth that is none, an empty deed, and one that is too long', () => {
    const bench = free()
    const tried = [
      bench.try({ type: 'NoteDeed', word: 'lower', say: 'deep' }),
      bench.try({ type: 'NoteDeed', word: 'do', say: ' ' }),
      bench.try({ type: 'NoteDeed', word: 'do', say: 'x'.repeat(81) })
    ]
    expect(tried.map((one) => (one.ok ? 'taken' : one.refusal.code))).toEqual(['wrong-answer', 'empty', 'too-long'])
  })

  it('ends when a person says so; its record calls no addition unplanned', () => {
    const bench = free()
    bench.do({ type: 'AddUnplanned', amount: { value: 10, unit: 'mL', of: 'vinegar', asEntered: '10 mL' } })
    bench.pass(5)
    bench.do({ type: 'MarkDone', path: 'free' })
    expect(bench.run.stepsDone).toBe(true)
    bench.do({ type: 'Finish', bath: 'dropped' })
    const record = recordOf(bench.entries)
    expect(record && isFree(record.programme)).toBe(true)
    expect(record?.deviations).toEqual([])
    const words = record?.journal.map((line) => line.words.replaceAll('\u00a0', ' '))
    expect(words).toContain('10 mL of vinegar in.')
  })
})
