import { describe, expect, it } from 'vitest'
import { dayActs } from '../../../src/core/record/day-acts.ts'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { Bench, T0 } from '../pot/given.ts'
import { moss, mossFinished } from './moss.ts'

const minute = (atMs: number | null): number | null => (atMs === null ? null : (atMs - T0) / 60_000)
const of = (bench: Bench) => dayActs(recordOf(bench.entries) as BatchRecord)

describe('the acts of a day', () => {
  it('are all that want a person, at their planned times, with what goes in; a wait is none', () => {
    const acts = of(Bench.start(moss()))
    expect(acts.map(({ label, atMs, doneAtMs }) => [label, minute(atMs), doneAtMs])).toEqual([
      ['Acid 1', 0, null],
      // Hands half a minute for each act and each question, a whole one to bring the skein in; 60 degrees at 2 a minute.
      ['80 °C', 0.5, null],
      ['All in', 30.5, null],
      ['Acid 2', 41.5, null],
      ['ask', 42, null],
      ['Acid more', 42.5, null],
      ['ask', 53, null],
      ['Heat off', 53.5, null],
      ['Cup', 54, null]
    ])
    expect(acts[0]?.amount).toMatchObject({ value: 30, unit: 'mL', of: 'vinegar' })
  })

  it('tell when each was done, and are in the order of their times', () => {
    const acts = of(mossFinished())
    expect(acts.map(({ label, doneAtMs }) => [label, minute(doneAtMs)])).toContainEqual(['Acid 2', 49])
    // The bath was clear at the second look: what was planned after it and was not wanted is not left to be ticked.
    expect(acts.every((act) => act.doneAtMs !== null)).toBe(true)
    expect(acts.map((act) => act.atMs)).toEqual(acts.map((act) => act.atMs).sort((a, b) => a - b))
  })

  it('leave nothing to tick once a batch has ended early', () => {
    const bench = Bench.start(moss())
    bench.do({ type: 'MarkDone', path: 'A1' })
    expect(of(bench).length).toBeGreaterThan(5)
    bench.do({ type: 'Abort', reason: 'boiled over' })
    expect(
      of(bench)
        .filter((act) => act.doneAtMs === null)
        .map((act) => act.label)
    ).not.toContain('Acid 2')
  })
})
