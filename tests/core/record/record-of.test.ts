import { describe, expect, it } from 'vitest'
import type { BatchRecord } from '../../../src/core/record/record.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { Bench, T0 } from '../pot/given.ts'
import { dose, MIN, programme } from '../pot/programmes.ts'
import { moss, mossFinished, mossRun } from './moss.ts'

function read(bench: Bench): BatchRecord {
  const record = recordOf(bench.entries)
  if (!record) throw new Error('no record')
  return record
}
const stepOf = (record: BatchRecord, path: string): BatchRecord['steps'][number] => {
  const step = record.steps.find((s) => s.path === path)
  if (!step) throw new Error(`no step ${path}`)
  return step
}

describe('the batch record', () => {
  const record = read(mossFinished())

  it('names the pot, the yarn, the protocol and its text', () => {
    expect(record.identity).toMatchObject({
      batchName: '2031-06-14 Moss',
      status: 'complete',
      bathFate: 'stored',
      startedAtMs: T0
    })
    expect(record.identity.endedAtMs).toBe(T0 + 60 * MIN)
    expect(record.substrate).toMatchObject({ fibre: 'wool', goodsMassG: 100, skeins: [{ tag: 'S1', massG: 100 }] })
    expect(record.protocol).toMatchObject({ title: 'Test', text: 'strandline: 1', version: 'v1' })
    expect(record.programme.title).toBe('Dip gradient')
  })

  it('puts planned beside done, step by step', () => {
    const enter = stepOf(record, 'enter')
    expect(enter.planned).toEqual({ startMs: T0 + 30.5 * MIN, endMs: T0 + 31.5 * MIN })
    expect([enter.startMs, enter.endMs]).toEqual([T0 + 31 * MIN, T0 + 34 * MIN])
    expect(enter.overrunMs).toBe(2 * MIN)
    expect(enter.driftMs).toBe(2.5 * MIN)
  })

  it('says lateness in a plain sentence, with what made it so', () => {
    expect(stepOf(record, 'A2')).toMatchObject({ lateMs: 5 * MIN })
    expect(stepOf(record, 'A2').sentence.replaceAll('\u00a0', ' ')).toBe(
      'Acid 2 came 5 min late, after All in took 2 min more.'
    )
    expect(record.deviations.map((d) => d.kind)).toContain('late')
  })

  it('counts a pass that nobody planned as such', () => {
    const asks = record.steps.filter((s) => s.path.endsWith('/ask'))
    expect(asks.map((s) => s.planned !== null)).toEqual([true, true])
    const longer = read(mossTwice())
    expect(stepOf(longer, 'clear[2]/A').planned).toBeNull()
    expect(stepOf(longer, 'clear[2]/A').sentence).toContain('was not planned for')
  })

  it('tells amounts planned and added, and by how much they differ', () => {
    const [first, second] = record.amounts
    expect(first).toMatchObject({ label: 'Acid 1', fate: 'added', planned: { value: 30 }, added: { value: 33 } })
    expect(first?.offPercent).toBeCloseTo(10, 9)
    expect(second?.offPercent).toBe(0)
    expect(record.amounts.find((a) => a.path === 'clear[2]/A')).toMatchObject({ fate: 'not-added', added: null })
  })

  it('calls what is still ahead of a running pot to come, not missing', () => {
    const running = read(mossRun())
    expect(running.identity).toMatchObject({ status: 'running', endedAtMs: null, endedAt: null })
    expect(running.amounts.find((a) => a.path === 'clear[2]/A')?.fate).toBe('to-come')
  })

  it('keeps readings, judgements with their hue, answers, notes and the cautions shown', () => {
    expect(record.readings.map((r) => r.words.replaceAll('\u00a0', ' '))).toEqual(['81 °C', 'the white one'])
    expect(record.judgements).toMatchObject([
      { grade: 'half', hue: 'yellow' },
      { grade: 'clear', hue: null }
    ])
    expect(record.notes).toMatchObject([{ text: 'Cloudy at the start.' }])
    expect(record.cautions).toMatchObject([{ id: 'acid-mild', path: 'A1' }])
  })

  it('says who said so: the dyer, the clock', () => {
    expect(stepOf(record, 'hold').said).toMatchObject({ by: 'clock', who: 'the clock' })
    expect(stepOf(record, 'A2').said).toMatchObject({ by: 'person', who: 'the dyer, by tap' })
  })

  it('says where an act has the time of its cue', () => {
    const cued = mossRun().entries.map((entry) =>
      entry.by.kind === 'person' ? { ...entry, by: { ...entry.by, timed: 'cue' as const } } : entry
    )
    expect(stepOf(recordOf(cued) as BatchRecord, 'A2').said).toMatchObject({ who: 'the dyer, by tap', atCue: true })
    expect(stepOf(record, 'A2').said).not.toHaveProperty('atCue')
  })

  it('gives no record where the start is missing, rather than half a one', () => {
    expect(recordOf([])).toBeNull()
    expect(recordOf(mossRun().entries.slice(1))).toBeNull()
  })
})

