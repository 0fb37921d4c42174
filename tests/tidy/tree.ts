// The files of the project as the tidy rules see them.
import { readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseSync } from 'vite'

/** `path` is from the root of the project, with forward slashes. */
export type File = { path: string; text: string }

export const root = fileURLToPath(new URL('../..', import.meta.url))

const notOurs = new Set(['node_modules', 'dist', '.git'])
const notText = /\.(png|ico|woff2|wav|y4m|jpe?g)$/

/** All text files of the project, walked and not asked from git: an archive of the project is checked just the same. */
export const readTree = (folder = ''): File[] =>
  readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    if (notOurs.has(entry.name)) return []
    const path = posix.join(folder, entry.name)
    if (entry.isDirectory()) return readTree(path)
    if (!entry.isFile() || notText.test(entry.name)) return []
    return [{ path, text: readFileSync(join(root, path), 'utf8') }]
  })

export const isCode = (path: string): boolean => /\.(ts|tsx|mjs)$/.test(path)

export const parse = ({ path, text }: File): ReturnType<typeof parseSync> => {
  const parsed = parseSync(path, text, { lang: path.endsWith('x') ? 'tsx' : 'ts' })
  const [error] = parsed.errors
  if (error) throw new Error(`${path}: ${error.message}`)
  return parsed
}

/** Counts from 1. */
export const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length
