// A protocol's text as rows for a list, each with its own problems; also of a text that is not whole yet.
import type { Problem, Protocol } from '../model.ts'
import { readLocated } from '../read.ts'
import type { Data } from './data.ts'
import { isFields, type Path } from './data.ts'
import { isConstruct, isWord, listsInside, type Owner, ownerAt, stepOf } from './places.ts'
import { columnOf, lineEnd, lineEndsIn } from './splice.ts'
import { gapSummary, inputSummary, materialSummary, short, stepSummary, words } from './summary.ts'
import { dataOf, find, type Group, type Parsed, parse } from './tree.ts'

export type Row = {
  /** What edits are given. */
  path: (string | number)[]
  depth: number
  /** `header`, `input`, `material`, `gap`; a step word or a construct; `otherwise`, `answer`, `branch` for the lists of
   * steps inside some constructs; `unknown` for an item that is no step. */
  kind: string
  /** Of a header field, an input, a material, an answer, a branch. */
  name: string | null
  summary: string
  /** Its lines in the text, counted from 1, the last included. */
  lines: { from: number; to: number }
  /** Those of its own; not those of rows inside it. */
  problems: Problem[]
}

export type Outline = {
  /** In the order of the text, what is inside a row right after it. */
  rows: Row[]
  /** Problems that belong to no row. */
  problems: Problem[]
  /** The protocol, where nothing is wrong with it. */
  protocol: Protocol | null
}

/** The rows of any text, with every problem that the reader has with it, each once. A text that is no YAML, or no map of
 * fields, has no rows. Never throws. */
export function outlineOf(text: string): Outline {
  const p = parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  const read =
    p.problems.length > 0 || !p.located ? { ok: false as const, problems: p.problems } : readLocated(p.located)
  const spans = p.root?.kind === 'map' ? spansOf(p) : []
  const loose: Problem[] = []
  const starts = lineStarts(p.text)
  for (const problem of read.ok ? [] : read.problems) {
    const row = rowFor(problem, spans, starts)
    if (row) row.problems.push(problem)
    else loose.push(problem)
  }
  return { rows: spans.map(({ row }) => row), problems: loose, protocol: read.ok ? read.protocol : null }
}

/** The rows alone, without reading the protocol: all of it is in `problems` of an outline. */
export function rowsOf(p: Parsed): Row[] {
  return p.root?.kind === 'map' ? spansOf(p).map(({ row }) => row) : []
}

type Span = { row: Row; start: number; end: number }

function lineStarts(text: string): number[] {
  const starts = [0]
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return starts
}

