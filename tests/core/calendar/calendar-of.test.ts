import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { type CalendarFile, type CalendarWanted, calendarOf } from '../../../src/core/calendar/calendar-of.ts'
import { metricUnits } from '../../../src/core/quantity/units.ts'
import { Bench, T0 } from '../pot/given.ts'
import { act, dose, gradeOf, MIN, programme, until, wait } from '../pot/programmes.ts'
import { faultsOf } from './judge.ts'

const NONE = { leastMs: 0, likelyMs: 0, mostMs: 0 }

/** soak 10 min, acid 1, hold 20 min, acid 2, hold 30 min, heat off. */
const dye = () =>
  programme([
    wait('soak', 10 * MIN),
    dose('acid1', 30, 'vinegar', { knot: 'Acid 1', call: 'Acid 1 in' }),
    wait('hold1', 20 * MIN),
    dose('acid2', 30, 'vinegar', { knot: 'Acid 2', call: 'Acid 2 in' }),
    wait('hold2', 30 * MIN),
    act('off', { heat: 'off', knot: 'Heat off', call: 'Heat off' })
  ])

function fileOf(bench: Bench, more: Partial<CalendarWanted> = {}): CalendarFile {
  const pots = [{ potId: 'pot-1', state: bench.state }]
  const file = calendarOf({
    pots,
    nowMs: bench.nowMs,
    sequence: 0,
    before: [],
    cancel: false,
    units: metricUnits,
    tzOffsetMin: () => 120,
    rehearsal: false,
    ...more
  })
  expect(faultsOf(file.text)).toEqual([])
  return file
}

type Seen = {
  uid: string
  summary: string
  say: string
  at: number
  forMs: number
  sequence: number
  status: string
  rings: number[]
}

/** The events of a file as the parser reads them; times in minutes after the start of the pot. */
function seen({ text }: { text: string }): Seen[] {
  const calendar = new ICAL.Component(ICAL.parse(text))
  return calendar.getAllSubcomponents('vevent').map((vevent) => {
    const event = new ICAL.Event(vevent)
    const triggers = vevent.getAllSubcomponents('valarm').map((alarm) => alarm.getFirstPropertyValue('trigger'))
    return {
      uid: event.uid,
      summary: event.summary,
      say: event.description,
      at: (event.startDate.toUnixTime() * 1000 - T0) / MIN,
      forMs: event.duration.toSeconds() * 1000,
      sequence: vevent.getFirstPropertyValue('sequence') as unknown as number,
      status: vevent.getFirstPropertyValue('status') as string,
      rings: triggers.map((trigger) => (trigger as ICAL.Duration).toSeconds() / 60)
    }
  })
}

const brief = (file: { text: string }) => seen(file).map(({ summary, at }) => `${at} ${summary}`)

