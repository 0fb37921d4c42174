import { describe, expect, it } from 'vitest'
import { alertsDue } from '../../../src/core/pot/alerts-due.ts'
import { lookAhead } from '../../../src/core/pot/catch-up.ts'
import { fold } from '../../../src/core/pot/fold.ts'
import { nextDue } from '../../../src/core/pot/next-due.ts'
import { Bench, T0 } from './given.ts'
import { act, alongside, dose, MIN, programme, wait } from './programmes.ts'

describe('held: the procedure stops, the chemistry does not', () => {
  const hold = () => Bench.start(programme([wait('hold', 10 * MIN), act('x')]))

  it('closes no step while stopped, and refuses acts', () => {
    const pot = hold()
    pot.do({ type: 'Hold', reason: null })
    pot.pass(20)
    expect(pot.open()).toEqual(['hold'])
    const refused = pot.try({ type: 'EndEarly', path: 'hold', reason: 'x' })
    expect(refused.ok ? null : refused.refusal.code).toBe('stopped')
  })

  it('still calls at the end of a hold while the heat is on', () => {
    const pot = hold()
    pot.do({ type: 'ChangeHeat', on: true, level: null })
    pot.do({ type: 'Hold', reason: null })
    const told = pot.pass(20)
    expect(told.filter((e) => e.type === 'AlertRaised' && e.kind === 'heat')).toHaveLength(1)
  })

  it('held time that counts leaves the deadline where it was', () => {
    const pot = hold()
    pot.pass(2)
    pot.do({ type: 'Hold', reason: null })
    pot.pass(3)
    pot.do({ type: 'Resume', heldTimeCounts: true })
    expect(pot.due('hold')).toBe(10)
  })

  it('held time that does not count moves the deadline by it', () => {
    const pot = hold()
    pot.pass(2)
    pot.do({ type: 'Hold', reason: null })
    pot.pass(30)
    pot.do({ type: 'Resume', heldTimeCounts: false })
    expect(pot.due('hold')).toBe(40)
  })
})

describe('undo', () => {
  it('withdraws the latest command and all that came of it, and nothing else', () => {
    const pot = Bench.start(programme([dose('A1', 30), wait('hold', 5 * MIN), act('x')]))
    pot.do({ type: 'MarkDone', path: 'A1' })
    pot.pass(6)
    expect(pot.open()).toEqual(['x'])
    pot.do({ type: 'Undo' })
    expect(pot.open()).toEqual(['A1'])
    expect(pot.run.doses).toEqual([])
  })

  it('keeps what the clock did in another branch at its own time', () => {
    const pot = Bench.start(programme([alongside('both', { a: [act('a')], b: [wait('w', 5 * MIN), act('b')] })]))
    pot.pass(4)
    pot.do({ type: 'MarkDone', path: 'both.a/a' })
    pot.pass(2)
    pot.do({ type: 'Undo' })
    pot.pass(0)
    expect(pot.open().sort()).toEqual(['both.a/a', 'both.b/b'])
    expect(pot.due('both.b/b')).toBe(5)
  })

  it('does not undo the start, and a withdrawn tap that comes again does nothing', () => {
    const pot = Bench.start(programme([act('x')]))
    const refused = pot.try({ type: 'Undo' })
    expect(refused.ok ? null : refused.refusal.code).toBe('nothing-to-undo')
    pot.do({ type: 'MarkDone', path: 'x' }, 0, 'tap')
    pot.do({ type: 'Undo' })
    expect(pot.do({ type: 'MarkDone', path: 'x' }, 0, 'tap')).toEqual([])
  })

  it('brings back a batch that was ended by mistake', () => {
    const pot = Bench.start(programme([act('x')]))
    pot.do({ type: 'Abort', reason: 'slip' })
    pot.do({ type: 'Undo' })
    expect(pot.state.status).toBe('running')
  })

  it('leaves a clock that was set as it was set', () => {
    const pot = Bench.start(programme([wait('hold', 10 * MIN), act('x')]))
    pot.do({ type: 'WriteNote', text: 'n' })
    pot.do({ type: 'ShiftClock', byMs: -60 * MIN })
    pot.do({ type: 'Undo' })
    expect(pot.due('hold')).toBe(-50)
  })
})

describe('trouble', () => {
  it('stops the steps until it is settled, and restarts the wait where asked to', () => {
    const pot = Bench.start(programme([wait('hold', 10 * MIN), act('x')]))
    pot.pass(4)
    pot.do({ type: 'CallTrouble', kind: 'power-cut' })
    pot.pass(16)
    expect(pot.open()).toEqual(['hold'])
    pot.do({ type: 'SettleTrouble', beganAtMs: T0 + 4 * MIN, tempC: 60, outcome: 'restart-step' })
    expect(pot.due('hold')).toBe(30)
    expect(pot.run.bathTempC).toBe(60)
  })
})

describe('a clock that was set', () => {
  it('moves every open deadline and raises no alert twice', () => {
    const pot = Bench.start(programme([wait('hold', 10 * MIN), act('x'), wait('w', 10 * MIN), act('y')]))
    pot.pass(11)
    const before = pot.entries.filter((e) => e.event.type === 'AlertRaised').length
    pot.nowMs -= 60 * MIN
    pot.do({ type: 'ShiftClock', byMs: -60 * MIN }, 0, 'shift')
    expect(pot.due('x')).toBe(-50)
    pot.pass(5)
    expect(pot.entries.filter((e) => e.event.type === 'AlertRaised').length).toBe(before)
  })
})

