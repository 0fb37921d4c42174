import { describe, expect, it } from 'vitest'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { Lines } from '../../../src/core/protocol/source/lines.ts'

describe('the place of an offset', () => {
  it('counts lines and columns from 1, past every kind of line end', () => {
    const lines = new Lines('ab\ncd\r\nef\rgh')
    const places = [0, 2, 3, 6, 7, 9, 10, 12].map((offset) => lines.place(offset))
    expect(places.map(({ line, column }) => `${line}:${column}`)).toEqual([
      '1:1',
      '1:3',
      '2:1',
      '2:4',
      '3:1',
      '3:3',
      '4:1',
      '4:3'
    ])
  })

  it('never leaves the text', () => {
    expect(new Lines('').place(5)).toEqual({ line: 1, column: 1 })
    expect(new Lines('a\n').place(99)).toEqual({ line: 2, column: 1 })
    expect(new Lines('a\n').place(-1)).toEqual({ line: 1, column: 1 })
  })
})

describe('a text so broken that the parser takes many lines for one', () => {
  it('has its problems where they are', () => {
    // The first key is indented, so that nothing after it is a map; in a block of text the parser then counts one line.
    const text = '     strandline: 1\ntitle: T\nabout: |\n  Some\n  lines.\nuse: U\nsteps:\n  - rinse\n'
    const read = readProtocol(text)
    if (read.ok) throw new Error('it was taken')
    const lengths = text.split('\n').map((line) => line.length)
    for (const { line, column } of read.problems) expect(column).toBeLessThanOrEqual((lengths[line - 1] ?? -1) + 1)
    expect(read.problems.map(({ line, column }) => [line, column])).toContainEqual([6, 1])
  })
})
