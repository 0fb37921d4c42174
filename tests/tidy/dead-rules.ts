// A file that nothing leads to is dead.
import { importsOf } from './imported.ts'
import { type File, isCode } from './tree.ts'

/** Where the machine comes in. */
const entry = /^(src\/app\/main\.tsx|src\/service-worker\/index\.ts|src\/desk\/[^/]+\.(ts|mjs)|vite(st)?\.config\.ts)$/

/** The in-memory twins of the shell are there for tests. Anything else that only a test uses is dead for the dyer. */
const forTests = /^src\/shell\//

const judged = (path: string): boolean =>
  path.startsWith('src/') && /\.(ts|tsx|mjs|css)$/.test(path) && !path.endsWith('.d.ts')

/** The files of src that no entry leads to. Reads the whole tree, since anything may lead anywhere. */
export const deadComplaints = (tree: File[]): string[] => {
  const files = new Map(
    tree.filter(({ path }) => isCode(path) || path.endsWith('.css')).map((file) => [file.path, file])
  )
  const reached = new Set<string>()
  const follow = (path: string, only?: RegExp): void => {
    const file = files.get(path)
    if (!file || reached.has(path)) return
    if (!only || only.test(path)) reached.add(path)
    for (const asked of importsOf(file)) if (asked.path && (!only || only.test(asked.path))) follow(asked.path)
  }
  for (const path of files.keys()) if (entry.test(path)) follow(path)
  for (const path of files.keys()) if (path.startsWith('tests/')) follow(path, forTests)
  return [...files.keys()]
    .filter((path) => judged(path) && !reached.has(path))
    .map((path) => `${path} nothing leads to it`)
}
