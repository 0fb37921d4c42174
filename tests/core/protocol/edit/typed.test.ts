import { describe, expect, it } from 'vitest'
import { type Field, type FormKind, formKinds, formOf } from '../../../../src/core/protocol/edit/form.ts'
import { valueFrom } from '../../../../src/core/protocol/edit/typed.ts'

const field = (kind: FormKind, name: string): Field => {
  const found = formOf(kind).find((one) => one.name === name)
  if (!found) throw new Error(name)
  return found
}

describe('what is typed into a field', () => {
  it.each<[FormKind, string, string, unknown]>([
    ['repeat', 'times', '4', 4],
    ['repeat', 'times', ' bands ', 'bands'],
    ['hold', 'for', '6 min', '6 min'],
    ['input', 'default', '5', 5],
    ['input', 'default', '05', '05'],
    ['hold', 'soft', 'true', true],
    ['hold', 'late', 'absorb', 'absorb'],
    ['header', 'about', 'One.\r\nTwo.\n', 'One.\nTwo.\n'],
    ['hold', 'forbid', 'stir, lift', 'stir, lift'],
    ['wait', 'until', '40 °C', '40 °C'],
    ['material', 'density', '1.06', 1.06]
  ])('%s %s: %j', (kind, name, typed, value) => {
    expect(valueFrom(field(kind, name), typed)).toEqual({ ok: true, value })
  })

  it.each<[FormKind, string, string, string]>([
    ['hold', 'late', 'never', 'Late is one of shift, absorb, off-protocol.'],
    ['hold', 'soft', 'yes', 'Soft is true or false.'],
    ['material', 'density', '1,06', 'Density is a number, for example 1.06.'],
    ['until', 'ask', 'bath', 'Ask has fields of its own.'],
    ['repeat', 'steps', 'rinse', 'Steps is a list of steps.'],
    ['hold', 'for', '  ', 'For is empty.']
  ])('%s %s: %j is refused', (kind, name, typed, problem) => {
    expect(valueFrom(field(kind, name), typed)).toEqual({ ok: false, problem })
  })

  it('gives back every example of a single value', () => {
    const single = formKinds.flatMap((kind) => formOf(kind)).filter(({ example }) => typeof example !== 'object')
    expect(single.length).toBeGreaterThan(200)
    for (const one of single)
      expect(valueFrom(one, String(one.example)), one.name).toEqual({ ok: true, value: one.example })
  })
})
