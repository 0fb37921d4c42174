import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { grades, stepWords } from '../../../src/core/protocol/model.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { constructSchemas } from '../../../src/core/protocol/schema/construct-schemas.ts'
import { header, inputKinds, materialKinds } from '../../../src/core/protocol/schema/header.ts'
import { recordItems } from '../../../src/core/protocol/schema/record-items.ts'
import { lateRules, sharedFields } from '../../../src/core/protocol/schema/shared.ts'
import { stepKinds } from '../../../src/core/protocol/schema/step-kinds.ts'
import * as limits from '../../../src/core/protocol/source/limits.ts'
import { constructWords } from '../../../src/core/protocol/written.ts'
import { withSteps } from './broken-files.ts'
import { schemaAllows } from './judge.ts'
import { inputs, protocolFrom } from './made.ts'

const page = readFileSync(new URL('../../../protocols/README.md', import.meta.url), 'utf8')
const snippets = [...page.matchAll(/^```yaml\n([\s\S]*?)^```/gm)].map((match) => match[1] ?? '')

const materials = `liquor: 20:1
materials:
  acid: {kind: acid, strength: 5 %, amount: 3 % owf}
  dye: {kind: stock, strength: 1 %}
`

/** A snippet is a whole protocol, some steps, or a part of the header with steps. */
const whole = (snippet: string): string => {
  if (/^(?:#.*\n)*strandline:/.test(snippet)) return snippet
  if (snippet.startsWith('- '))
    return withSteps(
      /heat: (?!off)/.test(snippet) && !snippet.includes('heat: off') ? `${snippet}- heat: off` : snippet,
      materials
    )
  return `strandline: 1\ntitle: Part\n${snippet}`
}

describe('the language reference', () => {
  it('has examples', () => expect(snippets.length).toBeGreaterThanOrEqual(14))

  for (const [i, snippet] of snippets.entries()) {
    it(`example ${i + 1} is read, allowed by the JSON Schema, and works out: ${snippet.split('\n')[0]}`, () => {
      const read = readProtocol(whole(snippet))
      expect(read.ok ? [] : read.problems, whole(snippet)).toEqual([])
      expect(schemaAllows(whole(snippet))).toBe(true)
      if (!read.ok) return
      const bottles = Object.fromEntries(
        read.protocol.materials.map(({ id }) => [
          id,
          { name: id, percent: 1, basis: 'w/v', densityGPerML: null } as const
        ])
      )
      const made = programmeOf(read.protocol, inputs({ materials: bottles }))
      expect(made.ok ? [] : made.problems).toEqual([])
    })
  }

  it('shows every word of the language and every kind of record', () => {
    const shown = snippets.join('\n')
    const missing = [...stepWords, ...constructWords].filter(
      (word) => !new RegExp(`(?:- |\\[|, )${word}\\b`).test(shown)
    )
    expect(missing).toEqual([])
    expect(recordItems.filter((item) => !page.includes(`\`${item}\``))).toEqual([])
  })
})

/** The rows of the table under a heading, each as its cells. */
const tableUnder = (heading: string): string[][] => {
  const from = page.split(`${heading}\n`)[1] ?? ''
  const [table] = /(?:^\|.*\n)+/m.exec(from) ?? ['']
  const rows = table.trim().split('\n').slice(2)
  return rows.map((row) =>
    row
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim())
  )
}
const quoted = (cell: string): string[] => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? '')

describe('what the reference says outside its examples', () => {
  // A step, or a header, that takes a value of that kind.
  const places: Record<string, (value: string) => string> = {
    time: (value) => withSteps(`- hold: ${value}`),
    temperature: (value) => withSteps(`- heat: ${value}\n- heat: off`),
    rate: (value) => withSteps(`- heat: {to: 80 °C, rate: ${value}}\n- heat: off`),
    amount: (value) => withSteps(value.includes(' of ') ? `- add: ${value}` : `- fill: ${value}`, ofAll),
    share: (value) => withSteps(`- add: ${value}`, ofAll),
    depth: (value) =>
      withSteps(
        value === 'band'
          ? '- for each: {band: {from: 1, to: 3}, steps: [lower: band]}'
          : `- lower: {to: ${value}${value.endsWith('cm') ? ', of: 60 cm' : ''}}`
      ),
    pH: (value) => withSteps(`- check: {ph: ${value}}`)
  }
  const ofAll = `liquor: 20:1
materials:
  acid: {kind: acid, strength: 5 %, amount: 3 % owf}
  dye: {kind: stock, strength: 1 %, amount: 1 % owf}
  salt: powder
`

  const rows = tableUnder('## Quantities')
  it('has a table of quantities for every kind that is known here', () => {
    expect(rows.map(([kind]) => kind)).toEqual(Object.keys(places))
  })
  for (const [kind = '', examples = ''] of rows) {
    it(`every example of a ${kind} is read: ${examples}`, () => {
      // What stands in brackets belongs to the example before it.
      const values = quoted(examples.replace(/\(.*?\)/g, ''))
      expect(values.length).toBeGreaterThan(1)
      for (const value of values) {
        const read = readProtocol(places[kind]?.(value) ?? '')
        expect([value, read.ok ? [] : read.problems]).toEqual([value, []])
      }
    })
  }

  it('names every field that every step may have, and no other', () => {
    const named = tableUnder('## Steps').flatMap(([cell = '']) => quoted(cell))
    expect(named.sort()).toEqual(Object.keys(sharedFields).sort())
  })

  it('shows or names every field of every word, of the header, and every word that a field knows', () => {
    const fields = [
      ...Object.values(stepKinds).flatMap((kind) => Object.keys(kind.fields)),
      ...Object.values(constructSchemas).flatMap((schema) =>
        Object.keys('shape' in schema ? (schema.shape as object) : {})
      ),
      ...Object.keys(header.shape)
    ]
    const words = [...inputKinds, ...materialKinds, ...grades, ...lateRules]
    const shown = (field: string): boolean => new RegExp(`(?:^|[{ ,\`])${field}[:\`]`, 'm').test(page)
    expect([...new Set(fields)].filter((field) => !shown(field))).toEqual([])
    expect(words.filter((word) => !page.includes(`\`${word}\``))).toEqual([])
  })

  it('has the limits that are held', () => {
    const figures = tableUnder('each of which an error names:\n').map(([, figure = '']) => figure)
    const shown = (n: number): string => n.toLocaleString('en-US')
    expect(figures).toEqual([
      `${limits.bytesMost / 1024} kB, ${shown(limits.linesMost)} lines`,
      shown(limits.signsMost),
      `${limits.depthMost} levels`,
      shown(limits.writtenStepsMost),
      shown(limits.stepsMost),
      shown(limits.timesMost),
      `${limits.longestDays} days`
    ])
  })

  it('has one row for each built-in protocol, with its title and when to use it', () => {
    const folder = new URL('../../../protocols/', import.meta.url)
    const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'))
    const said = files.map((file) => {
      const { title, use } = protocolFrom(readFileSync(new URL(file, folder), 'utf8'))
      return [title, `\`${file}\``, (use ?? '').trim().replaceAll('\n', ' ')]
    })
    const byTitle = (a: string[], b: string[]): number => (String(a[0]) < String(b[0]) ? -1 : 1)
    expect(tableUnder('Which one to take:\n')).toEqual(said.sort(byTitle))
  })

  it('has no block that nothing reads', () => {
    expect(page.match(/^```/gm)?.length).toBe(snippets.length * 2)
  })
})
