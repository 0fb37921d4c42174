import { readProtocol } from '../../../src/core/protocol/read.ts'

/** Reads, and holds the answer to what every answer must be: each problem has a code, words, and a line and a column that
 * lie inside the text (one past the end of a line counts: there the missing thing would stand). */
export function readSafely(text: string): ReturnType<typeof readProtocol> {
  const read = readProtocol(text)
  if (read.ok) return read
  if (read.problems.length === 0) throw new Error('refused without a problem')
  const lines = text.split(/\r\n|\n|\r/)
  for (const { code, line, column, what, instead } of read.problems) {
    const here = lines[line - 1]
    const placed = here !== undefined && Number.isInteger(column) && column >= 1 && column <= here.length + 1
    if (!placed || code === '' || what === '' || instead === '') {
      const length = here?.length ?? null
      throw new Error(
        `a problem out of place: ${JSON.stringify({ code, line, column, what, lines: lines.length, length })}`
      )
    }
  }
  return read
}