/** The bath is judged half again: a second pass that was not likely. */
function mossTwice(): Bench {
  const bench = Bench.start(moss())
  bench.do({ type: 'MarkDone', path: 'A1' })
  bench.pass(30)
  bench.do({ type: 'ReadTemperature', tempC: 81 })
  bench.do({ type: 'MarkDone', path: 'enter' })
  bench.pass(10)
  bench.do({ type: 'MarkDone', path: 'A2' })
  for (const round of [1, 2]) {
    bench.do({ type: 'AnswerStep', path: `clear[${round}]/ask`, answer: { kind: 'grade', grade: 'half', hue: null } })
    bench.do({ type: 'MarkDone', path: `clear[${round}]/A` })
    bench.pass(10)
  }
  return bench
}

describe('what went otherwise', () => {
  it('is listed with its reason: not yet, skipped, ended early, stopped, trouble', () => {
    const bench = Bench.start(moss())
    bench.do({ type: 'NotYet', path: 'A1', byMs: 2 * MIN, reason: 'cup not found' })
    bench.pass(3)
    bench.do({ type: 'Skip', path: 'A1', reason: 'cup is gone' })
    bench.do({ type: 'Hold', reason: 'the door' })
    bench.pass(4)
    bench.do({ type: 'Resume', heldTimeCounts: true })
    bench.do({ type: 'EndEarly', path: 'warm', reason: 'the ring is weak' })
    bench.do({ type: 'CallTrouble', kind: 'boil-over' })
    bench.do({ type: 'SettleTrouble', beganAtMs: bench.nowMs, tempC: 70, outcome: 'off-protocol' })
    bench.do({ type: 'ChangeBurner', burner: 'back right' })
    bench.do({ type: 'Abort', reason: 'yarn felted' })
    const record = read(bench)
    expect(record.deviations.map((d) => d.kind)).toEqual(
      expect.arrayContaining([
        'not-yet',
        'skipped',
        'stopped',
        'early',
        'trouble',
        'off-protocol',
        'burner',
        'ended-early'
      ])
    )
    const said = record.deviations.map((d) => d.sentence).join(' ')
    for (const why of ['cup not found', 'cup is gone', 'the door', 'the ring is weak', 'yarn felted'])
      expect(said).toContain(why)
    expect(record.offProtocol).toBe(true)
    expect(record.stoppedMs).toBe(4 * MIN)
    expect(record.identity).toMatchObject({ status: 'aborted', endedBecause: 'yarn felted' })
    expect(record.amounts.find((a) => a.path === 'A1')?.fate).toBe('not-added')
  })

  it('tells acid that went into another pot and acid nobody planned', () => {
    const bench = Bench.start(programme([dose('A1', 30)]))
    const amount = { value: 30, unit: 'mL' as const, of: 'vinegar', asEntered: '30 mL' }
    bench.do({ type: 'ReportAddedElsewhere', path: 'A1', amount, toPotId: 'pot-b' })
    bench.do({ type: 'AddUnplanned', amount, fromPotId: 'pot-b' })
    const record = read(bench)
    expect(record.amounts.map((a) => [a.fate, a.otherPotId])).toEqual([
      ['elsewhere', 'pot-b'],
      ['unplanned', 'pot-b'],
      ['to-come', null]
    ])
    expect(record.deviations.map((d) => d.kind)).toEqual(['elsewhere', 'unplanned'])
  })

  it('begins with the checks that failed before the heat', () => {
    const bench = Bench.start(moss())
    const [start] = bench.entries
    if (start?.event.type !== 'PotStarted') throw new Error('no start')
    start.event.checks = [
      { what: 'sound', ok: false, say: 'no sound' },
      { what: 'screen', ok: true, say: 'screen stays on' }
    ]
    const record = read(bench)
    expect(record.checks).toHaveLength(2)
    expect(record.deviations).toMatchObject([{ kind: 'failed-check', sentence: 'Began without: no sound' }])
  })
})

