// A free pot and what the protocol made of it says, line by line.
import { describe, expect, it } from 'vitest'
import { freeProgramme } from '../../../../src/core/protocol/free-pot.ts'
import { Bench } from '../../pot/given.ts'
import { inputs, programmeFrom } from '../../protocol/made.ts'
import { moss, mossFinished } from '../moss.ts'
import { madeOf } from './rehearsed.ts'

const mL = (value: number, of: string) => ({ value, unit: 'mL', of, asEntered: `${value} mL` }) as const

function aDay(): Bench {
  const made = freeProgramme(inputs())
  if (!made.ok) throw new Error('no free pot')
  const bench = Bench.start(made.programme)
  bench.pass(3)
  bench.do({ type: 'AddUnplanned', amount: mL(2000, 'water') })
  bench.pass(1)
  bench.do({ type: 'ReadTemperature', tempC: 20 })
  bench.do({ type: 'ChangeHeat', on: true, level: null })
  bench.pass(5)
  bench.do({ type: 'PutSkeinsIn', tags: ['S1'] })
  bench.pass(25)
  bench.do({ type: 'ReadTemperature', tempC: 80 })
  bench.pass(0.1)
  bench.do({ type: 'AddUnplanned', amount: mL(40, 'vinegar') })
  bench.do({ type: 'NoteDeed', word: 'do', say: 'Stir the bath' })
  bench.pass(20)
  bench.do({ type: 'Judge', of: 'bath', grade: 'clear', hue: null })
  bench.do({ type: 'ChangeHeat', on: false, level: null })
  bench.pass(45)
  bench.do({ type: 'NoteDeed', word: 'rinse', say: '' })
  bench.do({ type: 'NoteDeed', word: 'spin', say: '' })
  bench.do({ type: 'MarkDone', path: 'free' })
  bench.do({ type: 'Finish', bath: 'dropped' })
  return bench
}

const stepsOf = (text: string): string[] =>
  text
    .slice(text.indexOf('steps:'))
    .split('\n')
    .slice(1)
    .filter((line) => line.trim() !== '' && !line.trim().startsWith('#'))

describe('a protocol made of a free pot', () => {
  it('says what was done, with the rise at its real rate and what hands did meanwhile alongside', () => {
    const { text } = madeOf(aDay().entries)
    expect(stepsOf(text)).toEqual([
      '  - fill: 2 L',
      '  - wait: 1 min',
      '  - measure: temperature',
      '  - alongside:',
      '      heat:',
      '        - heat: {to: 80 °C, rate: 2 °C/min}',
      '      hands:',
      '        - hold: 5 min',
      '        - enter',
      '  - add: 40 mL of vinegar',
      '  - do: {say: Stir the bath, soft: true}',
      '  - hold: 20 min',
      '  - check: {grade: bath}',
      '  - heat: off',
      '  - wait: 45 min',
      '  - rinse',
      '  - spin'
    ])
    expect(text).toContain('vinegar: acid')
    expect(text).toContain('Made from the batch 2031-06-14 Moss, begun on 2031-06-14 at 09:00, a free pot.')
  })

  it('leaves out what was undone, and says the corrected amount', () => {
    const bench = aDay()
    const dosed = bench.entries.find(({ event }) => event.type === 'Dosed' && event.of === 'vinegar')
    if (!dosed) throw new Error('no dose')
    const entry = { writerId: dosed.writerId, seq: dosed.seq }
    bench.do({ type: 'Correct', entry, field: 'added.value', was: '40', now: '45', why: 'misread' })
    expect(madeOf(bench.entries).text).toContain('add: 45 mL of vinegar')
    const made = freeProgramme(inputs())
    const other = Bench.start(made.ok ? made.programme : moss())
    other.do({ type: 'NoteDeed', word: 'turn', say: '' })
    other.do({ type: 'NoteDeed', word: 'spin', say: '' })
    other.do({ type: 'Undo' })
    other.do({ type: 'Abort', reason: 'no time' })
    const { text } = madeOf(other.entries)
    expect(stepsOf(text)).toEqual(['  - turn'])
    expect(text).toContain('It ended early: no time.')
  })

  it('makes what people wrote fit for the language: braces, quotes, signs of its own', () => {
    const made = freeProgramme(inputs())
    const bench = Bench.start(made.ok ? made.programme : moss())
    bench.do({ type: 'NoteDeed', word: 'do', say: 'Stir {x}: #1 "so"' })
    bench.do({ type: 'AddUnplanned', amount: mL(5, 'a {b}: of "c"') })
    bench.do({ type: 'WriteNote', text: 'line\n- heat: the boil' })
    bench.do({ type: 'Abort', reason: 'no time' })
    const { text } = madeOf(bench.entries)
    expect(() => programmeFrom(text)).not.toThrow()
    expect(stepsOf(text)).toHaveLength(2)
    expect(text).toContain('Stir (x): #1')
  })

  it('turns the heat off at the end where it was still on, and says so', () => {
    const made = freeProgramme(inputs())
    const bench = Bench.start(made.ok ? made.programme : moss())
    bench.do({ type: 'ChangeHeat', on: true, level: null })
    bench.pass(10)
    bench.do({ type: 'NoteDeed', word: 'turn', say: '' })
    bench.do({ type: 'Abort', reason: 'gas out' })
    const { text } = madeOf(bench.entries)
    expect(stepsOf(text)).toEqual(['  - heat: 20 °C', '  - hold: 10 min', '  - turn', '  - heat: off'])
    expect(text).toContain('# How warm it got was not read')
    expect(text).toContain('# The heat was still on at the end.')
  })
})

describe('a protocol made of a pot with a protocol', () => {
  it('has what really went in, how late it was, and what share of the goods that is', () => {
    const { text } = madeOf(mossFinished().entries)
    expect(text).toContain('add: 33 mL of vinegar')
    expect(text).toContain('planned were 30 mL')
    expect(text).toContain('# This came 5 min late.')
    expect(() => programmeFrom(text)).not.toThrow()
  })
})
