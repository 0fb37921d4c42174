import { describe, expect, it } from 'vitest'
import { Bench, T0, types } from './given.ts'
import {
  act,
  alongside,
  ask,
  choice,
  dose,
  gradeOf,
  MIN,
  programme,
  ramp,
  repeat,
  step,
  until,
  wait
} from './programmes.ts'

describe('a pot goes through its programme', () => {
  it('starts the first step on Start and the next when it is done', () => {
    const pot = Bench.start(programme([act('enter'), act('stir')]))
    expect(pot.open()).toEqual(['enter'])
    pot.do({ type: 'MarkDone', path: 'enter' })
    expect(pot.open()).toEqual(['stir'])
    expect(types(pot.do({ type: 'MarkDone', path: 'stir' }))).toEqual(['StepClosed', 'StepsDone'])
  })

  it('ends a timed hold by the clock at its very time, and the next act is due then', () => {
    const pot = Bench.start(programme([wait('hold', 6 * MIN), act('lower')]))
    pot.pass(5.9)
    expect(pot.open()).toEqual(['hold'])
    pot.pass(5)
    expect(pot.due('lower')).toBe(6)
    expect(pot.entries.find((e) => e.event.type === 'StepClosed')?.atMs).toBe(T0 + 6 * MIN)
  })

  it('raises the call for an act once, at its time', () => {
    const pot = Bench.start(programme([wait('hold', 6 * MIN), act('lower')]))
    pot.pass(20)
    const raised = pot.entries.filter((e) => e.event.type === 'AlertRaised' && e.event.kind === 'call')
    expect(raised.map((e) => e.atMs - T0)).toEqual([6 * MIN])
  })

  it('lets an act be answered as of some minutes ago: what follows counts from then', () => {
    const pot = Bench.start(programme([act('enter'), wait('hold', 10 * MIN)]))
    pot.pass(7)
    pot.do({ type: 'MarkDone', path: 'enter' }, 5 * MIN)
    expect(pot.due('hold')).toBe(12)
  })

  it('refuses a time before the pot was started', () => {
    const pot = Bench.start(programme([act('enter')]))
    pot.pass(1)
    const refused = pot.try({ type: 'MarkDone', path: 'enter' }, 5 * MIN)
    expect(refused.ok ? null : refused.refusal.code).toBe('before-start')
  })

  it('does nothing on a repeated command id, so a double tap gives one dose', () => {
    const pot = Bench.start(programme([dose('A1', 30), dose('A2', 30)]))
    pot.do({ type: 'MarkDone', path: 'A1' }, 0, 'tap-1')
    expect(pot.do({ type: 'MarkDone', path: 'A1' }, 0, 'tap-1')).toEqual([])
    expect(pot.run.doses).toHaveLength(1)
  })

  it('records what was really added beside what was planned', () => {
    const pot = Bench.start(programme([dose('A1', 30)]))
    const added = { value: 25, unit: 'mL' as const, of: 'vinegar', asEntered: '25 mL' }
    pot.do({ type: 'MarkDone', path: 'A1', added })
    expect(pot.run.doses[0]).toMatchObject({ planned: { value: 30 }, added: { value: 25 } })
  })

  it('refuses to close a step that must record something first, and says what', () => {
    const pot = Bench.start(programme([act('look', { records: ['temperature'] })]))
    const refused = pot.try({ type: 'MarkDone', path: 'look' })
    expect(refused.ok ? null : refused.refusal).toMatchObject({
      code: 'needs-record',
      say: 'First record: temperature.'
    })
    pot.do({ type: 'ReadTemperature', tempC: 70 })
    pot.do({ type: 'MarkDone', path: 'look' })
    expect(pot.run.stepsDone).toBe(true)
  })

  it('says which steps are left when somebody wants to finish too soon', () => {
    const pot = Bench.start(programme([act('enter')]))
    const refused = pot.try({ type: 'Finish', bath: 'dropped' })
    expect(refused.ok ? null : refused.refusal.code).toBe('steps-left')
  })
})

