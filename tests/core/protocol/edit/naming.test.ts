import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../../src/core/protocol/edit/edit.ts'
import { programmeOf } from '../../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import { inputs } from '../made.ts'

const seed = 20310614

const head = 'strandline: 1\ntitle: T\nliquor: 20:1\nstart: 40 °C\n'
const TEXT = `${head}steps:
  - fill: {id: A1, marks: all in} # the first
  - hold: {for: 30 min, from: A1}
  - wait: 10 min after A1
  - wait: {until: [A1, {time: 5 min, after: A1}, {moment: A1}], at least: 1 min}
  - wait: 40 min after A1 and A1
  - do: A1
  - enter: {id: A10, call: A1}
  - wait: 40 min after A10
gaps:
  - {from: A1, to: A10, at most: 2 h}
`

const named = (text: string, to: string, path: (string | number)[] = ['steps', 0]): string => {
  const made = applyEdit(text, { type: 'name', path, to })
  if (!made.ok) throw new Error(made.problem)
  return made.text
}
const refusal = (text: string, to: string): string => {
  const made = applyEdit(text, { type: 'name', path: ['steps', 0], to })
  return made.ok ? 'done' : made.problem
}

const programme = (text: string): string => {
  const read = readProtocol(text)
  if (!read.ok) throw new Error(`${JSON.stringify(read.problems)}\n${text}`)
  const made = programmeOf(read.protocol, inputs())
  if (!made.ok) throw new Error(`${JSON.stringify(made.problems)}\n${text}`)
  return JSON.stringify(made.programme)
}

describe('a step given another id', () => {
  it('is called by it wherever the old one was a reference, and nowhere else', () => {
    expect(named(TEXT, 'first')).toBe(
      TEXT.replace('id: A1,', 'id: first,')
        .replace('from: A1}', 'from: first}')
        .replace('- wait: 10 min after A1', '- wait: 10 min after first')
        .replace(
          '[A1, {time: 5 min, after: A1}, {moment: A1}]',
          '[first, {time: 5 min, after: first}, {moment: first}]'
        )
        .replace('40 min after A1 and A1', '40 min after first and first')
        .replace('{from: A1, to', '{from: first, to')
    )
  })

  it('and back again is the text as it was', () => {
    expect(named(named(TEXT, 'first'), 'A1')).toBe(TEXT)
  })

  it('that had none is given one, and one that refers to nothing changes one line', () => {
    expect(named(`${head}steps:\n  - rinse\n`, 'last')).toBe(`${head}steps:\n  - rinse: {id: last}\n`)
  })

  it('keeps what it says to a person in the words of its own name', () => {
    const text = `${head}steps:\n  - wait: {id: full, until: full}\n  - wait: full\n`
    expect(named(text, 'steam')).toBe(`${head}steps:\n  - wait: {id: steam, until: full}\n  - wait: steam\n`)
  })

  it('leaves what refers to a name that two things have: nobody can tell which is meant', () => {
    const text = `${head}steps:\n  - fill: {id: A1}\n  - enter: {marks: A1}\n  - wait: 5 min after A1\n`
    expect(named(text, 'B')).toBe(text.replace('id: A1', 'id: B'))
  })

  it('is refused a name that is taken, that is none, or that would read as a temperature', () => {
    expect(refusal(TEXT, 'A10')).toBe('A10 is there already.')
    expect(refusal(TEXT, 'all in')).toMatch(/only letters, digits/)
    expect(refusal(TEXT, '1st')).toMatch(/begins with a letter/)
    expect(refusal(TEXT, 'boil')).toMatch(/reads as a time or a temperature/)
  })

  it(`leaves the programme as it was but for the name, wherever it is referred to (seed ${seed})`, () => {
    const OLD = 'Qzx'
    const refer = fc.constantFrom(
      `wait: 90 min after ${OLD}`,
      `wait: ${OLD}`,
      `wait: {until: [${OLD}, 10 min], expect: 5 min}`,
      `wait: {until: ${OLD} and 1 h after other}`,
      `wait: {until: {time: 2 h, after: ${OLD}}}`,
      `wait:\n            until:\n              - {moment: ${OLD}}\n              - full steam`,
      `hold: {for: 95 min, from: "${OLD}"}`,
      `cool: at least 80 min after ${OLD} and 95 °C`,
      'do: Stir the bath',
      'wait: full steam'
    )
    const word = fc.constantFrom('fill', 'enter', 'do', 'hold', 'air')
    const value: Record<string, string> = { do: ', say: Stir', hold: ', for: 5 min', air: ', for: 5 min' }
    const name = fc.constantFrom('B', 'all-in', 'x_1', 'Step2', 'until1', 'null', 'true', 'e5')
    fc.assert(
      fc.property(word, fc.array(refer, { maxLength: 8 }), name, fc.boolean(), (first, refers, to, gap) => {
        const list = refers.map((one) => `        - ${one}\n`).join('')
        const loop = list === '' ? '' : `  - repeat:\n      times: 2\n      steps:\n${list}`
        const gaps = gap ? `gaps:\n  - {from: ${OLD}, to: end, at most: 9 h}\n` : ''
        const steps = `  - ${first}: {id: ${OLD}${value[first] ?? ''}}\n  - lift: {marks: other}\n${loop}  - rinse: {id: end}\n`
        const text = `${head}steps:\n${steps}${gaps}`
        const made = named(text, to)
        expect(programme(made), made).toBe(programme(text).replaceAll(OLD, to))
        expect(programme(named(made, OLD))).toBe(programme(text))
      }),
      { numRuns: 60, seed }
    )
  })
})
