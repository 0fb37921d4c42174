import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { applyEdit } from '../../../../src/core/protocol/edit/edit.ts'
import { forbiddenAt } from '../../../../src/core/protocol/source/characters.ts'

const seed = 20310614
const block = 'strandline: 1\ntitle: T\nsteps:\n  - do: x\n  - hold: 6 min\n'
const flow = 'strandline: 1\ntitle: T\nsteps:\n  - do: {say: x}\n  - hold: 6 min\n'

const sign = fc.constantFrom(...'ab 1.:,-#{}[]"\'&*!|>%@`?~\n=_°é'.split(''))
const anyString = fc.oneof(
  fc.string({ maxLength: 20 }),
  fc.string({ unit: sign, maxLength: 14 }),
  fc.constantFrom(
    'true',
    'No',
    'null',
    '~',
    '1e3',
    '0x1f',
    '0o17',
    '.5',
    '5.',
    '+1',
    '1_000',
    '-.inf',
    '.NaN',
    '2031-06-14',
    '12:30',
    '---',
    '...',
    '- a',
    '? a',
    ': a',
    'a: b',
    'a #b',
    ' a',
    'a ',
    '<<',
    '=',
    '!t',
    '%a',
    '',
    'two\nlines',
    'two\nlines\n',
    '\n',
    'a\n\nb\n',
    ' a\nb\n',
    'a \nb',
    'a\n\n'
  )
)
const value = fc.oneof(
  anyString,
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.array(anyString, { maxLength: 4 })
)

describe('any value that is written is read back as it was', () => {
  for (const [name, text] of Object.entries({ block, flow })) {
    it(`in ${name} (seed ${seed})`, () => {
      fc.assert(
        fc.property(value, (one) => {
          if ([one].flat().some((part) => typeof part === 'string' && forbiddenAt(part) >= 0)) return
          const made = applyEdit(text, { type: 'set', path: ['steps', 0], field: 'say', value: one })
          if (!made.ok) throw new Error(`${made.problem} ${JSON.stringify(one)}`)
          const [step, after] = parse(made.text).steps
          // Minus zero is zero.
          const said = typeof one === 'number' ? one + 0 : one
          expect(step.do.say ?? step.do, made.text).toEqual(said)
          expect(after).toEqual({ hold: '6 min' })
        }),
        { numRuns: 1500, seed }
      )
    }, 60_000)
  }
})

describe('a value is written as a person would write it', () => {
  it.each([
    ['85..90 °C', '85..90 °C'],
    ['1/2 of acid', '1/2 of acid'],
    ['20:1', '20:1'],
    ['at least 30 min and until 40 °C', 'at least 30 min and until 40 °C'],
    ['Don’t stir, yet', 'Don’t stir, yet'],
    ["It's in", "It's in"],
    ['x#1', 'x#1'],
    ['-5 °C', '-5 °C'],
    ['5', '"5"'],
    ['true', '"true"'],
    ['{each}', '"{each}"'],
    ['a: b', '"a: b"'],
    ['', '""']
  ])('%s', (one, written) => {
    const made = applyEdit(block, { type: 'set', path: ['steps', 0], field: 'say', value: one })
    expect(made.ok && made.text).toBe(block.replace('do: x', () => `do: ${written}`))
  })

  it('on several lines under a bar', () => {
    const made = applyEdit(block, { type: 'set', path: [], field: 'about', value: 'One.\n\nTwo.\n' })
    expect(made.ok && made.text).toBe(block.replace('title: T\n', 'title: T\nabout: |\n  One.\n\n  Two.\n'))
  })
})
