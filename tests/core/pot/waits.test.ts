import { describe, expect, it } from 'vitest'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import type { PotEvent } from '../../../src/core/pot/events.ts'
import { Bench, T0 } from './given.ts'
import { act, alongside, ask, gradeOf, MIN, programme, until, wait } from './programmes.ts'

const byPerson = { kind: 'person', ask: 'is it so' } as const

const closing = (pot: Bench, path: string): number | null => {
  const closed = pot.entries.find(({ event }) => event.type === 'StepClosed' && event.path === path)
  return closed === undefined ? null : (closed.atMs - T0) / MIN
}

describe('a wait with a condition keeps its own time', () => {
  it('though held time that does not count came before the condition', () => {
    const pot = Bench.start(programme([wait('hold', 20 * MIN, { until: [byPerson] }), act('x')]))
    pot.pass(5)
    pot.do({ type: 'Hold', reason: null })
    pot.pass(10)
    pot.do({ type: 'Resume', heldTimeCounts: false })
    pot.pass(1)
    pot.do({ type: 'MarkDone', path: 'hold' })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(30)
  })

  it('though it began again after trouble', () => {
    const pot = Bench.start(programme([wait('hold', 20 * MIN, { until: [byPerson] }), act('x')]))
    pot.pass(15)
    pot.do({ type: 'CallTrouble', kind: 'power-cut' })
    pot.do({ type: 'SettleTrouble', beganAtMs: pot.nowMs, tempC: null, outcome: 'restart-step' })
    pot.pass(10)
    pot.do({ type: 'MarkDone', path: 'hold' })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(35)
  })

  it('though the dyer moved its end', () => {
    const pot = Bench.start(programme([wait('hold', 20 * MIN, { until: [byPerson] }), act('x')]))
    pot.do({ type: 'MoveDeadline', path: 'hold', dueAtMs: T0 + 40 * MIN, reason: 'thick yarn' })
    pot.pass(25)
    pot.do({ type: 'MarkDone', path: 'hold' })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(40)
  })

  it('though the moment that it counts from lies long ago: never under its least', () => {
    const held = wait('hold', 10 * MIN, { from: 'in', leastMs: 6 * MIN, until: [byPerson] })
    const pot = Bench.start(programme([act('in'), wait('rest', 30 * MIN), held, act('x')]))
    pot.do({ type: 'MarkDone', path: 'in' })
    pot.pass(31)
    pot.do({ type: 'MarkDone', path: 'hold' })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(36)
  })

  it('though a reading came before the moment that it counts from', () => {
    const cool = { kind: 'temperature', lowC: null, highC: 40, going: 'down' } as const
    const held = wait('hold', 20 * MIN, { from: 'in', until: [cool] })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.do({ type: 'ReadTemperature', tempC: 60 })
    pot.pass(10)
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    pot.do({ type: 'ReadTemperature', tempC: 38 })
    pot.pass(60)
    expect(closing(pot, 'both.b/hold')).toBe(30)
  })

  it('and is not over before the moment that it waits for, whatever was read meanwhile', () => {
    const cool = { kind: 'temperature', lowC: null, highC: 40, going: 'down' } as const
    const held = wait('hold', 5 * MIN, { until: [cool, { kind: 'moment', name: 'in' }] })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.do({ type: 'ReadTemperature', tempC: 60 })
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 38 })
    // What is lacking is the moment: nobody is called to this wait for it.
    pot.pass(30)
    expect(alertsDue(pot.state, pot.nowMs).map((a) => a.path)).toEqual(['both.a/in'])
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    pot.pass(0)
    expect(closing(pot, 'both.b/hold')).toBe(40)
  })
})

describe('a wait that was answered for some minutes ago', () => {
  it.each([
    ['with a time of its own', 5 * MIN],
    ['without', null]
  ])('%s: ends with the moment that came since', (_, forMs) => {
    const held = wait('hold', forMs, { until: [byPerson, { kind: 'moment', name: 'in' }] })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.pass(10)
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    pot.pass(2)
    pot.do({ type: 'MarkDone', path: 'both.b/hold' }, 4 * MIN)
    pot.pass(0)
    expect(closing(pot, 'both.b/hold')).toBe(10)
  })
})

