import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { type Cell, csvFile, withoutFormula } from '../../../src/core/record/csv.ts'

/** As an independent reader reads it. */
function readBack(file: string): string[][] {
  const { data, errors } = Papa.parse<string[]>(file, { newline: '\r\n', delimiter: ',', skipEmptyLines: false })
  expect(errors).toEqual([])
  // The line end after the last record is read as one more, empty.
  expect(data.pop()).toEqual([''])
  return data
}

const runsAsFormula = (text: string): boolean => /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/.test(text)
const isNumber = (text: string): boolean => text.trim() === text && text !== '' && Number.isFinite(Number(text))

const danger = fc
  .tuple(
    fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', ' =', '＝', '＠', '"=', ',', '"', ';'),
    fc.string({ unit: 'binary' })
  )
  .map(([first, rest]) => first + rest)
const text = fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'binary' }), danger)
const cell: fc.Arbitrary<Cell> = fc.oneof(text, fc.double(), fc.integer(), fc.boolean(), fc.constant(null))

describe('a CSV file', () => {
  it('begins with a byte order mark and ends each record with CR LF, as RFC 4180 asks', () => {
    expect(csvFile(['a', 'b'], [['x', 1]])).toBe('\ufeffa,b\r\nx,1\r\n')
  })

  it('quotes what needs it and doubles quotes (RFC 4180, 2.6 and 2.7)', () => {
    expect(csvFile(['a'], [['1,5'], ['say "so"'], ['two\r\nlines'], ['plain']])).toBe(
      '\ufeffa\r\n"1,5"\r\n"say ""so"""\r\n"two\r\nlines"\r\nplain\r\n'
    )
  })

  it('quotes a lone CR too, which many readers take for the end of a record', () => {
    expect(csvFile(['a'], [['two\rlines']])).toBe('\ufeffa\r\n"two\rlines"\r\n')
  })

  it.each([
    '=1+1',
    '+cmd|x',
    '-2+3',
    '@SUM(A1)',
    '\t=1',
    '\rx',
    '\n=1',
    ' =1+1',
    '＝1+1',
    '-',
    '+49 30 1234',
    '-1e',
    '=-1'
  ])('does not let a spreadsheet run %j', (text) => expect(withoutFormula(text)).toBe(`'${text}`))

  it.each(['-3', '-0.5', '+2', '-.5', '-1e-7', '-12.', 'Moss', "'quoted", '20:1', '−3', ''])(
    'leaves %j alone',
    (text) => expect(withoutFormula(text)).toBe(text)
  )

  it('keeps numbers numbers, below zero too, and an empty field for what is none', () => {
    expect(
      readBack(csvFile(['n'], [[-3.5], [0], [-0], [1e-9], [Number.NaN], [null], [Infinity], [true]])).slice(1)
    ).toEqual([['-3.5'], ['0'], ['0'], ['1e-9'], [''], [''], [''], ['yes']])
  })

  it('comes back from an independent reader cell by cell, numbers to the last bit, and nothing in it runs', () => {
    const table = fc
      .integer({ min: 2, max: 5 })
      .chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 8 }))
    fc.assert(
      fc.property(table, (rows) => {
        const header = Array.from({ length: rows[0]?.length ?? 2 }, (_, i) => `h${i}`)
        const [first, ...read] = readBack(csvFile(header, rows))
        expect(first).toEqual(header)
        expect(read.length).toBe(rows.length)
        read.forEach((line, r) => {
          line.forEach((got, c) => {
            const was = rows[r]?.[c] ?? null
            if (typeof was === 'number')
              expect(got === '' ? Number.NaN : Number(got)).toEqual(Number.isFinite(was) ? was + 0 : Number.NaN)
            if (typeof was === 'string') {
              expect([was, `'${was}`]).toContain(got)
              if (runsAsFormula(got)) expect(isNumber(got)).toBe(true)
            }
          })
        })
      }),
      { numRuns: 600 }
    )
  })
})
