// The built-in protocols are read when the app is built: a mistake in one stops the build, and the app needs no reader
// for them.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Plugin, runnerImport } from 'vite'
import type { Protocol } from '../../core/protocol/model.ts'

export type BuiltInProtocol = { file: string; text: string; protocol: Protocol }

const protocolFiles = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()

/** Loaded when it is asked for and not with the settings of Vite: most runs of the tests need no reader. */
const loadReader = async (): Promise<typeof import('../../core/protocol/read.ts')> => {
  const reader = fileURLToPath(new URL('../../core/protocol/read.ts', import.meta.url))
  return (await runnerImport<typeof import('../../core/protocol/read.ts')>(reader)).module
}

/** The protocols of a folder in the order of their file names. Throws one error that names every problem in every file. */
export const compileProtocols = async (folder: string): Promise<BuiltInProtocol[]> => {
  const files = protocolFiles(folder)
  if (files.length === 0) return []
  const { readProtocol } = await loadReader()
  const problems: string[] = []
  const compiled: BuiltInProtocol[] = []
  for (const file of files) {
    const text = readFileSync(join(folder, file), 'utf8')
    const read = readProtocol(text)
    if (read.ok) compiled.push({ file, text, protocol: read.protocol })
    else problems.push(...read.problems.map(({ line, column, what }) => `protocols/${file}:${line}:${column} ${what}`))
  }
  if (problems.length > 0) throw new Error(`Built-in protocols have problems:\n${problems.join('\n')}`)
  return compiled
}

/** Gives `virtual:protocols` its content. */
export const builtInProtocols = (folder: string): Plugin => ({
  name: 'strandline:protocols',
  resolveId: (id) => (id === 'virtual:protocols' ? '\0virtual:protocols' : null),
  async load(id) {
    if (id !== '\0virtual:protocols') return null
    for (const file of protocolFiles(folder)) this.addWatchFile(join(folder, file))
    // Parsed at run time from one string: quicker to start than the same as an object literal.
    return `export default JSON.parse(${JSON.stringify(JSON.stringify(await compileProtocols(folder)))})`
  }
})
