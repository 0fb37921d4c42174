// A protocol's text as a tree that knows where each part stands, so that an edit changes only what it is about.
import { type CST, isMap, isScalar, isSeq, type Pair, type ParsedNode } from 'yaml'
import type { Problem } from '../model.ts'
import type { Located } from '../source/located.ts'
import { parseSource } from '../source/read-source.ts'
import type { Data } from './data.ts'
import { stillOf } from './further-on.ts'
import { reparsed } from './reparse.ts'

/** Offsets count UTF-16 units from the beginning of the text; `end` is after the last sign of the value, before any
 * comment or line end that follows it. */
export type Scalar = {
  kind: 'scalar'
  start: number
  end: number
  value: string | number | boolean | null
  style: 'plain' | 'single' | 'double' | 'block' | 'nothing'
}
/** An entry begins at its dash, its key, or, in brackets, at its value. `valueFrom`: behind its dash or colon. */
export type Entry = { start: number; end: number; valueFrom: number; key: string | null; value: Tree }
export type Group = { kind: 'map' | 'list'; flow: boolean; start: number; end: number; entries: Entry[] }
export type Tree = Scalar | Group

export type Comment = { start: number; end: number; text: string }

export type Parsed = {
  text: string
  root: Tree | null
  located: Located | null
  problems: Problem[]
  comments: () => Comment[]
}

/** The texts that were parsed last, the newest first. The same text always gives the same, so this only saves time: an
 * edit is looked at before and after, then its rows are asked for. */
let latest: Parsed[] = []
/** The one without a mistake that was asked for last: what is typed next most likely differs from it in one step. */
let whole: Parsed | null = null

/** Never throws. `problems` are those of the YAML alone; `root` may be there beside them. What it gives is not to be
 * changed: who asks for the same text gets the same again. */
export function parse(text: string): Parsed {
  const known = latest.find((parsed) => parsed.text === text)
  const parsed = known ?? (whole && reparsed(whole, text, parseAnew)) ?? parseAnew(text)
  if (!known) latest = [parsed, ...latest].slice(0, 2)
  if (parsed.problems.length === 0) whole = parsed
  return parsed
}

/** Without anything from before. */
export function parseAnew(text: string): Parsed {
  const { document, root, problems, tokens } = parseSource(text, true)
  const contents = document?.contents
  const tree = contents ? treeOf(contents as ParsedNode, 0) : null
  let comments: Comment[] | null = null
  const seen = (): Comment[] => {
    comments ??= commentsIn(tokens)
    return comments
  }
  return { text, root: tree, located: root, problems, comments: seen }
}

type Token = CST.SourceToken
type Source = { start?: Token[]; sep?: Token[] } | undefined

function treeOf(node: ParsedNode | null | undefined, at: number): Tree {
  if (isMap(node)) {
    const entries = node.items.map((pair) => pairOf(pair as unknown as Pair<ParsedNode, ParsedNode>))
    return group('map', node, entries)
  }
  if (isSeq(node)) {
    const sources = (node.srcToken as CST.BlockSequence | undefined)?.items ?? []
    const flow = node.flow === true
    const entries = node.items.map((item, i): Entry => {
      const dash = flow ? undefined : sources[i]?.start.find(({ type }) => type === 'seq-item-ind')
      const value = treeOf(item as ParsedNode, dash ? dash.offset + 1 : (item as ParsedNode).range[0])
      const start = dash?.offset ?? value.start
      return { start, end: value.end, valueFrom: dash ? dash.offset + 1 : start, key: null, value }
    })
    return group('list', node, entries)
  }
  if (!isScalar(node)) return { kind: 'scalar', start: at, end: at, value: null, style: 'nothing' }
  const { source, range } = node as unknown as { source?: string; range: [number, number, number] }
  const given = node.value as unknown
  const value = typeof given === 'bigint' ? Number(given) : (given as Scalar['value'])
  if (given === null && (source ?? '') === '')
    return { kind: 'scalar', start: at, end: at, value: null, style: 'nothing' }
  const style = styleOf(node.type as string)
  return {
    kind: 'scalar',
    start: range[0],
    end: style === 'block' ? endOfBlock(node, range[1]) : range[1],
    value,
    style
  }
}

