import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CompareRow, compareProtocols } from '../../../../src/core/protocol/edit/compare.ts'
import { applyEdit } from '../../../../src/core/protocol/edit/edit.ts'
import { withSteps } from '../broken-files.ts'
import { places } from './any-edit.ts'
import { anyText } from './any-text.ts'

const told = ({ what, left, right, fields }: CompareRow): string =>
  [
    what,
    (left ?? right)?.summary,
    ...fields.map(({ name, was, now, same }) => `${name}: ${was} > ${now}${same ? ' =' : ''}`)
  ].join(' | ')
const differences = (a: string, b: string): string[] =>
  compareProtocols(a, b)
    .rows.filter(({ what, fields }) => what !== 'same' || fields.length > 0)
    .map(told)

const old = withSteps(`
- soak: {for: at least 30 min}
- add: {id: A1, amount: 30 mL of acid}
- repeat: {times: 2, steps: [squeeze, hold: 3 min]}
- rinse
- spin`)

describe('two versions of a protocol', () => {
  it.each([
    [
      'a field changed',
      ['30 mL of acid', '40 mL of acid'],
      ['changed | Add 30 mL of acid | amount: 30 mL of acid > 40 mL of acid']
    ],
    ['a step came', ['  - rinse\n', '  - rinse\n  - turn\n'], ['added | Turn']],
    ['a step went', ['  - rinse\n', ''], ['removed | Rinse']],
    ['a step inside a loop changed', ['hold: 3 min', 'hold: 4 min'], ['changed | Hold 3 min | for: 3 min > 4 min']],
    ['a loop goes round more often', ['times: 2', 'times: 3'], ['changed | Repeat 2 times | times: 2 > 3']],
    ['the title changed', ['title: Test', 'title: New'], ['changed | Test | title: Test > New']],
    [
      'the same amount in another unit',
      ['30 mL of acid', '0.03 L of acid'],
      ['same | Add 30 mL of acid | amount: 30 mL of acid > 0.03 L of acid =']
    ],
    [
      'another short form and a comment',
      ['- soak: {for: at least 30 min}', '# first\n  - soak: at least 30 min # long'],
      []
    ],
    [
      'another word under the same id',
      ['add: {id: A1, amount: 30 mL of acid}', 'do: {id: A1, say: Pour}'],
      ['changed | Add 30 mL of acid | step: add > do | amount: 30 mL of acid > null | say: null > Pour']
    ]
  ])('%s', (_, [from = '', to = ''], expected) => {
    expect(old).toContain(from)
    expect(differences(old, old.replace(from, to))).toEqual(expected)
  })

  it('a step that moved among its neighbours, and into a loop', () => {
    const later = applyEdit(old, { type: 'move', from: ['steps', 1], to: { parent: ['steps'], index: 4 } })
    const inside = applyEdit(old, {
      type: 'move',
      from: ['steps', 1],
      to: { parent: ['steps', 2, 'repeat', 'steps'], index: 0 }
    })
    if (!later.ok || !inside.ok) throw new Error('not moved')
    expect(differences(old, later.text)).toEqual(['moved | Add 30 mL of acid'])
    // A bare word has no field that could tell it.
    expect(differences(old, old.replace('  - rinse\n  - spin', '  - spin\n  - rinse'))).toEqual(['moved | Rinse'])
    expect(differences(old, inside.text)).toEqual(['moved | Add 30 mL of acid'])
  })

  it('materials, inputs and gaps by their names and moments', () => {
    const head = `inputs:\n  n: {ask: How many?, kind: count}\nmaterials:\n  acid: {kind: acid, strength: 5 %}\n  salt: powder\n`
    const a = withSteps('- {add: {id: A1, amount: 1 g of salt}}\n- {add: {id: A2, amount: 1 g of salt}}', head)
    const gap = 'gaps:\n  - {from: A1, to: A2, at most: 2 h}\n'
    const b = a
      .replace('strength: 5 %', 'strength: 10 %')
      .replace('salt: powder', 'salt: {kind: powder}')
      .replace('How many?', 'How much?')
    expect(differences(a + gap, b + gap.replace('2 h', '120 min'))).toEqual([
      'changed | How many? | ask: How many? > How much?',
      'changed | acid, acid, 5 % | strength: 5 % > 10 %',
      'same | A1 to A2, at most 2 h | at most: 2 h > 120 min ='
    ])
  })

  it('a cup is another amount in another kitchen', () => {
    const cup = (kitchen: string): string => withSteps('- add: 1 cup of water', `kitchen: ${kitchen}\n`)
    expect(differences(cup('us'), cup('metric'))).toEqual([
      'changed | us | kitchen: us > metric',
      'changed | Add 1 cup of water | amount: 1 cup of water > 1 cup of water'
    ])
  })

  it('says which side can’t be read, and shows the other', () => {
    const { rows, readable } = compareProtocols(old, 'title: "open')
    expect(readable).toEqual({ left: true, right: false })
    expect(rows.filter(({ left }) => left !== null).length).toBeGreaterThan(6)
  })
})

describe('any protocol', () => {
  it('is the same as itself in any style (seed 20310614)', () => {
    fc.assert(
      fc.property(anyText, ({ text, data }) => {
        expect(differences(text, JSON.stringify(data)), text).toEqual([])
      }),
      { numRuns: 80, seed: 20310614 }
    )
  })

  it('against itself with one step more shows that step alone as new, and the other way as gone (seed 20310614)', () => {
    fc.assert(
      fc.property(anyText, fc.nat(1000), fc.nat(5), ({ text, data }, at, index) => {
        const { lists } = places(data)
        const parent = lists[at % lists.length] ?? ['steps']
        const made = applyEdit(text, { type: 'add', parent, index, kind: 'do', values: { say: 'Something new' } })
        if (!made.ok) throw new Error(made.problem)
        expect(differences(text, made.text)).toEqual(['added | Something new | say: null > Something new'])
        expect(differences(made.text, text)).toEqual(['removed | Something new | say: Something new > null'])
      }),
      { numRuns: 80, seed: 20310614 }
    )
  })

  it('has every row of either side once', () => {
    const folder = new URL('../../../../protocols/', import.meta.url)
    const texts = readdirSync(folder)
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    const sizes = texts.map((text) => compareProtocols(text, '').rows.length)
    for (const [i, a] of texts.entries()) {
      for (const [j, b] of texts.entries()) {
        const { rows } = compareProtocols(a, b)
        for (const [side, all] of [['left', sizes[i]] as const, ['right', sizes[j]] as const]) {
          const paths = rows.flatMap((row) => (row[side] ? [JSON.stringify(row[side].path)] : []))
          expect(new Set(paths).size).toBe(paths.length)
          expect(paths.length).toBe(all)
        }
      }
    }
  })
})
