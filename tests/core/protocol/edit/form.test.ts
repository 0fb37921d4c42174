import { describe, expect, it } from 'vitest'
import { blankProtocol } from '../../../../src/core/protocol/edit/blank.ts'
import type { Data, Fields } from '../../../../src/core/protocol/edit/data.ts'
import { applyEdit } from '../../../../src/core/protocol/edit/edit.ts'
import {
  aboutOf,
  type Field,
  type FormKind,
  formKinds,
  formOf,
  shortOf,
  startingValues
} from '../../../../src/core/protocol/edit/form.ts'
import { stepWords } from '../../../../src/core/protocol/model.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import { constructWords } from '../../../../src/core/protocol/written.ts'
import { shippedSchema } from '../judge.ts'

type Json = Record<string, unknown>

/** Every name under `properties` of the shipped schema below a part of it, with what leads there. */
const propertiesIn = (node: unknown, above = ''): Set<string> => {
  const found = new Set<string>()
  if (Array.isArray(node)) for (const one of node) for (const name of propertiesIn(one, above)) found.add(name)
  if (typeof node !== 'object' || node === null || Array.isArray(node)) return found
  const { $ref, properties, ...rest } = node as Json
  if (typeof $ref === 'string') {
    const name = $ref.replace('#/$defs/', '')
    return name === 'step' ? found : propertiesIn(shippedSchema.$defs[name], above)
  }
  for (const [name, inner] of Object.entries((properties ?? {}) as Json)) {
    found.add(`${above}${name}`)
    for (const deeper of propertiesIn(inner, `${above}${name}/`)) found.add(deeper)
  }
  for (const [key, inner] of Object.entries(rest)) {
    // Under allOf stands the short form: the main field once more.
    if (key !== '$defs' && key !== 'allOf') for (const name of propertiesIn(inner, above)) found.add(name)
  }
  return found
}

/** The same names as a form shows them. */
const namesIn = (fields: Field[], above = ''): string[] =>
  fields.flatMap((field) => {
    const own = `${above}${field.name}`
    const below = field.name === '' ? above : `${own}/`
    const inner = [
      ...(field.fields ?? []),
      ...(field.of ? [{ ...field.of, name: '' }] : []),
      ...(field.or ?? []).map((one) => ({ ...one, name: '' }))
    ]
    return [...(field.name === '' ? [] : [own]), ...namesIn(inner, below)]
  })

const schemaOf = (kind: FormKind): unknown =>
  kind === 'header' ? { ...shippedSchema, $defs: {} } : shippedSchema.$defs.step.anyOf[1].properties[kind]

describe('the forms', () => {
  it('are there for every step word, every construct, the header, an input, a material and a gap', () => {
    expect([...formKinds].sort()).toEqual(
      ['header', 'input', 'material', 'gap', ...stepWords, ...constructWords].sort()
    )
    for (const word of [...stepWords, ...constructWords]) expect(aboutOf(word), word).toMatch(/\w{3}/)
  })

  for (const kind of ['header', ...stepWords, ...constructWords] as const) {
    it(`reach every property of the JSON Schema: ${kind}`, () => {
      const wanted = [...propertiesIn(schemaOf(kind))].sort()
      const shown = new Set(namesIn(formOf(kind)))
      expect(wanted.length).toBeGreaterThan(2)
      expect(wanted.filter((name) => !shown.has(name))).toEqual([])
      expect([...shown].filter((name) => !wanted.includes(name))).toEqual([])
    })
  }

  it('are those of the parts of the header too', () => {
    const header = formOf('header')
    const of = (name: string): Field | undefined => header.find((field) => field.name === name)?.of
    expect(of('inputs')?.fields).toEqual(formOf('input'))
    expect(of('gaps')?.fields).toEqual(formOf('gap'))
    expect(of('materials')?.or?.[0]?.fields).toEqual(formOf('material'))
  })

  it('say what each field is, and show its usual kind', () => {
    const field = (kind: FormKind, name: string): Field | undefined => formOf(kind).find((one) => one.name === name)
    expect(field('hold', 'for')).toEqual({
      name: 'for',
      label: 'For',
      kind: 'quantity',
      required: false,
      help: 'How long.',
      example: '25..30 min'
    })
    expect(field('hold', 'late')).toMatchObject({ kind: 'choice', choices: ['shift', 'absorb', 'off-protocol'] })
    expect(field('add', 'amounts')).toMatchObject({ kind: 'record', of: { kind: 'quantity' } })
    expect(field('repeat', 'times')).toMatchObject({ kind: 'number', required: true, or: [{ kind: 'text' }] })
    expect(field('repeat', 'steps')).toMatchObject({ kind: 'list', steps: true })
    expect(field('until', 'ask')).toMatchObject({
      kind: 'record',
      fields: expect.arrayContaining([expect.objectContaining({ name: 'enough', kind: 'choice' })])
    })
    expect(field('for each', 'band')).toMatchObject({ kind: 'record', or: [{ kind: 'list' }] })
    expect(field('header', 'about')).toMatchObject({ kind: 'text', long: true })
    expect(field('header', 'demo')).toMatchObject({ kind: 'flag' })
    expect(field('wait', 'until')).toMatchObject({
      kind: 'list',
      alone: true,
      of: { kind: 'text', or: [{ kind: 'record' }] }
    })
    expect(shortOf('hold')).toBe('for')
  })
})