describe('a wait that lacks only a moment', () => {
  it('calls nobody when its time is moved, and ends with the moment but not before the new time', () => {
    const held = wait('hold', 20 * MIN, { until: [{ kind: 'moment', name: 'in' }] })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.do({ type: 'MoveDeadline', path: 'both.b/hold', dueAtMs: T0 + 30 * MIN, reason: 'thick yarn' })
    pot.pass(10)
    expect(alertsDue(pot.state, pot.nowMs).map((a) => a.path)).toEqual(['both.a/in'])
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    pot.pass(60)
    expect(closing(pot, 'both.b/hold')).toBe(30)
  })

  it('is not moved to end before that moment came', () => {
    const held = wait('hold', 20 * MIN, { until: [{ kind: 'moment', name: 'in' }] })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.pass(12)
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    const dueAtMs = T0 + 11 * MIN
    expect(pot.try({ type: 'MoveDeadline', path: 'both.b/hold', dueAtMs, reason: 'thin yarn' })).toMatchObject({
      ok: false,
      refusal: { code: 'out-of-range' }
    })
  })
})

describe('a wait that lacks only a moment and was outside its range', () => {
  it('calls nobody once it is inside again', () => {
    const setPoint = { lowC: 85, highC: 90, outside: 'stop-count' } as const
    const held = wait('hold', 20 * MIN, { until: [{ kind: 'moment', name: 'in' }], setPoint })
    const pot = Bench.start(programme([alongside('both', { a: [act('in')], b: [held] }), act('x')]))
    pot.pass(5)
    pot.do({ type: 'ReadTemperature', tempC: 80 })
    pot.pass(5)
    pot.do({ type: 'ReadTemperature', tempC: 86 })
    pot.pass(40)
    expect(alertsDue(pot.state, pot.nowMs).map((a) => a.path)).toEqual(['both.a/in'])
    pot.do({ type: 'MarkDone', path: 'both.a/in' })
    pot.pass(0)
    expect(closing(pot, 'both.b/hold')).toBe(50)
  })
})

describe('a count that stands still outside its range', () => {
  const hold = wait('hold', 30 * MIN, { setPoint: { lowC: 85, highC: 90, outside: 'stop-count' } })

  it('does not stand in silence: the next reading is called for, again and again', () => {
    const pot = Bench.start(programme([hold, act('x')]))
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 80 })
    pot.pass(6)
    expect(alertsDue(pot.state, pot.nowMs).map((a) => [a.kind, a.path])).toEqual([['call', 'hold']])
    pot.do({ type: 'ReadTemperature', tempC: 82 })
    expect(alertsDue(pot.state, pot.nowMs)).toEqual([])
    pot.pass(6)
    expect(alertsDue(pot.state, pot.nowMs)).toHaveLength(1)
    pot.do({ type: 'ReadTemperature', tempC: 86 })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(42)
  })

  it('is not ended by a condition that is met meanwhile', () => {
    const asked = wait('hold', 30 * MIN, {
      until: [byPerson],
      setPoint: { lowC: 85, highC: 90, outside: 'stop-count' }
    })
    const pot = Bench.start(programme([asked, act('x')]))
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 80 })
    pot.do({ type: 'MarkDone', path: 'hold' })
    pot.pass(40)
    pot.do({ type: 'ReadTemperature', tempC: 86 })
    pot.pass(60)
    expect(closing(pot, 'hold')).toBe(70)
  })
})

describe('an until whose passes have nothing in them', () => {
  it('asks as often as it may before it gives up', () => {
    const pot = Bench.start(
      programme([until('clear', gradeOf('bath'), 2, [], [act('pour')]), ask('q', gradeOf('bath'))])
    )
    const strong = (path: string): PotEvent[] =>
      pot.do({ type: 'AnswerStep', path, answer: { kind: 'grade', grade: 'strong', hue: null } })
    strong('clear[1]/ask')
    strong('clear[2]/ask')
    expect(pot.open()).toEqual(['clear[3]/ask'])
    strong('clear[3]/ask')
    expect(pot.open()).toEqual(['clear.otherwise/pour'])
  })
})
