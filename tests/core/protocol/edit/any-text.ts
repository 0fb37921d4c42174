// Texts of any valid protocol, as people and programs write them: JSON, braces, lines, with comments at every place that
// takes one. Each comment has a number, so that a lost one can be named.
import fc from 'fast-check'
import { Document, isMap, isSeq, stringify, visit } from 'yaml'
import type { Data } from '../../../../src/core/protocol/edit/data.ts'
import { anyProtocol } from '../any-protocol.ts'

export type AnyText = { text: string; data: Data; style: string }

const lineText = (data: Data, indentSeq: boolean): string => stringify(data, { indentSeq, lineWidth: 0 })

/** The fields of plain steps in braces, as the built-in protocols have them. */
const bracesText = (data: Data): string => {
  const document = new Document(data)
  visit(document, {
    Map: (_, map) => {
      const holdsLists = map.items.some(
        ({ value }) => isSeq(value) || (isMap(value) && value.items.some((i) => isSeq(i.value)))
      )
      const single = map.items.length === 1 && isMap(map.items[0]?.value)
      if (!holdsLists && !single) map.flow = true
    }
  })
  return document.toString({ lineWidth: 0, flowCollectionPadding: false })
}

/** Comment lines and comments at the ends of lines, where none of the lines is inside a text of several lines. */
const withComments = (text: string, places: number[]): string => {
  const lines = text.split('\n')
  const chosen = new Map(places.map((place, no) => [place % Math.max(1, lines.length - 1), no]))
  return lines
    .flatMap((line, i) => {
      const no = chosen.get(i)
      if (no === undefined || line.trim() === '') return [line]
      const indent = /^ */.exec(line)?.[0] ?? ''
      if (no % 3 === 0) return [`${line} # note ${no}`]
      return no % 3 === 1 ? [`${indent}# note ${no}`, line] : ['', `${indent}# note ${no}`, line]
    })
    .join('\n')
}

const styles = ['json', 'pretty json', 'lines', 'lines, dashes under the key', 'braces'] as const

const written: Record<(typeof styles)[number], (data: Data, places: number[]) => string> = {
  json: (data) => JSON.stringify(data),
  'pretty json': (data) => JSON.stringify(data, null, 2),
  lines: (data, places) => withComments(lineText(data, true), places),
  'lines, dashes under the key': (data, places) => withComments(lineText(data, false), places),
  braces: (data, places) => withComments(bracesText(data), places)
}

export const anyText: fc.Arbitrary<AnyText> = fc
  .tuple(anyProtocol, fc.constantFrom(...styles), fc.array(fc.nat(400), { maxLength: 12 }))
  .map(([json, style, places]) => {
    const data = JSON.parse(json) as Data
    return { text: written[style](data, places), data, style }
  })

/** "note 3" and the like, in their order. */
export const commentsOf = (text: string): string[] =>
  [...text.matchAll(/# (note \d+)$/gm)].map(([, note]) => note ?? '')
