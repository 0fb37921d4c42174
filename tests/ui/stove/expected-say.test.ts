import { describe, expect, it } from 'vitest'
import type { Doubt, Expectation, Grounds } from '../../../src/core/pot/expected/expectation.ts'
import { metricUnits } from '../../../src/core/quantity/units.ts'
import { expectedSay } from '../../../src/ui/screens/stove/expected-say.ts'

const at = (hours: number, minutes: number): number => new Date(2031, 5, 14, hours, minutes).getTime()
const fahrenheit = { ...metricUnits, temperature: 'F' } as const

type More = {
  grounds?: Grounds
  doubt?: Doubt | null
  readings?: number
  mostMs?: number | null
  going?: 'up' | 'down'
}

const toEighty = (more: More = {}): Expectation => ({
  kind: 'at',
  targetC: 80,
  going: 'up',
  atMs: at(14, 20),
  leastMs: at(14, 12),
  mostMs: at(14, 31),
  grounds: { by: 'readings', count: 5, sinceMs: at(13, 50) },
  readings: 5,
  doubt: null,
  ...more
})

const say = (expected: Expectation, units = metricUnits): Record<string, string> =>
  JSON.parse(JSON.stringify(expectedSay(expected, units)).replaceAll('\u00a0', ' '))

describe('what a thermometer tells is said', () => {
  it('with its time, its interval and how many readings it rests on', () => {
    const { when, from } = say(toEighty())
    expect(when).toBe('80 °C about 14:20, 14:12 to 14:31')
    expect(from).toBe('From 5 readings.')
  })

  it('in the dyer’s own unit, also where a time can’t be told', () => {
    expect(say(toEighty(), fahrenheit).when).toBe('176 °F about 14:20, 14:12 to 14:31')
    const doubt: Doubt = { code: 'may-level-off', leastMs: at(14, 12) }
    const said = say(toEighty({ grounds: { by: 'rate' }, doubt, mostMs: null }), fahrenheit)
    expect(said.from).toBe('It may level off before 176 °F. No earlier batch: by the protocol’s rate.')
    expect(JSON.stringify(said)).not.toContain('°C')
    expect(say({ kind: 'never', targetC: 80, going: 'up', readings: 7 }, fahrenheit).what).toContain('176 °F')
  })

  it('without a latest time where it may never come', () => {
    expect(say(toEighty({ mostMs: null })).when).toBe('80 °C about 14:20, not before 14:12')
  })

  it('with the readings that were left out', () => {
    const grounds: Grounds = { by: 'readings', count: 4, sinceMs: at(14, 5) }
    expect(say(toEighty({ grounds })).from).toBe('From the 4 readings since 14:05: before, it went another way.')
  })

  it('with the earlier batches it rests on, and whether they were of this pot', () => {
    const from = (grounds: Grounds, more: More = {}): string =>
      say(toEighty({ grounds, readings: 0, ...more })).from as string
    expect(from({ by: 'batches', count: 3, pot: true })).toBe('From 3 earlier batches in this pot on this burner.')
    expect(from({ by: 'batches', count: 1, pot: false })).toBe(
      'From 1 earlier batch on this burner, with about as much water.'
    )
    expect(from({ by: 'rate' })).toBe('No earlier batch: by the protocol’s rate.')
    const few = { readings: 1, doubt: { code: 'too-few', leastMs: null } } as const
    expect(from({ by: 'batches', count: 2, pot: true }, few)).toBe(
      'From 1 reading, from 2 earlier batches in this pot on this burner.'
    )
  })

  it('by its reason where the readings tell nothing', () => {
    const from = (code: Doubt['code'], more: More = {}): string =>
      say(toEighty({ grounds: { by: 'rate' }, doubt: { code, leastMs: null }, ...more })).from as string
    expect(from('steady')).toContain('does not rise beyond doubt')
    expect(from('steady', { going: 'down' })).toContain('does not fall beyond doubt')
    expect(from('not-one-curve')).toContain('lid, water or thermometer')
  })

  it('as never, with what to do about it', () => {
    expect(say({ kind: 'never', targetC: 80, going: 'up', readings: 7 })).toEqual({
      kind: 'never',
      what: 'This pot will not get to 80 °C on this heat.',
      instead: 'More heat, or a lid. Or take it: More, Done early.'
    })
    const down = say({ kind: 'never', targetC: 15, going: 'down', readings: 7 })
    expect(down.what).toBe('This pot will not get down to 15 °C by itself here.')
    expect(down.instead).toContain('Cold water')
  })
})
