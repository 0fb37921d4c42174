// A small dip gradient run on the bench of the engine's tests: what the records are read from.

import type { Programme } from '../../../src/core/protocol/model.ts'
import { Bench } from '../pot/given.ts'
import { act, ask, dose, gradeOf, MIN, programme, ramp, until, wait } from '../pot/programmes.ts'

const oneMinute = { leastMs: MIN, likelyMs: MIN, mostMs: MIN }

export function moss(): Programme {
  return programme(
    [
      dose('A1', 30, 'vinegar', { knot: 'Acid 1' }),
      ramp('warm', 20, 80, 2, { knot: '80 °C' }),
      act('enter', { word: 'enter', yarn: 'in', knot: 'All in', hands: oneMinute }),
      wait('hold', 10 * MIN, { knot: 'Hold' }),
      dose('A2', 30, 'vinegar', { knot: 'Acid 2' }),
      until('clear', gradeOf('bath'), 2, [dose('A', 10, 'vinegar', { knot: 'Acid more' }), wait('rest', 10 * MIN)]),
      act('off', { word: 'heat', heat: 'off', knot: 'Heat off', shape: 'bar' }),
      ask('level', { kind: 'text', ask: 'Which cup?' }, { knot: 'Cup' })
    ],
    [],
    { title: 'Dip gradient' }
  )
}

/** All of it, a little late: the hold is answered on time, acid 2 comes 5 min late, the bath wants one more acid. */
export function mossRun(): Bench {
  const bench = Bench.start(moss())
  bench.do({ type: 'ShowCaution', caution: 'acid-mild', path: 'A1' })
  bench.pass(1)
  bench.do({ type: 'MarkDone', path: 'A1', added: { value: 33, unit: 'mL', of: 'vinegar', asEntered: '33 mL' } })
  bench.pass(30)
  bench.do({ type: 'ReadTemperature', tempC: 81 })
  bench.pass(3)
  bench.do({ type: 'MarkDone', path: 'enter' })
  bench.pass(15)
  bench.do({ type: 'MarkDone', path: 'A2' })
  bench.pass(1)
  bench.do({ type: 'AnswerStep', path: 'clear[1]/ask', answer: { kind: 'grade', grade: 'half', hue: 'yellow' } })
  bench.do({ type: 'MarkDone', path: 'clear[1]/A' })
  bench.pass(10)
  bench.do({ type: 'AnswerStep', path: 'clear[2]/ask', answer: { kind: 'grade', grade: 'clear', hue: null } })
  bench.do({ type: 'WriteNote', text: 'Cloudy at the start.' })
  return bench
}

export function mossFinished(): Bench {
  const bench = mossRun()
  bench.do({ type: 'MarkDone', path: 'off' })
  bench.do({ type: 'AnswerStep', path: 'level', answer: { kind: 'text', text: 'the white one' } })
  bench.do({ type: 'Finish', bath: 'stored' })
  return bench
}
