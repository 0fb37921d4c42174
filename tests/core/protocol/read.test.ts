import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  isOfSource,
  isStructural,
  meaningOf,
  type ProblemCode,
  problemCodes
} from '../../../src/core/protocol/problem-codes.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { broken, withSteps } from './broken-files.ts'
import { schemaAllows } from './judge.ts'

const folder = new URL('../../../protocols/', import.meta.url)
const builtIns = readdirSync(folder).filter((name) => name.endsWith('.yaml'))

describe('a broken file', () => {
  for (const code of problemCodes) {
    it(`with ${code} is refused at its place`, () => {
      expect(broken[code].length).toBeGreaterThanOrEqual(2)
      for (const text of broken[code]) {
        const read = readProtocol(text)
        const problems = read.ok ? [] : read.problems
        expect(
          problems.map((p) => p.code),
          text.slice(0, 300)
        ).toContain(code)
        const lines = text.split('\n')
        for (const { line, column, what, instead } of problems) {
          expect(line).toBeGreaterThanOrEqual(1)
          expect(line).toBeLessThanOrEqual(Math.max(lines.length, 1))
          expect(column).toBeGreaterThanOrEqual(1)
          expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1)
          expect(what.length).toBeGreaterThan(3)
          expect(instead.length).toBeGreaterThan(3)
        }
      }
    })
  }

  it('is refused by the JSON Schema too where its shape is wrong, and only there', () => {
    for (const [code, texts] of Object.entries(broken)) {
      for (const text of texts) {
        const read = readProtocol(text)
        const codes = read.ok ? [] : read.problems.map((p) => p.code as ProblemCode)
        const allows = schemaAllows(text)
        // What is refused before it is read as a protocol never reaches a schema.
        if (allows === null || codes.some(isOfSource)) continue
        expect(allows, `${code}: ${text.slice(0, 300)}\n${codes}`).toBe(!codes.some(isStructural))
      }
    }
  })

  it('has a line of meaning for each code of its own', () => {
    const quantities = problemCodes.filter((code) => meaningOf(code) === null)
    expect(problemCodes.length - quantities.length).toBe(10 + 10 + 24)
  })
})

describe('the problems of a file', () => {
  const problemsOf = (text: string) => {
    const read = readProtocol(text)
    return read.ok ? [] : read.problems
  }

  it('are told all at once, in the order of the text', () => {
    const text = withSteps(
      '- lwoer: band\n- hold: {for: 30, four: 1}\n- heat: {to: 80 °C, rate: 0 °C/min}',
      'tilte: x\n'
    )
    expect(problemsOf(text).map(({ code, line, column }) => [code, line, column])).toEqual([
      ['unknown-field', 3, 1],
      ['unknown-word', 5, 5],
      ['unknown-field', 6, 21],
      ['out-of-range', 7, 29]
    ])
  })

  it('speak of the step they are in, and of the word that was probably meant', () => {
    const [missing] = problemsOf(withSteps('- lower: {hands: 30 s}'))
    expect(missing).toMatchObject({ what: 'lower: to is missing.', where: 'steps[0].lower.to', line: 4, column: 5 })
    const [typo] = problemsOf(withSteps('- rinse\n- hodl: 6 min'))
    expect(typo).toMatchObject({ what: 'There is no step hodl.', instead: 'write hold', line: 5 })
    const [field] = problemsOf(withSteps('- hold: {fro: 6 min}'))
    expect(field?.instead).toBe('write for')
  })

  it('ask an amount without a unit for one, where it stands', () => {
    for (const kind of ['stock', 'acid', 'powder', 'other']) {
      const header = `materials:\n  plum dye: {kind: ${kind}, strength: 1 %, amount: 2}\n`
      expect(problemsOf(withSteps('- add: all of plum dye', header))).toMatchObject([
        {
          code: 'unit-missing',
          where: 'materials.plum dye.amount',
          line: 4,
          what: '"2" can\'t be read.',
          instead: 'Write 2 % owf, 2 g or 2 mL.'
        }
      ])
    }
    const [answered] = problemsOf(
      withSteps(
        '- add: all of dye',
        'inputs:\n  n: {ask: How much?, kind: number, default: 2}\nmaterials:\n  dye: {kind: powder, amount: "{n}"}\n'
      )
    )
    expect(answered).toMatchObject({ code: 'unit-missing' })
    expect(problemsOf(withSteps('- fill: 20'))[0]?.instead).toBe('write 20:1 or 2 L')
    expect(problemsOf(withSteps('- rinse', 'liquor: 20\n'))[0]?.instead).toBe('write 20:1')
  })

  it('let things be counted by their word', () => {
    const header = 'materials:\n  soap: {kind: other, amount: 3 drops}\n'
    expect(problemsOf(withSteps('- add: all of soap\n- add: 2 tablets of soap', header))).toEqual([])
  })

  it('name each material once, and its label where it has another', () => {
    const header = 'materials:\n  Plum dye: {kind: stock, label: plum dye}\n  acid: {kind: acid, label: vinegar}\n'
    expect(problemsOf(withSteps('- add: 2 mL of something', header))[0]?.instead).toBe(
      'materials: Plum dye, acid, vinegar'
    )
  })

  it('say how to mend two words in one item, whichever comes first', () => {
    expect(problemsOf(withSteps('- hold:\n  for: 6 min'))[0]?.instead).toBe('indent for under hold')
    expect(problemsOf(withSteps('- for: 6 min\n  hold:'))[0]?.instead).toBe('indent for under hold')
    expect(problemsOf(withSteps('- rinse:\n  spin:'))[0]?.instead).toBe('put - before spin')
  })

  it('are placed in the fields of loops inside loops', () => {
    const text = withSteps(
      '- repeat:\n    times: 2\n    steps:\n      - repeat:\n          times: 2\n          steps:\n            - hold: {for: 30 moons}'
    )
    expect(problemsOf(text)[0]).toMatchObject({
      code: 'unit-unknown',
      line: 10,
      column: 29,
      where: 'steps[0].repeat.steps[0].repeat.steps[0].hold.for'
    })
  })

  it('keep their columns behind a byte order mark and Windows line ends', () => {
    const text = `\uFEFF${withSteps('- rinse\n- hodl: 6 min').replaceAll('\n', '\r\n')}`
    expect(problemsOf(text)[0]).toMatchObject({ line: 5, column: 5 })
    expect(readProtocol(text.replace('hodl', 'hold')).ok).toBe(true)
  })
})