describe('repeat, until, choice, alongside', () => {
  it('walks every pass of a repeat and marks its moment at the end', () => {
    const pot = Bench.start(programme([repeat('dip', 3, [act('in')], ['all in']), act('lift')]))
    for (const n of [1, 2, 3]) pot.do({ type: 'MarkDone', path: `dip[${n}]/in` })
    expect(pot.open()).toEqual(['lift'])
    expect(pot.run.moments['all in']).toBe(T0)
  })

  const clear = () => programme([until('clear', gradeOf('bath'), 2, [dose('acid', 20)], [act('note')]), act('off')])

  it('leaves an until at once when the first judgement is enough', () => {
    const pot = Bench.start(clear())
    pot.do({ type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'trace', hue: null } })
    expect(pot.open()).toEqual(['off'])
  })

  it('goes through an until at most so often, asks after each pass, and then does what is left to do', () => {
    const pot = Bench.start(clear())
    const half = { kind: 'grade' as const, grade: 'half' as const, hue: 'yellow' }
    for (const n of [1, 2]) {
      pot.do({ type: 'AnswerStep', path: `clear[${n}]/ask`, answer: half })
      pot.do({ type: 'MarkDone', path: `clear[${n}]/acid` })
    }
    pot.do({ type: 'AnswerStep', path: 'clear[3]/ask', answer: half })
    expect(pot.open()).toEqual(['clear.otherwise/note'])
    pot.do({ type: 'MarkDone', path: 'clear.otherwise/note' })
    expect(pot.open()).toEqual(['off'])
  })

  it('leaves the loop when its question is skipped', () => {
    const pot = Bench.start(clear())
    pot.do({ type: 'Skip', path: 'clear[1]/ask', reason: 'cannot see in this light' })
    expect(pot.open()).toEqual(['off'])
  })

  it('takes the branch that was chosen and refuses an answer that is not among them', () => {
    const pot = Bench.start(programme([choice('pick', { yes: [act('a')], no: [act('b')] }), act('c')]))
    const refused = pot.try({ type: 'AnswerStep', path: 'pick/ask', answer: { kind: 'choice', answer: 'maybe' } })
    expect(refused.ok ? null : refused.refusal.say).toBe('Answer with one of: yes, no.')
    pot.do({ type: 'AnswerStep', path: 'pick/ask', answer: { kind: 'choice', answer: 'no' } })
    expect(pot.open()).toEqual(['pick=no/b'])
    pot.do({ type: 'MarkDone', path: 'pick=no/b' })
    expect(pot.open()).toEqual(['c'])
  })

  it('runs branches alongside and goes on only when all have come', () => {
    const pot = Bench.start(
      programme([alongside('both', { yarn: [wait('soak', 30 * MIN)], bath: [act('fill')] }), act('enter')])
    )
    expect(pot.open()).toEqual(['both.yarn/soak', 'both.bath/fill'])
    pot.do({ type: 'MarkDone', path: 'both.bath/fill' })
    expect(pot.open()).toEqual(['both.yarn/soak'])
    pot.pass(31)
    expect(pot.open()).toEqual(['enter'])
  })
})

describe('waits', () => {
  it('counts from a named moment, also when the moment comes while it waits', () => {
    const body = alongside('both', { a: [wait('w', 10 * MIN, { from: 'B' }), act('after')], b: [act('B')] })
    const pot = Bench.start(programme([body]))
    expect(pot.due('both.a/w')).toBeNull()
    pot.pass(3)
    pot.do({ type: 'MarkDone', path: 'both.b/B' })
    expect(pot.due('both.a/w')).toBe(13)
  })

  it('goes on from "at least 30 min and until 40 °C" only when both have come', () => {
    const cool = wait('cool', 30 * MIN, {
      until: [{ kind: 'temperature', lowC: null, highC: 40, going: 'down' }],
      clock: { leastMs: 0, likelyMs: 60 * MIN, mostMs: 0 }
    })
    const pot = Bench.start(programme([cool, act('lift')]))
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 38 })
    expect(pot.open()).toEqual(['cool'])
    pot.pass(19)
    expect(pot.open()).toEqual(['cool'])
    pot.pass(2)
    expect(pot.open()).toEqual(['lift'])
  })

  it('asks again, later, when a reading is not there yet', () => {
    const pot = Bench.start(programme([ramp('heat', 20, 80, 1), act('off', { heat: 'off' })]))
    expect(pot.due('heat')).toBe(60)
    pot.pass(60)
    pot.do({ type: 'ReadTemperature', tempC: 70 })
    expect(pot.due('heat')).toBe(70)
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 81 })
    expect(pot.open()).toEqual(['off'])
    expect(pot.run.heatOn).toBe(true)
    pot.do({ type: 'MarkDone', path: 'off' })
    expect(pot.run.heatOn).toBe(false)
  })

  it('waits for a person where the protocol says so', () => {
    const pot = Bench.start(
      programme([wait('steam', null, { until: [{ kind: 'person', ask: 'full steam' }] }), act('x')])
    )
    pot.do({ type: 'MarkDone', path: 'steam' })
    expect(pot.open()).toEqual(['x'])
  })

  it('stops the count of a hold while the bath is outside its range, and counts on inside', () => {
    const hold = wait('hold', 30 * MIN, { setPoint: { lowC: 85, highC: 90, outside: 'stop-count' } })
    const pot = Bench.start(programme([hold, act('x')]))
    pot.pass(10)
    pot.do({ type: 'ReadTemperature', tempC: 80 })
    expect(pot.run.active[0]?.remainingMs).toBe(20 * MIN)
    pot.pass(10)
    expect(pot.open()).toEqual(['hold'])
    pot.do({ type: 'ReadTemperature', tempC: 86 })
    expect(pot.due('hold')).toBe(40)
  })

  it('puts a step off until its minimum gap is over', () => {
    const gaps = [{ from: 'A1', to: 'A2', atLeastMs: 15 * MIN, atMostMs: null, late: 'shift' as const }]
    const pot = Bench.start(programme([dose('A1', 30), dose('A2', 30)], gaps))
    pot.do({ type: 'MarkDone', path: 'A1' })
    expect(pot.due('A2')).toBe(15)
  })

  it('calls ahead of a gap that runs out, and marks the batch when it did', () => {
    const gaps = [{ from: 'A1', to: 'A2', atLeastMs: null, atMostMs: 20 * MIN, late: 'off-protocol' as const }]
    const pot = Bench.start(programme([dose('A1', 30), dose('A2', 30)], gaps))
    pot.do({ type: 'MarkDone', path: 'A1' })
    const told = pot.pass(30)
    expect(told.filter((e) => e.type === 'AlertRaised' && e.kind === 'gap')).toHaveLength(1)
    expect(pot.run.offProtocol).toHaveLength(1)
  })

  it('asks for a look at the water as often as the step says, until it is looked at', () => {
    const pot = Bench.start(programme([wait('steam', 40 * MIN, { lookEveryMs: 15 * MIN }), act('off')]))
    const first = pot.pass(20)
    expect(first.filter((e) => e.type === 'AlertRaised' && e.kind === 'look')).toHaveLength(1)
    pot.do({ type: 'MarkLooked', path: 'steam' })
    const second = pot.pass(16)
    expect(second.filter((e) => e.type === 'AlertRaised' && e.kind === 'look')).toHaveLength(1)
  })
})