/** The innermost row that holds the place; on the same line where none does. */
function rowFor({ line, column, where }: Problem, spans: Span[], starts: number[]): Row | null {
  const offset = (starts[line - 1] ?? 0) + column - 1
  const around = spans.findLast(({ start, end }) => start <= offset && offset <= end)
  const beside = around ?? spans.findLast(({ row: { lines } }) => lines.from <= line && line <= lines.to)
  // What is missing from the whole is told at its first line, and is no mistake of what stands there.
  const [part] = /^[^.[]+/.exec(where) ?? []
  return beside && (part === undefined || beside.row.path[0] === part) ? beside.row : null
}

class Spans {
  readonly list: Span[] = []
  readonly #p: Parsed
  readonly data: Data
  #line = 1
  #at = 0

  constructor(p: Parsed) {
    this.#p = p
    this.data = p.root ? dataOf(p.root) : null
  }

  /** The path is kept as it is given. */
  add(path: Row['path'], depth: number, kind: string, name: string | null, summary: string): void {
    const found = find(this.#p.root, path)
    if (found) this.addIn(found.parent, found.index, path, depth, kind, name, summary)
  }

  /** The same where the list that it stands in was found already. */
  addIn(
    { flow, entries }: Group,
    index: number,
    path: Row['path'],
    depth: number,
    kind: string,
    name: string | null,
    summary: string
  ): void {
    const entry = entries[index]
    if (!entry) return
    const { text } = this.#p
    const { start } = entry
    const end = flow ? entry.end : lineEnd(text, entry.end)
    const from = this.#lineOf(start)
    const to = from + lineEndsIn(text, start, end)
    const row: Row = { path, depth, kind, name, summary, lines: { from, to }, problems: [] }
    // A mistake in the dash or the indent stands before the entry itself.
    this.list.push({ row, start: flow ? start : start - columnOf(text, start), end })
  }

  listAt(path: Path): Group | null {
    const value = find(this.#p.root, path)?.entry.value
    return value?.kind === 'list' ? value : null
  }

  /** Rows come in the order of the text, so the lines are counted once. */
  #lineOf(offset: number): number {
    const { text } = this.#p
    if (offset < this.#at) {
      this.#line = 1
      this.#at = 0
    }
    for (let next = text.indexOf('\n', this.#at); next >= 0 && next < offset; next = text.indexOf('\n', this.#at)) {
      this.#line++
      this.#at = next + 1
    }
    return this.#line
  }
}

function spansOf(p: Parsed): Span[] {
  const spans = new Spans(p)
  if (!isFields(spans.data)) return []
  for (const [key, value] of Object.entries(spans.data)) {
    if ((key === 'inputs' || key === 'materials') && isFields(value)) named(spans, key, value)
    else if (key === 'gaps' && Array.isArray(value)) gaps(spans, value)
    else if (key === 'steps' && Array.isArray(value)) steps(spans, ['steps'], value, 0)
    else spans.add([key], 0, 'header', key, short(words(value)))
  }
  return spans.list
}

function named(spans: Spans, key: 'inputs' | 'materials', group: { [name: string]: Data }): void {
  for (const name of Object.keys(group)) {
    const path = [key, name]
    const fields = ownerAt(spans.data, path)?.fields ?? {}
    const summary = key === 'inputs' ? inputSummary(name, fields) : materialSummary(name, fields)
    spans.add(path, 0, key === 'inputs' ? 'input' : 'material', name, summary)
  }
}

function gaps(spans: Spans, list: Data[]): void {
  for (const [i, gap] of list.entries())
    spans.add(['gaps', i], 0, 'gap', null, isFields(gap) ? gapSummary(gap) : words(gap))
}

type Said = { step: Owner | null; kind: string; summary: string }

/** What is said of steps that have not changed since: the same data come of the same part of a text. */
const said = new WeakMap<object, Said>()

function sayingOf(item: Data): Said {
  const known = typeof item === 'object' && item !== null ? said.get(item) : undefined
  if (known) return known
  const step = stepOf(item)
  const kind = step && isWord(step.kind) ? step.kind : 'unknown'
  const made = { step, kind, summary: step ? stepSummary(step) : short(words(item)) }
  if (typeof item === 'object' && item !== null) said.set(item, made)
  return made
}

function steps(spans: Spans, path: Path, list: Data[], depth: number): void {
  const group = spans.listAt(path)
  if (!group) return
  // Counted by hand: it is done for every step with each letter that is typed.
  for (let i = 0; i < list.length; i++) {
    const here = [...path, i]
    const { step, kind, summary } = sayingOf(list[i] as Data)
    spans.addIn(group, i, here, depth, kind, null, summary)
    if (step && isConstruct(kind)) inside(spans, [...here, kind], kind, step.fields, depth + 1)
  }
}

/** The plain steps of a loop are right under it; other lists have a row of their own first. */
function inside(spans: Spans, path: Path, word: string, fields: { [key: string]: Data }, depth: number): void {
  for (const below of listsInside(word, fields)) {
    const [first, second] = below
    const value = second === undefined ? fields[first ?? ''] : (fields.answers as { [key: string]: Data })[second]
    const list = Array.isArray(value) ? value : []
    const name = second ?? first ?? ''
    if (name === 'steps' && word !== 'alongside' && word !== 'choice') {
      steps(spans, [...path, ...below], list, depth)
      continue
    }
    const kind = word === 'choice' ? 'answer' : word === 'alongside' ? 'branch' : 'otherwise'
    spans.add([...path, ...below], depth, kind, kind === 'otherwise' ? null : name, name)
    steps(spans, [...path, ...below], list, depth + 1)
  }
}