describe('a good file', () => {
  for (const name of builtIns) {
    it(`such as ${name} is read, and the JSON Schema allows it`, () => {
      const text = readFileSync(new URL(name, folder), 'utf8')
      const read = readProtocol(text)
      expect(read.ok ? [] : read.problems).toEqual([])
      expect(schemaAllows(text)).toBe(true)
      if (read.ok) expect(JSON.parse(JSON.stringify(read.protocol))).toEqual(read.protocol)
    })
  }

  it('may have rulers of dashes and long comments', () => {
    expect(readProtocol(`# ${'-'.repeat(300)}\n${withSteps('- hold: 6 min # a ring, not a flame')}`).ok).toBe(true)
  })

  it('may be JSON', () => {
    const read = readProtocol(
      JSON.stringify({ strandline: 1, title: 'T', steps: [{ hold: { for: '6 min' } }, 'rinse'] })
    )
    expect(read).toMatchObject({ ok: true, protocol: { title: 'T', steps: [{ word: 'hold' }, { word: 'rinse' }] } })
  })

  it('is read with and without the short form to the same steps', () => {
    const short = readProtocol(withSteps('- hold: 6 min\n- heat: 80 °C\n- heat: off\n- squeeze'))
    const long = readProtocol(withSteps('- hold: {for: 6 min}\n- heat: {to: 80 °C}\n- heat: {to: off}\n- squeeze: {}'))
    expect(short).toEqual(long)
    expect(short.ok).toBe(true)
  })

  it('takes a bare cup for what its header says', () => {
    const header = 'kitchen: us\nmaterials:\n  acid: {kind: acid, strength: 5 %}\n'
    expect(readProtocol(withSteps('- add: 1 cup of acid', header)).ok).toBe(true)
  })

  it('may wait for a moment of a branch alongside, and for one that every answer brings', () => {
    const alongside = '- alongside:\n    a: [hold: 5 min, rinse: {id: A}]\n    b: [wait: 5 min after A, spin]'
    const choice =
      '- choice: {ask: Which?, answers: {yes: [rinse: {marks: wet}], no: [spin: {marks: wet}]}}\n- wait: 5 min after wet'
    expect(readProtocol(withSteps(alongside)).ok).toBe(true)
    expect(readProtocol(withSteps(choice)).ok).toBe(true)
  })
})