describe('late rules', () => {
  const three = (late: 'shift' | 'absorb' | 'off-protocol', leastMs = 0) =>
    programme([wait('w', 5 * MIN), act('lower', { late }), wait('hold', 10 * MIN, { leastMs }), act('x')])

  it('shift: what follows moves by the lateness', () => {
    const pot = Bench.start(three('shift'))
    pot.pass(9)
    pot.do({ type: 'MarkDone', path: 'lower' })
    expect(pot.due('hold')).toBe(19)
  })

  it('absorb: the next wait shrinks by the lateness', () => {
    const pot = Bench.start(three('absorb'))
    pot.pass(9)
    pot.do({ type: 'MarkDone', path: 'lower' })
    expect(pot.due('hold')).toBe(15)
  })

  it('absorb: never under the least time of the wait', () => {
    const pot = Bench.start(three('absorb', 8 * MIN))
    pot.pass(9)
    pot.do({ type: 'MarkDone', path: 'lower' })
    expect(pot.due('hold')).toBe(17)
  })

  it('off-protocol: the batch is marked', () => {
    const pot = Bench.start(three('off-protocol'))
    pot.pass(9)
    pot.do({ type: 'MarkDone', path: 'lower' })
    expect(pot.run.offProtocol).toEqual(['lower came late'])
  })

  it('an answer within half a minute is not late', () => {
    const pot = Bench.start(three('off-protocol'))
    pot.pass(5.5)
    pot.do({ type: 'MarkDone', path: 'lower' })
    expect(pot.run.offProtocol).toEqual([])
  })

  it('a wait of 25 to 30 min leaves five minutes before what follows is late', () => {
    const pot = Bench.start(programme([wait('w', 25 * MIN, { graceMs: 5 * MIN }), act('x', { late: 'off-protocol' })]))
    pot.pass(29)
    pot.do({ type: 'MarkDone', path: 'x' })
    expect(pot.run.offProtocol).toEqual([])
  })
})

describe('a dipping pot', () => {
  it('counts the time out of the bath across lift, add, stir and enter, and calls before its limit', () => {
    const pot = Bench.start(
      programme([
        act('lift', { yarn: 'out', outOfBathMostMs: 3 * MIN }),
        dose('acid', 30),
        act('stir'),
        step({ id: 'enter', yarn: 'in' }),
        ask('look', gradeOf('bath'))
      ])
    )
    pot.do({ type: 'PutSkeinsIn', tags: ['S1'] })
    pot.do({ type: 'MarkDone', path: 'lift' })
    pot.pass(1)
    pot.do({ type: 'MarkDone', path: 'acid' })
    const told = pot.pass(1.8)
    expect(told.filter((e) => e.type === 'AlertRaised' && e.kind === 'outOfBath')).toHaveLength(1)
    pot.do({ type: 'MarkDone', path: 'stir' })
    pot.do({ type: 'MarkDone', path: 'enter' })
    expect(pot.run.outTotalMs).toBeCloseTo(2.8 * MIN, -1)
    expect(pot.run.outLimitAtMs).toBeNull()
  })
})
