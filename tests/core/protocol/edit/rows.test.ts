import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { outlineOf, type Row } from '../../../../src/core/protocol/edit/rows.ts'
import { readProtocol } from '../../../../src/core/protocol/read.ts'
import { broken, withSteps } from '../broken-files.ts'

const folder = new URL('../../../../protocols/', import.meta.url)
const built = readdirSync(folder)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'))

const told = ({ depth, kind, name, summary, lines }: Row): string =>
  `${lines.from}-${lines.to} ${'  '.repeat(depth)}${kind}${name === null ? '' : ` ${name}`}: ${summary}`

describe('the rows of a protocol', () => {
  it('are its header, inputs, materials, steps and gaps, with what is inside right after', () => {
    const text = `strandline: 1
title: Moss
inputs:
  n: {ask: How many?, kind: count, default: 3}
materials:
  acid: {kind: acid, label: vinegar, strength: 5 %, amount: 2 % owf}
steps:
  - enter: {id: A}
  - heat: {to: 85 °C, rate: 2 °C/min}
  - until:
      ask: {grade: bath, enough: trace}
      at most: 3
      steps:
        - add: {amount: 1/4 of acid, yarn: lifted}
      otherwise: [note: {record: residue}]
  - choice:
      ask: Keep it?
      answers:
        yes: [do: Cover it]
        no: []
  - alongside: {left: [rinse], right: [repeat: {times: n, steps: [turn]}]}
  - heat: off
  - do: {id: B, say: Tag the skein}
gaps:
  - {from: A, to: B, at most: 5 h}
`
    expect(readProtocol(text).ok).toBe(true)
    expect(outlineOf(text).rows.map(told)).toEqual([
      '1-1 header strandline: 1',
      '2-2 header title: Moss',
      '4-4 input n: How many?, usually 3',
      '6-6 material acid: acid, vinegar, acid, 5 %, 2 % owf',
      '8-8 enter: Enter',
      '9-9 heat: Heat to 85 °C, rate 2 °C/min',
      '10-15 until: Until the bath is trace, at most 3 times',
      '14-14   add: Add 1/4 of acid, yarn lifted',
      '15-15   otherwise: otherwise',
      '15-15     note: Note',
      '16-20 choice: Keep it?',
      '19-19   answer yes: yes',
      '19-19     do: Cover it',
      '20-20   answer no: no',
      '21-21 alongside: Alongside: left, right',
      '21-21   branch left: left',
      '21-21     rinse: Rinse',
      '21-21   branch right: right',
      '21-21     repeat: Repeat as often as n says',
      '21-21       turn: Turn',
      '22-22 heat: Heat off',
      '23-23 do: Tag the skein',
      '25-25 gap: A to B, at most 5 h'
    ])
  })

  it('have one short line each, a path of their own, and lines inside the text', () => {
    for (const text of built) {
      const { rows, problems, protocol } = outlineOf(text)
      expect(problems).toEqual([])
      expect(protocol).toEqual(readProtocol(text).ok ? (readProtocol(text) as { protocol: unknown }).protocol : null)
      expect(new Set(rows.map(({ path }) => JSON.stringify(path))).size).toBe(rows.length)
      const lines = text.split('\n').length
      for (const { summary, lines: at } of rows) {
        expect(summary).toMatch(/^[^\n]{1,120}$/)
        expect(at.from >= 1 && at.to >= at.from && at.to <= lines).toBe(true)
      }
    }
  })
})

describe('a text with problems', () => {
  it('keeps every problem of the reader, each once, in a row or in none', () => {
    let placed = 0
    for (const texts of Object.values(broken)) {
      for (const text of texts) {
        const read = readProtocol(text)
        const { rows, problems, protocol } = outlineOf(text)
        const all = [...problems, ...rows.flatMap((row) => row.problems)]
        const key = (one: { code: string; line: number; column: number; what: string }): string => JSON.stringify(one)
        expect(all.map(key).sort()).toEqual((read.ok ? [] : read.problems).map(key).sort())
        expect(protocol).toBeNull()
        placed += rows.flatMap((row) => row.problems).length
        for (const row of rows)
          for (const { line } of row.problems) expect(line >= row.lines.from && line <= row.lines.to).toBe(true)
      }
    }
    expect(placed).toBeGreaterThan(60)
  })

  it('has each problem at the innermost row, on one line too', () => {
    const text = withSteps('- rinse\n- repeat: {times: 2, steps: [squeeze, hold: {for: 6 mni}, spin]}\n- holt: 3 min')
    const at = outlineOf(text).rows.filter(({ problems }) => problems.length > 0)
    expect(at.map(({ path, problems }) => [path, problems.map(({ code }) => code)])).toEqual([
      [['steps', 1, 'repeat', 'steps', 1], ['unit-unknown']],
      [['steps', 2], ['unknown-word']]
    ])
    expect(at[1]?.kind).toBe('unknown')
  })

  it('lists what can be listed of a file that is half written', () => {
    const { rows, problems } = outlineOf('strandline: 1\ntitle: T\nsteps:\n  - rinse\n  - hold: {for: 6 min')
    expect(rows.map(({ kind, summary }) => `${kind} ${summary}`)).toEqual([
      'header 1',
      'header T',
      'rinse Rinse',
      'hold Hold 6 min'
    ])
    expect([...problems, ...rows.flatMap((row) => row.problems)].map(({ code }) => code)).toContain('not-yaml')
  })

  it.each(['', 'just words', '- a\n- b', '[1, 2]', ': : :', '"', '\uFEFF', '{'.repeat(300)])(
    '%j has no rows, and its problems',
    (text) => {
      const { rows, problems, protocol } = outlineOf(text)
      expect(rows.filter(({ kind }) => kind !== 'header')).toEqual([])
      expect([...problems, ...rows.flatMap((row) => row.problems)].length).toBeGreaterThan(0)
      expect(protocol).toBeNull()
    }
  )

  it('that are missing from the whole are no problem of its first line', () => {
    const { rows, problems } = outlineOf('strandline: 1\n')
    expect(rows.map((row) => row.problems)).toEqual([[]])
    expect(problems.map(({ where }) => where)).toEqual(['title', 'steps'])
  })
})
