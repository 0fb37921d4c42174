// npm run check -- FILE...: the problems of protocol files, one a line: FILE:LINE:COL what (instead).
import { readFileSync } from 'node:fs'
import { readProtocol } from '../core/protocol/read.ts'

/** The lines to print for one file; none where it is good. */
function problemLines(file: string): string[] {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    const why =
      code === 'ENOENT' ? 'there is no such file' : code === 'EISDIR' ? 'it is a folder' : (code ?? String(error))
    return [`${file}: can't be read: ${why}`]
  }
  const read = readProtocol(text)
  return read.ok ? [] : read.problems.map((p) => `${file}:${p.line}:${p.column} ${p.what} (${p.instead})`)
}

const files = process.argv.slice(2)
if (files.length === 0) {
  console.error('Name the protocol files to check: npm run check -- FILE...')
  process.exitCode = 1
}
for (const file of files) {
  const lines = problemLines(file)
  if (lines.length === 0) console.log(`${file}: good`)
  else {
    console.error(lines.join('\n'))
    process.exitCode = 1
  }
}
