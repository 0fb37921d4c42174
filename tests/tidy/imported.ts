import { posix } from 'node:path'
import { type File, lineAt, parse } from './tree.ts'

export type Import = {
  /** As written: './knot.ts', 'preact', 'node:fs'. */
  from: string
  /** The file of the project that is meant, or null for a package. */
  path: string | null
  typeOnly: boolean
  line: number
}

const withoutQuery = (from: string): string => from.replace(/\?.*$/, '')

const workerUrl = /new URL\(\s*'(\.[^']+\.ts)'\s*,\s*import\.meta\.url/g
const textImport = /import\(\s*['"`]([^'"`]+)['"`]\s*\)/
const cssImport = /@import\s+(?:url\()?['"]([^'"]+)['"]/g

/** What a file asks for: imports, exports from elsewhere, import(...), types by import(...), workers, and @import in styles. */
export const importsOf = (file: File): Import[] => {
  const found: { from: string; offset: number; typeOnly: boolean }[] = []
  if (file.path.endsWith('.css')) {
    for (const match of file.text.matchAll(cssImport))
      found.push({ from: match[1] ?? '', offset: match.index, typeOnly: false })
  } else {
    const { module } = parse(file)
    for (const { moduleRequest, entries, start } of module.staticImports) {
      const typeOnly = entries.length > 0 && entries.every((entry) => entry.isType)
      found.push({ from: moduleRequest.value, offset: start, typeOnly })
    }
    for (const { entries, start } of module.staticExports) {
      for (const { moduleRequest, isType } of entries) {
        if (moduleRequest) found.push({ from: moduleRequest.value, offset: start, typeOnly: isType })
      }
    }
    for (const { moduleRequest, start } of module.dynamicImports) {
      const from = file.text.slice(moduleRequest.start, moduleRequest.end).replace(/^['"`]|['"`]$/g, '')
      found.push({ from, offset: start, typeOnly: false })
    }
    for (const match of file.text.matchAll(workerUrl))
      found.push({ from: match[1] ?? '', offset: match.index, typeOnly: false })
    for (const type of typesByImport(file.text)) found.push(type)
  }
  const folder = posix.dirname(file.path)
  return found.map(({ from, offset, typeOnly }) => ({
    from,
    path: from.startsWith('.') ? posix.join(folder, withoutQuery(from)) : null,
    typeOnly,
    line: lineAt(file.text, offset)
  }))
}

/** `import('./a.ts').A` in a type is no import to the parser; as code it has been found already, and twice does no harm. */
const typesByImport = (text: string): { from: string; offset: number; typeOnly: boolean }[] =>
  [...text.matchAll(new RegExp(textImport, 'g'))].map((match) => ({
    from: match[1] ?? '',
    offset: match.index,
    typeOnly: /^\s*\.\s*[A-Z]/.test(text.slice(match.index + match[0].length))
  }))