describe('the calendar of the coming alerts', () => {
  it('holds each act at its forecast time, in UTC, with its ring and a heads-up after a quiet time', () => {
    const file = fileOf(Bench.start(dye()))
    expect(seen(file).map(({ summary, at, rings, status }) => ({ summary, at, rings, status }))).toEqual([
      { summary: 'Moss: Acid 1', at: 10, rings: [-1, 0], status: 'CONFIRMED' },
      { summary: 'Moss: Acid 2', at: 30.5, rings: [-1, 0], status: 'CONFIRMED' },
      { summary: 'Moss: Heat off', at: 61, rings: [-1, 0], status: 'CONFIRMED' }
    ])
    expect(file.text).toContain('\r\nDTSTART:20310614T091000Z\r\n')
    expect(file.text).toContain('\r\nMETHOD:PUBLISH\r\n')
    expect(file.count).toBe(3)
  })

  it('says the act, the amount, the cup, and that it is a snapshot and of when, in the time of the kitchen', () => {
    expect(seen(fileOf(Bench.start(dye())))[0]?.say).toBe(
      [
        'Acid 1 in.',
        '30\u00a0mL of vinegar, cup “Moss, acid1”.',
        'A snapshot made on 2031-06-14 at 11:00: it knows nothing of what happened at the stove since.'
      ].join('\n')
    )
  })

  it('gives an act at least a minute, and a longer one the time its hands take', () => {
    const bench = Bench.start(
      programme([
        wait('w', 10 * MIN),
        act('short', { hands: NONE }),
        act('long', { hands: { leastMs: MIN, likelyMs: 150_000, mostMs: 5 * MIN } })
      ])
    )
    expect(seen(fileOf(bench)).map(({ forMs }) => forMs)).toEqual([60_000, 150_000])
  })

  it('does not hold what stands already, says that it counts it as done now, and rings no second time at once', () => {
    const bench = Bench.start(programme([act('in'), wait('hold', 2 * MIN), dose('A1', 30)]))
    const [first, ...more] = seen(fileOf(bench))
    expect(more).toEqual([])
    expect(first).toMatchObject({ summary: 'Moss: A1', at: 2.5, rings: [0] })
    expect(first?.say).toContain('Counted as if “in” had been done at 11:00.')
  })

  it('lets a turn or a stir stand without a ring', () => {
    const bench = Bench.start(programme([wait('w', 10 * MIN), act('stir', { soft: true })]))
    expect(seen(fileOf(bench)).map(({ rings }) => rings)).toEqual([[]])
  })

  it('keeps what comes after a loop nobody knows the length of, as "about", with the earliest and the latest', () => {
    const loop = until('clear', gradeOf('bath'), 3, [wait('h', 10 * MIN)])
    const bench = Bench.start(programme([wait('w', MIN), loop, act('off', { heat: 'off', knot: 'Heat off' })]))
    const [question, off, ...more] = seen(fileOf(bench))
    expect(more).toEqual([])
    expect(question).toMatchObject({ at: 1, status: 'CONFIRMED' })
    expect(off).toMatchObject({ summary: 'Moss: Heat off (about)', at: 11, status: 'TENTATIVE' })
    expect(off?.say).toContain('Between 11:01 and 11:31.')
  })

  it('says "about" behind such a loop also where its passes are short', () => {
    const loop = until('clear', gradeOf('bath'), 2, [wait('h', MIN)])
    const bench = Bench.start(programme([wait('w', MIN), loop, act('off', { knot: 'Heat off' })]))
    expect(brief(fileOf(bench))[1]).toBe('2 Moss: Heat off (about)')
  })

  it('takes "at least half an hour" at its word: the call comes then, whoever lets it soak over night', () => {
    const clock = { leastMs: 30 * MIN, likelyMs: 30 * MIN, mostMs: 720 * MIN }
    const soaking = programme([act('in'), wait('soak', 30 * MIN, { graceMs: null, clock }), act('fill')])
    expect(brief(fileOf(Bench.start(soaking)))).toEqual(['30.5 Moss: fill'])
  })

  it('says "about" behind a time that may be shorter, and no latest time that is hours off', () => {
    const clock = { leastMs: 10 * MIN, likelyMs: 30 * MIN, mostMs: 720 * MIN }
    const cooling = wait('cool', null, { until: [{ kind: 'person', ask: 'cool' }], clock })
    const bench = Bench.start(programme([act('go'), cooling, act('wash')]))
    const wash = seen(fileOf(bench)).find(({ summary }) => /wash/.test(summary))
    expect(wash).toMatchObject({ summary: 'Moss: wash (about)', at: 30.5, status: 'TENTATIVE' })
    expect(wash?.say).toContain('Not before 11:10.')
  })

  it('marks all of a stopped pot "about": its times will have moved', () => {
    const bench = Bench.start(dye())
    bench.pass(1)
    bench.do({ type: 'Hold', reason: null })
    const events = seen(fileOf(bench))
    expect(events.map(({ status }) => status)).toEqual(['TENTATIVE', 'TENTATIVE', 'TENTATIVE'])
    expect(events[0]?.say).toContain('The pot was stopped')
  })

  it('does not call for a wait that only a named moment ends: nobody could answer', () => {
    const bench = Bench.start(
      programme([act('go'), wait('m', 5 * MIN, { until: [{ kind: 'moment', name: 'x' }] }), act('then')])
    )
    expect(brief(fileOf(bench))).toEqual(['5.5 Moss: then'])
  })

  it('calls at the end of the last wait of all: yarn that dries over night', () => {
    const drying = programme([act('hang'), wait('dry', 600 * MIN, { bench: true })])
    const bench = Bench.start(drying)
    expect(brief(fileOf(bench))).toEqual(['600.5 Moss: All steps done'])
    bench.do({ type: 'MarkDone', path: 'hang' })
    expect(brief(fileOf(bench))).toEqual(['600 Moss: All steps done'])
  })

  it('marks the events of a rehearsal', () => {
    const [first] = seen(fileOf(Bench.start(dye()), { rehearsal: true }))
    expect(first?.summary).toBe('Rehearsal, Moss: Acid 1')
    expect(first?.say).toContain('not those of a real pot')
  })

  it('is empty for pots that are over', () => {
    const bench = Bench.start(dye())
    bench.do({ type: 'Abort', reason: 'test' })
    expect(fileOf(bench)).toMatchObject({ count: 0, published: [] })
  })
})

