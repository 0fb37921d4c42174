// A file is one idea, a function fits on a screen.
import { type File, isCode, lineAt, parse } from './tree.ts'

const fileLinesMost = 400
const functionLinesMost = 70

/** What is measured: what people write. The lock file, the licence and generated files are not. */
const measured = /^(src|tests|protocols)\/.*\.(ts|tsx|mjs|css|yaml)$/

const lineCount = (text: string): number => text.split('\n').length - (text.endsWith('\n') ? 1 : 0)

export const fileSizeComplaints = (file: File): string[] => {
  const lines = lineCount(file.text)
  if (!measured.test(file.path) || lines <= fileLinesMost) return []
  return [`${file.path} has ${lines} lines, more than ${fileLinesMost}: it holds two ideas`]
}

type Spot = { type: string; start: number; end: number }

const isSpot = (value: unknown): value is Spot =>
  typeof value === 'object' && value !== null && typeof (value as Spot).type === 'string'

/** Every function in a syntax tree, inner ones too. */
const functionsIn = (node: unknown): Spot[] => {
  if (Array.isArray(node)) return node.flatMap(functionsIn)
  if (!isSpot(node)) return []
  const inner = Object.values(node).flatMap((child) => (typeof child === 'object' ? functionsIn(child) : []))
  const isFunction = /^(FunctionDeclaration|FunctionExpression|ArrowFunctionExpression)$/.test(node.type)
  return isFunction ? [node, ...inner] : inner
}

/** In src only: a `describe` of a test is a list, however long. */
export const functionSizeComplaints = (file: File): string[] => {
  if (!file.path.startsWith('src/') || !isCode(file.path)) return []
  return functionsIn(parse(file).program).flatMap(({ start, end }) => {
    const first = lineAt(file.text, start)
    const lines = lineAt(file.text, end) - first + 1
    if (lines <= functionLinesMost) return []
    return [`${file.path}:${first} a function of ${lines} lines, more than ${functionLinesMost}`]
  })
}
