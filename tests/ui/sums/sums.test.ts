import { describe, expect, it } from 'vitest'
import * as chemistry from '../../../src/core/chemistry/index.ts'
import { metricUnits } from '../../../src/core/quantity/index.ts'
import { groups } from '../../../src/ui/screens/sums/sum.ts'
import { found, sums } from '../../../src/ui/screens/sums/sums.ts'
import { answer, sumOf, usUnits } from './typing.ts'

describe('the sums', () => {
  it('are there for every function of the chemistry', () => {
    const functions = Object.entries(chemistry)
      .filter(([name, value]) => typeof value === 'function' && name !== 'isRefused')
      .map(([name]) => name)
    const used = new Set<string>(sums.flatMap(({ uses }) => uses))
    expect(functions.filter((name) => !used.has(name))).toEqual([])
  })

  it('have each a name of their own that an address can carry', () => {
    expect(new Set(sums.map(({ id }) => id)).size).toBe(sums.length)
    expect(new Set(sums.map(({ title }) => title)).size).toBe(sums.length)
    for (const { id } of sums) expect(id).toMatch(/^[a-z-]+$/)
  })

  it('stand in a group each, and every group has some', () => {
    expect(new Set(sums.map(({ group }) => group))).toEqual(new Set(groups))
  })

  it.each(sums)('$id says what is wanted, and nothing is wrong, before anything is typed', ({ id }) => {
    for (const units of [metricUnits, usUnits]) {
      const before = answer(id, {}, units)
      // A ladder of cups begins as the deepest one: that is an answer.
      expect(before.kind).toBe(id === 'ladder' ? 'worked' : 'wanted')
    }
  })
})

describe('finding one', () => {
  it.each([
    ['', sums.length],
    ['zebra', 0]
  ])('"%s": %d', (looked, many) => expect(found(looked)).toHaveLength(many))

  it.each([
    ['regain', 'dry-weight'],
    ['VINEGAR owf', 'acid-dose'],
    ['kw', 'ramp-power'],
    ['c1v1', 'dilute'],
    ['altitude', 'boil'],
    ['g/l', 'salt'],
    ['cool-down', 'time-to-temperature']
  ])('"%s" finds %s', (looked, id) => expect(found(looked)).toContain(sumOf(id)))
})
