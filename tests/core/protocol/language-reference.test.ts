import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { stepWords } from '../../../src/core/protocol/model.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { recordItems } from '../../../src/core/protocol/schema/record-items.ts'
import { constructWords } from '../../../src/core/protocol/written.ts'
import { withSteps } from './broken-files.ts'
import { schemaAllows } from './judge.ts'
import { inputs } from './made.ts'

const page = readFileSync(new URL('../../../protocols/README.md', import.meta.url), 'utf8')
const snippets = [...page.matchAll(/^```yaml\n([\s\S]*?)^```/gm)].map((match) => match[1] ?? '')

const materials = `liquor: 20:1
materials:
  acid: {kind: acid, strength: 5 %, amount: 3 % owf}
  dye: {kind: stock, strength: 1 %}
`

/** A snippet is a whole protocol, some steps, or a part of the header with steps. */
const whole = (snippet: string): string => {
  if (snippet.startsWith('strandline:')) return snippet
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
