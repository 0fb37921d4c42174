import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from './tree.ts'

const impure = ['Date.now()', 'new Date()', 'Math.random()', '[1].map(Math.random)']
const outside = [
  'document.title',
  'localStorage',
  'indexedDB',
  'fetch',
  'performance.now()',
  'process.env',
  'setTimeout'
]
const pure = ['new Date(0).toISOString()', '[1].map(Math.round)']
const rooms = ['src/core', 'src/session']
const snippets = [...impure, ...outside, ...pure]

const folder = mkdtempSync(join(tmpdir(), 'strandline-purity-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const fileOf = (room: string, snippet: string): string => `${room}/a${snippets.indexOf(snippet)}.ts`

const run = (program: string, args: string[]): string =>
  spawnSync(process.execPath, [join(root, 'node_modules', program), ...args], { cwd: folder, encoding: 'utf8' }).stdout

/** What the linter has against a file: the first words of each complaint. */
const lint = (file: string): string =>
  run('@biomejs/biome/bin/biome', ['lint', '--vcs-enabled=false', '--reporter=github', file])

const compile = (room: string): string => run('typescript/bin/tsc', ['-p', room])

beforeAll(() => {
  // The settings of the project, over a tree that holds the snippets only.
  for (const file of [
    'biome.json',
    'tsconfig.base.json',
    'src/core/tsconfig.json',
    'src/session/tsconfig.json',
    'src/core/pure.grit'
  ]) {
    cpSync(join(root, file), join(folder, file), { recursive: true })
  }
  for (const room of [...rooms, 'src/shell']) {
    mkdirSync(join(folder, room), { recursive: true })
    for (const snippet of snippets)
      writeFileSync(join(folder, fileOf(room, snippet)), `export const a: unknown = ${snippet}\n`)
  }
})

describe.each(rooms)('%s gives the same answer every time', (room) => {
  it('because the linter refuses the clock and chance', () => {
    for (const snippet of impure) expect(lint(fileOf(room, snippet)), snippet).toContain('know no clock and no chance')
    for (const snippet of pure)
      expect(lint(fileOf(room, snippet)), snippet).not.toContain('know no clock and no chance')
  })

  it('because the compiler knows nothing of the outside world there', () => {
    const said = compile(room)
    for (const snippet of outside) expect(said).toContain(`${fileOf(room, snippet)}(1,27): error TS2`)
    for (const snippet of pure) expect(said).not.toContain(fileOf(room, snippet))
  })
})

it('the shell may read the clock', () => {
  expect(lint(fileOf('src/shell', 'Date.now()'))).not.toContain('know no clock and no chance')
})