describe('a clock that was set while a pot waits for its end', () => {
  it('still asks what becomes of the bath, and does not wait for the old hour', () => {
    const pot = Bench.start(programme([act('x')]))
    pot.do({ type: 'MarkDone', path: 'x' })
    pot.nowMs -= 60 * MIN
    pot.do({ type: 'ShiftClock', byMs: -60 * MIN })
    expect(alertsDue(pot.state, pot.nowMs).map((a) => a.kind)).toEqual(['finish'])
  })
})

describe('alerts are a level', () => {
  it('an unanswered call stands until it is answered, journalled or not', () => {
    const pot = Bench.start(programme([wait('hold', 6 * MIN), act('x')]))
    expect(alertsDue(lookAhead(pot.state, T0 + 7 * MIN), T0 + 7 * MIN).map((a) => a.kind)).toEqual(['call'])
    pot.pass(7)
    expect(alertsDue(pot.state, pot.nowMs)).toMatchObject([{ kind: 'call', path: 'x', urgency: 'late', lateMs: MIN }])
    pot.do({ type: 'MarkDone', path: 'x' })
    expect(alertsDue(pot.state, pot.nowMs).map((a) => a.kind)).toEqual(['finish'])
  })

  it('gives a heads-up a minute before the first act after a quiet time, and none between beats', () => {
    const pot = Bench.start(programme([wait('long', 10 * MIN), act('x'), wait('short', 2 * MIN), act('y')]))
    const told = pot.pass(10)
    expect(told.filter((e) => e.type === 'AlertRaised' && e.kind === 'headsUp')).toHaveLength(1)
    pot.do({ type: 'MarkDone', path: 'x' })
    expect(pot.pass(5).filter((e) => e.type === 'AlertRaised' && e.kind === 'headsUp')).toHaveLength(0)
  })

  it('a cool-down of "at least" some time is called and never late', () => {
    const down = { kind: 'temperature' as const, lowC: null, highC: 40, going: 'down' as const }
    const cool = wait('cool', 30 * MIN, {
      graceMs: null,
      until: [down],
      clock: { leastMs: 0, likelyMs: 40 * MIN, mostMs: 0 }
    })
    const pot = Bench.start(programme([cool]))
    pot.pass(200)
    expect(alertsDue(pot.state, pot.nowMs)).toMatchObject([{ kind: 'call', urgency: 'now' }])
  })

  it('not yet, with a reason, quiets the call until its new time; lateness counts from the first', () => {
    const pot = Bench.start(programme([act('x')]))
    pot.pass(1)
    pot.do({ type: 'NotYet', path: 'x', byMs: 5 * MIN, reason: 'the other pot is lifted' })
    expect(alertsDue(pot.state, pot.nowMs)).toEqual([])
    pot.pass(6)
    expect(alertsDue(pot.state, pot.nowMs)).toMatchObject([{ urgency: 'late' }])
  })

  it('catching up after a sleep comes to the same state as having stayed awake', () => {
    const plans = () => programme([wait('a', 3 * MIN), wait('b', 4 * MIN), act('x'), wait('c', 5 * MIN), act('y')])
    const awake = Bench.start(plans())
    const asleep = Bench.start(plans())
    for (let i = 0; i < 60; i++) awake.pass(0.5)
    asleep.pass(30)
    expect(asleep.state).toEqual(awake.state)
  })
})

describe('the journal', () => {
  it('folded again gives the state that was live', () => {
    const pot = Bench.start(programme([dose('A1', 30), wait('hold', 5 * MIN), act('x')]))
    pot.do({ type: 'MarkDone', path: 'A1' })
    pot.pass(6)
    pot.do({ type: 'WriteNote', text: 'smells sharp' })
    pot.do({ type: 'MarkDone', path: 'x' })
    pot.do({ type: 'Finish', bath: 'dropped' })
    expect(fold(pot.entries)).toEqual(pot.state)
  })

  it('an ended batch takes notes and corrections, and no more steps', () => {
    const pot = Bench.start(programme([act('x')]))
    pot.do({ type: 'MarkDone', path: 'x' })
    pot.do({ type: 'Finish', bath: 'stored' })
    const refused = pot.try({ type: 'MarkDone', path: 'x' })
    expect(refused.ok ? null : refused.refusal.code).toBe('ended')
    pot.do({ type: 'WriteNote', text: 'dried in the shade' })
    pot.do({
      type: 'Correct',
      entry: { writerId: 'w', seq: 1 },
      field: 'fibre',
      was: 'wool',
      now: 'silk',
      why: 'misread'
    })
    expect(nextDue(pot.state)).toEqual([])
  })

  it('acid that went into another pot is written in both, and is still asked for here', () => {
    const pot = Bench.start(programme([dose('A1', 30)]))
    const amount = { value: 30, unit: 'mL' as const, of: 'vinegar', asEntered: '30 mL' }
    pot.do({ type: 'ReportAddedElsewhere', path: 'A1', amount, toPotId: 'pot-b' })
    expect(pot.open()).toEqual(['A1'])
    expect(pot.run.doses).toEqual([])
    pot.do({ type: 'AddUnplanned', amount, fromPotId: 'pot-b' })
    expect(pot.run.doses).toMatchObject([{ planned: null, fromPotId: 'pot-b' }])
  })
})

describe('forecast-free limits', () => {
  it('a step done once more leads nowhere', () => {
    const pot = Bench.start(programme([act('turn'), act('x')]))
    pot.do({ type: 'MarkDone', path: 'turn' })
    pot.do({ type: 'DoOnceMore', path: 'turn', reason: 'uneven' })
    expect(pot.open().sort()).toEqual(['turn', 'x'])
    pot.do({ type: 'MarkDone', path: 'turn' })
    expect(pot.open()).toEqual(['x'])
  })
})