const head = `strandline: 1
title: Test
liquor: 20:1
inputs:
  bands: {ask: How many?, kind: count, default: 3}
materials:
  acid: {kind: acid, strength: 5 %, amount: 2 % owf}
  stock Y: {kind: stock, strength: 1 %}
  stock B: {kind: stock, strength: 1 %}
`

/** A minimal file around one step: moments to count from, heat turned off, a loop for what is counted item by item. */
const around: ((step: Data) => string)[] = [
  (step) => `${head}steps: [enter: {id: E, marks: all in}, ${JSON.stringify(step)}, heat: off]\n`,
  (step) => `${head}steps: [for each: {jar: [J1, J2], steps: [${JSON.stringify(step)}]}, heat: off]\n`
]

const accepted = (step: Data): boolean => around.some((file) => readProtocol(file(step)).ok)

/** The examples that may have to stand beside it: a grade wants to know what is enough. */
const companies = (form: Field[], field: Field, own: Fields): Fields[] => {
  const others = form.filter(({ name, steps }) => name !== '' && name !== field.name && !steps && !(name in own))
  const plain = others.map(({ name, example }) => ({ [name]: example }))
  return [{}, ...plain, ...plain.flatMap((a) => plain.map((b) => ({ ...a, ...b })))]
}

describe('the examples of the forms', () => {
  for (const word of [...stepWords, ...constructWords]) {
    it(`are taken by the reader: ${word}`, () => {
      const form = formOf(word)
      const start = startingValues(word)
      expect(accepted({ [word]: start }), JSON.stringify(start)).toBe(true)
      const required = Object.fromEntries(
        form.filter((field) => field.required).map(({ name, example }) => [name, example])
      )
      for (const field of form) {
        if (field.name === '' || field.steps) continue
        const own = { ...(word === 'alongside' ? start : required), [field.name]: field.example }
        // Each loop goes through one kind of thing.
        const loop =
          word === 'for each' && field.example !== null && typeof field.example === 'object' && 'from' in field.example
        const base = word === 'for each' && !loop ? { ...start, ...own } : own
        const taken = companies(form, field, base).some((beside) => accepted({ [word]: { ...beside, ...base } }))
        expect(taken, `${word} ${field.name}: ${JSON.stringify(field.example)}`).toBe(true)
      }
    })
  }

  it('are taken in the header, an input, a material and a gap', () => {
    const add = (text: string, path: (string | number)[], field: Field): void => {
      const made = applyEdit(text, { type: 'set', path, field: field.name, value: field.example })
      const read = made.ok ? readProtocol(made.text) : { ok: false, problems: made.problem }
      expect(read, `${field.name}\n${made.ok ? made.text : ''}`).toMatchObject({ ok: true })
    }
    const steps = 'steps: [enter: {id: A1}, hold: {id: A2, for: 1 h}]\n'
    for (const field of formOf('header')) if (field.name !== 'inputs' && !field.steps) add(`${head}${steps}`, [], field)
    for (const field of formOf('input')) add(`${head}${steps}`, ['inputs', 'bands'], field)
    for (const field of formOf('material'))
      add(`${head}${steps}`, ['materials', field.name === 'parts' ? 'acid' : 'stock Y'], field)
    for (const field of formOf('gap'))
      add(`${head}${steps}gaps: [{from: A1, to: A2, at most: 2 h}]\n`, ['gaps', 0], field)
  })
})

describe('a blank protocol', () => {
  it.each(['Moss', '', '  two\nlines ', 'a: b # c', '12', '"quoted"', 'x'.repeat(200)])(
    'under the title %j is read',
    (title) => {
      const text = blankProtocol(title)
      expect(text.split('\n').length).toBeLessThanOrEqual(5)
      const read = readProtocol(text)
      expect(read.ok ? read.protocol.title : read.problems).toBe(
        title.replace(/\s+/g, ' ').trim().slice(0, 80) || 'New protocol'
      )
    }
  )
})