describe('undone, corrected, written late', () => {
  it('an undone dose counts for nothing and stays listed as withdrawn', () => {
    const bench = Bench.start(moss())
    bench.do({ type: 'MarkDone', path: 'A1' })
    bench.do({ type: 'Undo' })
    const record = read(bench)
    expect(record.amounts.find((a) => a.path === 'A1')).toMatchObject({ fate: 'to-come', added: null })
    expect(record.withdrawn.map((w) => w.what.replaceAll('\u00a0', ' '))).toContain('30 mL of vinegar in (Acid 1).')
    expect(record.journal.filter((l) => l.withdrawn).length).toBe(record.withdrawn.length)
  })

  it('a correction changes what is read and keeps the old value and the reason', () => {
    const bench = mossRun()
    const reading = bench.entries.find((e) => e.event.type === 'TemperatureRead')
    if (!reading) throw new Error('no reading')
    const entry = { writerId: reading.writerId, seq: reading.seq }
    bench.do({ type: 'Correct', entry, field: 'tempC', was: '81', now: '85', why: 'misread' })
    bench.do({ type: 'Correct', entry, field: 'tempC', was: '85', now: '84', why: 'misread twice' })
    const record = read(bench)
    expect(record.readings[0]).toMatchObject({ tempC: 84 })
    expect(record.corrections).toMatchObject([
      { was: '81', now: '85', why: 'misread', applied: true },
      { was: '85', now: '84', why: 'misread twice', applied: true }
    ])
    expect(record.journal.find((l) => l.corrected)?.type).toBe('TemperatureRead')
    expect(reading.event).toMatchObject({ tempC: 81 })
  })

  it('a correction that makes no sense is told, and changes nothing', () => {
    const bench = mossRun()
    const judged = bench.entries.find((e) => e.event.type === 'Judged')
    const closed = bench.entries.find((e) => e.event.type === 'StepClosed')
    for (const [target, field, now] of [
      [judged, 'grade', 'purple'],
      [closed, 'lateMs', '0'],
      [judged, '__proto__.x', '1']
    ] as const) {
      if (!target) throw new Error('no target')
      bench.do({
        type: 'Correct',
        entry: { writerId: target.writerId, seq: target.seq },
        field,
        was: '',
        now,
        why: 'slip'
      })
    }
    const record = read(bench)
    expect(record.corrections.map((c) => c.applied)).toEqual([false, false, false])
    expect(record.judgements[0]?.grade).toBe('half')
  })

  it('a correction of a weight changes the goods, not the programme that was run', () => {
    const bench = mossRun()
    bench.do({
      type: 'Correct',
      entry: { writerId: 'w', seq: 1 },
      field: 'pot.skeins.0.massG',
      was: '100',
      now: '92',
      why: 'scale was off'
    })
    const record = read(bench)
    expect(record.substrate.goodsMassG).toBe(92)
    expect(record.programme.goodsMassG).toBe(100)
  })

  it('what a person writes more than a minute later is marked, the clock never is', () => {
    const bench = Bench.start(moss())
    bench.pass(5)
    bench.do({ type: 'MarkDone', path: 'A1' }, 2 * MIN)
    const a1 = stepOf(read(bench), 'A1')
    expect(a1.endMs).toBe(T0 + 3 * MIN)
    expect(a1.said.writtenLateMs).toBe(2 * MIN)
    expect(read(bench).journal.filter((l) => l.said.by === 'clock' && l.said.writtenLateMs !== null)).toEqual([])
  })
})
