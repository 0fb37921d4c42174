import { describe, expect, it } from 'vitest'
import { checkInput, plainNumber, quantityText, questionsOf } from '../../../src/core/protocol/inputs.ts'
import type { Input, InputKind } from '../../../src/core/protocol/model.ts'
import { withSteps } from './broken-files.ts'
import { protocolFrom } from './made.ts'

const input = (kind: InputKind, more: Partial<Input> = {}): Input => ({
  id: 'x',
  ask: 'X?',
  kind,
  default: null,
  least: null,
  most: null,
  choices: [],
  ...more
})

describe('the questions of a protocol', () => {
  it('come in the order of the file, with defaults and limits in canonical units', () => {
    const header = `inputs:
  soak: {ask: How long?, kind: time, default: 1 h, least: 30 min}
  warm: {ask: How warm?, kind: temperature, default: 104 °F}
  cup: {ask: How much?, kind: volume, default: 1 US cup}
`
    const questions = questionsOf(protocolFrom(withSteps('- rinse', header)))
    expect(questions.map((q) => [q.id, q.default, q.least])).toEqual([
      ['soak', 3_600_000, 1_800_000],
      ['warm', 40, null],
      ['cup', 236.5882365, null]
    ])
  })
})

describe('an answer', () => {
  it('is read in the units of its kind', () => {
    const value = (kind: InputKind, typed: string) => {
      const read = checkInput(input(kind), typed)
      return read.ok ? read.value : read.problem.code
    }
    expect(value('mass', '1 lb')).toBeCloseTo(453.59237, 9)
    expect(value('volume', '1.5 L')).toBe(1500)
    expect(value('temperature', '104 °F')).toBeCloseTo(40, 9)
    expect(value('time', '1 h 20 min')).toBe(4_800_000)
    expect(value('percent', '1,5 %')).toBe(1.5)
    expect(value('count', '2.5')).toBe('not-a-number')
    expect(value('time', '30')).toBe('unit-missing')
    expect(value('text', '   ')).toBe('empty')
  })

  it('is held against the limits and the choices, which the refusal names', () => {
    const bands = input('count', { least: 2, most: 12 })
    expect(checkInput(bands, '12')).toEqual({ ok: true, value: 12, shown: '12' })
    expect(checkInput(bands, '13')).toMatchObject({
      ok: false,
      problem: { code: 'value-outside', field: 'x', instead: 'Give at least 2 and at most 12.' }
    })
    expect(checkInput(bands, 1)).toMatchObject({ ok: false, problem: { code: 'value-outside' } })
    const base = input('choice', { choices: ['plain', 'treated'] })
    expect(checkInput(base, 'plain')).toMatchObject({ ok: true, value: 'plain' })
    expect(checkInput(base, 'wool')).toMatchObject({ ok: false, problem: { code: 'not-a-choice' } })
  })

  it('takes a bare cup only where the kitchen is known', () => {
    expect(checkInput(input('volume'), '1 cup')).toMatchObject({ ok: false, problem: { code: 'cup-without-country' } })
    expect(checkInput(input('volume'), '1 cup', 'metric')).toMatchObject({ ok: true, value: 250 })
  })

  it('goes into a quantity as text that reads back to the same value', () => {
    const kinds: [InputKind, number][] = [
      ['mass', 0.000001],
      ['volume', 1234.5678],
      ['temperature', 82.5],
      ['time', 90_500],
      ['percent', 0.0625],
      ['number', 1e-6],
      ['count', 12]
    ]
    for (const [kind, value] of kinds) {
      const read = checkInput(input(kind), quantityText(kind, value))
      expect(read.ok && Number(read.value), kind).toBeCloseTo(value, 5)
    }
    expect([plainNumber(1e-6), plainNumber(0.1 + 0.2), plainNumber(1e8)]).toEqual(['0.000001', '0.3', '100000000'])
  })
})
