// Values as a person would write them: no needless quotes, no long line broken, fields in braces where they are few.
import { onOneLine, onSeveralLines } from '../source/characters.ts'
import { type Data, type Fields, isFields, type Path } from './data.ts'
import { type FormKind, formKinds, formOf } from './form.ts'
import { isConstruct, placeOf } from './places.ts'
import type { Style } from './style.ts'

/** A list in brackets is broken into lines beyond this. */
const flowMost = 100

/** A scalar on one line. `flow`: inside brackets, where more signs have a meaning. */
export function scalarText(value: string | number | boolean | null, flow: boolean, style: Style): string {
  if (typeof value !== 'string') return String(value)
  return !style.json && isPlain(value, flow) ? value : JSON.stringify(value)
}

const notText = /^(?:null|true|false|~|[-+]?(?:\.inf|\.nan)|\.nan)$/i
const number = /^[-+]?(?:\d[\d_]*(?:\.\d*)?(?:e[-+]?\d+)?|\.\d+(?:e[-+]?\d+)?|0o[0-7]+|0x[0-9a-f]+)$/i

function isPlain(text: string, flow: boolean): boolean {
  if (text === '' || text.trim() !== text || !onOneLine.test(text)) return false
  if (/^[[\]{}#&*!|>'"%@`,]/.test(text) || /^[-?:](?:\s|$)/.test(text) || /^(?:---|\.\.\.)/.test(text)) return false
  if (/:(?:\s|$)|\s#/.test(text) || notText.test(text) || number.test(text)) return false
  return !flow || !/[,[\]{}]/.test(text)
}

/** Anything on one line. `bare`: a step in a list may go without braces, [hold: 3 min]. */
export function flowText(data: Data, style: Style, bare = false): string {
  if (Array.isArray(data)) return `[${data.map((item) => flowText(item, style, !style.json)).join(', ')}]`
  if (!isFields(data)) return scalarText(data, true, style)
  const entries = Object.entries(data).map(([key, value]) => flowEntry(key, value, style))
  const [only] = entries
  if (bare && entries.length === 1 && only !== undefined && Object.values(data)[0] !== null) return only
  return `{${entries.join(', ')}}`
}

export function flowEntry(key: string, value: Data, style: Style): string {
  return `${scalarText(key, true, style)}: ${flowText(value, style)}`
}

/** What stands behind a colon or a dash whose key, or whose item, begins in column `col` (from 0): with a space or a line
 * end before it. `path` says what it is, and so how it is best written. */
export function blockText(data: Data, path: Path, col: number, style: Style): string {
  if (data === null) return ''
  if (Array.isArray(data)) return listText(data, path, col, style)
  if (!isFields(data)) return ` ${typeof data === 'string' ? stringText(data, col, style) : String(data)}`
  const place = placeOf(path)
  if (place === 'step') {
    const [entry, other] = Object.entries(data)
    if (entry && !other) return ` ${blockEntry(entry[0], entry[1], path, col, style)}`
  }
  if (Object.keys(data).length === 0 || !inLines(data, path, style)) return ` ${flowText(ordered(data, path), style)}`
  const inner = col + style.indent
  const lines = Object.entries(ordered(data, path)).map(
    ([key, value]) => `\n${' '.repeat(inner)}${blockEntry(key, value, path, inner, style)}`
  )
  return lines.join('')
}

/** `key: value`, the key in column `col`. `path`: that of the map it stands in. */
export function blockEntry(key: string, value: Data, path: Path, col: number, style: Style): string {
  return `${scalarText(key, false, style)}:${blockText(value, [...path, key], col, style)}`
}

/** `- item`, the dash in column `col`. `path`: that of the item. */
export function blockItem(item: Data, path: Path, col: number, style: Style): string {
  return `-${blockText(item, path, col + 2, style)}`
}

function listText(list: Data[], path: Path, col: number, style: Style): string {
  if (list.length === 0) return ' []'
  const steps = placeOf(path) === 'steps' || (path.length === 1 && path[0] === 'gaps')
  const short = steps ? '' : flowText(list, style)
  if (!steps && short.length <= flowMost && !short.includes('\\n')) return ` ${short}`
  const inner = col + style.listIndent
  return list.map((item, i) => `\n${' '.repeat(inner)}${blockItem(item, [...path, i], inner, style)}`).join('')
}

/** Whether a map has its fields on lines of their own. */
function inLines(data: Fields, path: Path, style: Style): boolean {
  const [first] = path
  if (path.length === 1 && (first === 'inputs' || first === 'materials')) return true
  const last = path.at(-1)
  if (placeOf(path.slice(0, -1)) === 'step') return isConstruct(String(last)) || style.fieldsInLines
  if (last === 'answers' && placeOf([...path, 'one']) === 'steps') return true
  return Object.values(data).some((value) => typeof value === 'string' && value.includes('\n'))
}

/** Several lines stand under |, as long as it keeps every one of their signs. */
function stringText(text: string, col: number, style: Style): string {
  const body = text.endsWith('\n') ? text.slice(0, -1) : text
  const literal = text.includes('\n') && !style.json && /^\S/.test(body) && !/[\r\t]|\s$|[ ]\n/.test(body)
  if (!literal || !onSeveralLines.test(body)) return scalarText(text, false, style)
  const pad = ' '.repeat(col + style.indent)
  const lines = body.split('\n').map((line) => (line === '' ? '' : pad + line))
  return [text.endsWith('\n') ? '|' : '|-', ...lines].join('\n')
}

/** The fields in the order of their form; names of one's own come last. */
function ordered(data: Fields, path: Path): Fields {
  const order = orderOf(path)
  if (order.length === 0) return data
  const rank = (key: string): number => (order.includes(key) ? order.indexOf(key) : order.length)
  return Object.fromEntries(Object.entries(data).sort(([a], [b]) => rank(a) - rank(b)))
}

/** The names of the fields that a map at a path may have, in their order; empty: they are free. */
export function orderOf(path: Path): string[] {
  const place = placeOf(path)
  const kind = placeOf(path.slice(0, -1)) === 'step' ? String(path.at(-1)) : place
  return (formKinds as readonly string[]).includes(kind) ? formOf(kind as FormKind).map(({ name }) => name) : []
}