function group(
  kind: 'map' | 'list',
  node: { flow?: boolean; range?: unknown; srcToken?: unknown },
  entries: Entry[]
): Group {
  const [from, to] = node.range as [number, number]
  const flow = node.flow === true
  const first = entries[0]
  const last = entries.at(-1)
  // A pair in a list without braces of its own, [hold: 3 min], is as long as the pair.
  const braced = flow && (node.srcToken as CST.Token | undefined)?.type === 'flow-collection'
  if (braced || !first || !last) return { kind, flow, start: from, end: to, entries }
  return { kind, flow, start: first.start, end: last.end, entries }
}

function pairOf(pair: Pair<ParsedNode, ParsedNode>): Entry {
  const { start: before = [], sep = [] } = (pair as unknown as { srcToken?: Source }).srcToken ?? {}
  const [keyStart = 0, keyEnd = 0] = pair.key?.range ?? []
  const asked = before.find(({ type }) => type === 'explicit-key-ind')
  const colon = sep.find(({ type }) => type === 'map-value-ind')
  const valueFrom = colon ? colon.offset + 1 : keyEnd
  const value = treeOf(pair.value, valueFrom)
  const key = isScalar(pair.key) ? String(pair.key.value) : ''
  return { start: asked?.offset ?? keyStart, end: Math.max(value.end, valueFrom), valueFrom, key, value }
}

/** A text under | ends with its line; the line end is no part of it here. */
function endOfBlock(node: ParsedNode, end: number): number {
  const { source = '' } = (node.srcToken as { source?: string } | undefined) ?? {}
  return end - (source.length - source.trimEnd().length)
}

function styleOf(type: string): Scalar['style'] {
  if (type === 'QUOTE_DOUBLE') return 'double'
  if (type === 'QUOTE_SINGLE') return 'single'
  return type === 'PLAIN' ? 'plain' : 'block'
}

/** Every comment of the text, in its order. Walks with a list, not with the stack. */
function commentsIn(tokens: readonly CST.Token[]): Comment[] {
  const found: Comment[] = []
  const open: unknown[] = [...tokens]
  for (let next = open.pop(); next; next = open.pop()) {
    const token = next as Partial<Token> & Record<string, unknown>
    if (token.type === 'comment' && typeof token.source === 'string') {
      const start = token.offset ?? 0
      found.push({ start, end: start + token.source.length, text: token.source })
    }
    for (const part of ['start', 'end', 'sep', 'items', 'props'] as const) {
      if (Array.isArray(token[part])) open.push(...(token[part] as unknown[]))
    }
    for (const part of ['key', 'value'] as const) if (typeof token[part] === 'object') open.push(token[part])
  }
  return found.sort((a, b) => a.start - b.start)
}

/** What was made of parts that have not changed since: while a text is typed, nearly all of them. */
const held = new WeakMap<Group, Data>()

/** The value without its places. What it gives is not to be changed: the same part gives the same again. */
export function dataOf(tree: Tree): Data {
  if (tree.kind === 'scalar') return tree.value
  const still = stillOf(tree)
  const known = held.get(still)
  if (known !== undefined) return known
  const { kind, entries } = still
  const data: Data =
    kind === 'list'
      ? entries.map(({ value }) => dataOf(value))
      : Object.fromEntries(entries.map(({ key, value }) => [key ?? '', dataOf(value)]))
  held.set(still, data)
  return data
}

export type Found = { parent: Group; index: number; entry: Entry }

/** The entry at a path of keys and numbers; null: there is none. */
export function find(root: Tree | null, path: readonly (string | number)[]): Found | null {
  let here: Tree | null = root
  let found: Found | null = null
  for (const part of path) {
    if (here === null || here.kind === 'scalar') return null
    const parent: Group = here
    const index = parent.kind === 'list' ? Number(part) : parent.entries.findIndex(({ key }) => key === part)
    const entry = parent.entries[index]
    if (!entry) return null
    found = { parent, index, entry }
    here = entry.value
  }
  return found
}
