import { describe, expect, it } from 'vitest'
import { usualLadder } from '../../../src/core/chemistry/uptake/exhaustion.ts'
import { gradeOfCups, hasStartLiquor, wantsStartLiquor } from '../../../src/core/pot/cups.ts'
import { grades } from '../../../src/core/protocol/model.ts'
import { givenBy } from '../../../src/desk/rehearse/given.ts'
import { mossRun } from '../record/moss.ts'
import { Bench } from './given.ts'
import { ask, gradeOf, programme } from './programmes.ts'

describe('cups of the start liquor', () => {
  it.each([
    ['bath', true],
    ['bath in J1', true],
    ['liquor in the jar', true],
    ['rinse', false],
    ['soap bath', false],
    ['bath, for the first colour', false]
  ])('stand beside what is called “%s”: %s', (of, there) => {
    expect(hasStartLiquor(of)).toBe(there)
  })

  it.each([
    ['dip-gradient', true],
    ['dilution-series', true],
    ['scour-wool', false],
    ['reactive-batch', false]
  ])('are wanted by %s: %s', (file, wanted) => {
    expect(wantsStartLiquor(givenBy(`protocols/${file}.yaml`, 'pot', [], '100').programme)).toBe(wanted)
  })

  it('come to a grade, by the deeper of two, and never to a clearer one than a paler cup', () => {
    expect(usualLadder.map((rung) => gradeOfCups([rung]))).toEqual([
      'strong',
      'half',
      'tint',
      'tint',
      'tint',
      'trace',
      'clear'
    ])
    expect([gradeOfCups([3, 0]), gradeOfCups([6, 3]), gradeOfCups([50, 25]), gradeOfCups([100, 50])]).toEqual([
      'trace',
      'tint',
      'half',
      'strong'
    ])
    const order = usualLadder.map((rung) => grades.indexOf(gradeOfCups([rung])))
    expect(order).toEqual([...order].sort((one, other) => other - one))
  })
})

const cups = { like: [12], ladder: [...usualLadder] }
const tint = { grade: 'tint', hue: 'red' } as const

describe('a bath judged beside cups', () => {
  it('has them in the journal with its step, and without them none', () => {
    const bench = Bench.start(programme([ask('look', gradeOf('bath')), ask('again', gradeOf('bath'))]))
    bench.do({ type: 'AnswerStep', path: 'look', answer: { kind: 'grade', ...tint, cups } })
    bench.do({ type: 'AnswerStep', path: 'again', answer: { kind: 'grade', ...tint } })
    const told = bench.entries.map(({ event }) => event)
    expect(told.filter(({ type }) => type === 'Judged')).toEqual([
      { type: 'Judged', path: 'look', of: 'bath', ...tint, cups },
      { type: 'Judged', path: 'again', of: 'bath', ...tint }
    ])
    expect(told.filter(({ type }) => type === 'Answered')).toMatchObject([{ answer: { cups } }, { path: 'again' }])
  })

  it('as a deed of its own has them too', () => {
    const bench = mossRun()
    bench.do({ type: 'Judge', of: 'bath', ...tint, cups })
    expect(bench.entries.at(-1)?.event).toEqual({ type: 'Judged', path: null, of: 'bath', ...tint, cups })
  })
})