describe('limits in the calendar', () => {
  it('a gap that is open stands at its limit and rings ahead of it, as the app would', () => {
    const gaps = [{ from: 'A1', to: 'A2', atLeastMs: null, atMostMs: 20 * MIN, late: 'shift' as const }]
    const bench = Bench.start(programme([dose('A1', 30), wait('h', 10 * MIN), dose('A2', 30)], gaps))
    bench.do({ type: 'MarkDone', path: 'A1' })
    const limit = seen(fileOf(bench)).find(({ summary }) => /limit/.test(summary))
    expect(limit).toMatchObject({ summary: 'Moss: A2: its limit runs out', at: 20, rings: [-4] })
  })

  it('yarn out of the bath is called back in before its limit', () => {
    const bench = Bench.start(
      programme([
        act('in', { yarn: 'in' }),
        act('lift', { yarn: 'out', outOfBathMostMs: 3 * MIN }),
        wait('drip', MIN),
        act('enter', { yarn: 'in' })
      ])
    )
    bench.do({ type: 'MarkDone', path: 'in' })
    bench.do({ type: 'MarkDone', path: 'lift' })
    const back = seen(fileOf(bench)).find(({ summary }) => /Back/.test(summary))
    expect(back).toMatchObject({ at: 3, rings: [-0.5] })
  })

  it('a dry-out hazard is looked at again and again while its step lasts', () => {
    const bench = Bench.start(programme([wait('steam', 60 * MIN, { lookEveryMs: 15 * MIN }), act('off')]))
    expect(brief(fileOf(bench))).toEqual([
      '15 Moss: Look at the water level',
      '30 Moss: Look at the water level',
      '45 Moss: Look at the water level',
      '60 Moss: off'
    ])
    bench.pass(15)
    bench.do({ type: 'MarkLooked', path: 'steam' })
    expect(seen(fileOf(bench)).map(({ at }) => at)).toEqual([30, 45, 60])
  })
})

describe('a calendar that is made anew', () => {
  it('keeps the UID of a step whose time moved, with a higher sequence', () => {
    const bench = Bench.start(dye())
    const first = fileOf(bench)
    bench.pass(15)
    bench.do({ type: 'MarkDone', path: 'acid1' })
    const second = fileOf(bench, { sequence: 1, before: first.published })
    const uid = (file: CalendarFile, what: string) => seen(file).find(({ summary }) => summary.includes(what))?.uid
    expect(uid(second, 'Acid 2')).toBe(uid(first, 'Acid 2'))
    expect(seen(second).map(({ sequence }) => sequence)).toEqual([1, 1])
    expect(brief(second)).toEqual(['35 Moss: Acid 2', '65.5 Moss: Heat off'])
  })

  it('cancels what was done before its time, so that it does not ring', () => {
    const bench = Bench.start(dye())
    const first = fileOf(bench)
    bench.pass(4)
    bench.do({ type: 'EndEarly', path: 'soak', reason: 'test' })
    bench.do({ type: 'MarkDone', path: 'acid1' })
    const second = fileOf(bench, { sequence: 1, before: first.published })
    expect(seen(second).map(({ summary, status, rings }) => `${summary} ${status} ${rings.length}`)).toEqual([
      'Moss: Acid 2 CONFIRMED 2',
      'Moss: Heat off CONFIRMED 2',
      'Moss: Acid 1 CANCELLED 0'
    ])
  })

  it('gives each round of a loop, and each pot, UIDs of its own', () => {
    const bench = Bench.start(dye())
    const other = Bench.start(dye())
    const pots = [
      { potId: 'p', state: bench.state },
      { potId: 'p-soak', state: other.state }
    ]
    const uids = seen(fileOf(bench, { pots })).map(({ uid }) => uid)
    expect(uids).toHaveLength(6)
    expect(new Set(uids).size).toBe(6)
  })

  it('a cancelling file takes out all that any earlier file put in, past or to come, and more than once if need be', () => {
    const bench = Bench.start(dye())
    const first = fileOf(bench)
    bench.pass(15)
    bench.do({ type: 'MarkDone', path: 'acid1' })
    const second = fileOf(bench, { sequence: 1, before: first.published })
    const third = fileOf(bench, { sequence: 2, before: second.published, cancel: true })
    expect(third.text).toContain('\r\nMETHOD:CANCEL\r\n')
    expect(new Set(seen(third).map(({ uid }) => uid))).toEqual(new Set(seen(first).map(({ uid }) => uid)))
    expect(seen(third).map(({ status, sequence, rings }) => `${status} ${sequence} ${rings.length}`)).toEqual([
      'CANCELLED 2 0',
      'CANCELLED 2 0',
      'CANCELLED 2 0'
    ])
    expect(third.published).toEqual([])
  })

  it('forgets events two days after they were', () => {
    const bench = Bench.start(dye())
    const { published } = fileOf(bench)
    bench.do({ type: 'Abort', reason: 'test' })
    const later = { nowMs: T0 + 48 * 60 * MIN + 11 * MIN, sequence: 1, before: published }
    expect(fileOf(bench, later).published.map(({ summary }) => summary)).toEqual(['Moss: Acid 2', 'Moss: Heat off'])
  })
})
