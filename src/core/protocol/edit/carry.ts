// Edits that carry text from one place to another as it was written, comments and all.
import { type Data, type Fields, isFields, type Path } from './data.ts'
import { listsInside } from './places.ts'
import {
  type Body,
  beginsLine,
  begun,
  columnOf,
  commentsBetween,
  inserted,
  leadStart,
  lineEnd,
  lineStart,
  removed,
  type Splice
} from './splice.ts'
import type { Style } from './style.ts'
import { dataOf, type Entry, type Found, find, type Group, type Parsed } from './tree.ts'
import { blockText, flowText } from './write.ts'

/** Lines moved so that what began in column `from` begins in column `to`. The first comes without its indent. */
function shiftedLines(lines: string, from: number, to: number): string {
  const moved = lines.split('\n').map((line) => {
    const bare = line.trimStart()
    if (bare.trim() === '') return ''
    const own = line.length - bare.length
    return ' '.repeat(Math.max(0, own + to - from)) + bare
  })
  return moved.join('\n').trimStart()
}

/** An entry as it was written, with the comment lines right above it where they are to go along. */
function pieceOf(p: Parsed, group: Group, index: number, style: Style, lead: boolean): Body | null {
  const { text } = p
  const entry = group.entries[index]
  if (!entry) return null
  const data = dataOf(entry.value)
  if (group.flow) {
    const source = text.slice(entry.start, entry.end)
    const broken = source.split('\n').map((line) => line.trim())
    const lines = (col: number): string => `- ${broken.join(`\n${' '.repeat(col + 4)}`)}`
    return { lines: group.kind === 'map' ? () => source : lines, flow: source }
  }
  if (!beginsLine(text, entry.start)) return null
  const source = text.slice(lead ? leadStart(text, entry) : lineStart(text, entry.start), lineEnd(text, entry.end))
  const from = columnOf(text, entry.start)
  return {
    lines: (col) => shiftedLines(source, from, col),
    flow: group.kind === 'list' ? flowText(data, style, !style.json) : ''
  }
}

/** Takes the comments out of lines that are to go into brackets, and puts them above the brackets. */
function hoisted(p: Parsed, from: Entry, before: number): Splice[] {
  const above = lineStart(p.text, before)
  const pad = /^ */.exec(p.text.slice(above))?.[0] ?? ''
  const comments = commentsBetween(p, leadStart(p.text, from), lineEnd(p.text, from.end))
  return comments.map((comment) => ({ from: above, to: above, put: `${pad}${comment}\n` }))
}

/** Null: it can't be carried as it stands. */
export function carried(p: Parsed, from: Path, parent: Path, index: number, style: Style): Splice[] | null {
  const source = find(p.root, from)
  if (!source) return null
  const target = find(p.root, parent)
  const owner = find(p.root, from.slice(0, -1))?.entry ?? null
  const value = parent.length === 0 ? null : target?.entry.value
  if (!target || !value) return null
  const own = value === source.parent
  const body = pieceOf(p, source.parent, source.index, style, true)
  if (!body) return null
  const empty = value.kind === 'scalar' || value.entries.length === 0
  const intoFlow = empty ? target.parent.flow : value.flow
  const lost = intoFlow && !source.parent.flow ? hoisted(p, source.entry, outermost(p, parent)) : []
  const out = withLead(p, source, removed(p, source.parent, source.index, own ? null : owner))
  if (value.kind === 'scalar' || empty) {
    return [...lost, ...out, ...begun(p, target.entry, target.parent.flow, style, true, body)]
  }
  const gap = own && index >= source.index ? index + 1 : index
  if (own && (gap === source.index || gap === source.index + 1)) return []
  return [...lost, ...out, ...inserted(p, value, gap, body)]
}

/** Where the outermost brackets around a place begin. */
function outermost(p: Parsed, path: Path): number {
  for (let length = 1; length <= path.length; length++) {
    const found = find(p.root, path.slice(0, length))
    if (found?.parent.flow) return found.parent.start
    if (found && found.entry.value.kind !== 'scalar' && found.entry.value.flow) return found.entry.value.start
  }
  return 0
}

/** The comment lines right above go too, when lines are taken out. */
function withLead(p: Parsed, { parent, entry }: Found, splices: Splice[]): Splice[] {
  if (parent.flow || !beginsLine(p.text, entry.start)) return splices
  const start = lineStart(p.text, entry.start)
  const lead = leadStart(p.text, entry)
  const cut = start - lead
  return splices.map((splice) => {
    const lines = splice.to > entry.start && splice.from <= start && splice.put === ''
    return lines ? { ...splice, from: splice.from - cut } : splice
  })
}

/** The same text once more right after it. */
export function doubled(p: Parsed, path: Path, style: Style): Splice[] | null {
  const source = find(p.root, path)
  if (!source) return null
  const body = pieceOf(p, source.parent, source.index, style, false)
  return body && inserted(p, source.parent, source.index + 1, body)
}

/** Some steps put into a construct whose data, with them inside, are known. */
export function wrapped(p: Parsed, path: Path, count: number, construct: Data, style: Style): Splice[] | null {
  const { text } = p
  const found = find(p.root, path)
  const last = found?.parent.entries[found.index + count - 1]
  if (!found || !last || !isFields(construct)) return null
  const { parent, entry } = found
  const mark = `strandline-${text.length}`
  const [word, fields] = Object.entries(construct)[0] ?? []
  if (word === undefined || !isFields(fields)) return null
  const marked = { [word]: withFirstList(word, fields, [mark]) }
  if (parent.flow) {
    const shell = flowText(marked, style, !style.json)
    const put = shell.replace(style.json ? `"${mark}"` : mark, () => text.slice(entry.start, last.end))
    return [{ from: entry.start, to: last.end, put }]
  }
  if (!beginsLine(text, entry.start)) return null
  const col = columnOf(text, entry.start)
  const start = lineStart(text, entry.start)
  const lines = text.slice(start, lineEnd(text, last.end))
  const shell = `${' '.repeat(col)}-${blockText(marked, path, col + 2, style)}`
  const line = shell.split('\n').find((one) => one.includes(mark)) ?? ''
  const put = shell.replace(line, () => {
    const inner = line.length - line.trimStart().length
    return ' '.repeat(inner) + shiftedLines(lines, col, inner)
  })
  return [{ from: start, to: start + lines.length, put }]
}

/** The construct with other steps in the list that comes first. */
function withFirstList(word: string, fields: Fields, steps: Data[]): Fields {
  const [below] = listsInside(word, fields)
  const [first, second] = below ?? []
  if (first === undefined) return fields
  if (second === undefined) return { ...fields, [first]: steps }
  return { ...fields, [first]: { ...(fields[first] as Fields), [second]: steps } }
}

/** The steps of a construct in its place. */
export function unwrapped(p: Parsed, path: Path, style: Style): Splice[] | null {
  const { text } = p
  const found = find(p.root, path)
  const owner = find(p.root, path.slice(0, -1))
  if (!found || !owner || found.entry.value.kind !== 'map') return null
  const [wordEntry] = found.entry.value.entries
  const word = wordEntry?.key ?? ''
  const lists = listsInside(word, wordEntry ? (dataOf(wordEntry.value) as Data) : null)
    .map((below) => find(p.root, [...path, word, ...below])?.entry.value)
    .filter((value): value is Group => value?.kind === 'list' && value.entries.length > 0)
  const { parent, entry } = found
  if (lists.length === 0) return removed(p, parent, found.index, owner.entry)
  if (parent.flow) {
    const parts = lists.map((list) => text.slice(list.entries[0]?.start, list.entries.at(-1)?.end))
    return [{ from: entry.start, to: entry.end, put: parts.join(', ') }]
  }
  if (!beginsLine(text, entry.start)) return null
  const col = columnOf(text, entry.start)
  const pad = ' '.repeat(col)
  const regions: [number, number][] = []
  const parts = lists.map((list) => {
    const first = list.entries[0] as Entry
    const last = list.entries.at(-1) as Entry
    if (list.flow) {
      regions.push([list.start, list.end])
      return list.entries.map((_, i) => pad + (pieceOf(p, list, i, style, false)?.lines(col) ?? '')).join('\n')
    }
    const start = leadStart(text, first)
    const end = lineEnd(text, last.end)
    regions.push([start, end])
    return pad + shiftedLines(text.slice(start, end), columnOf(text, first.start), col)
  })
  const start = lineStart(text, entry.start)
  const end = lineEnd(text, entry.end)
  const comments = p
    .comments()
    .filter(({ start: at }) => at >= start && at < end && !regions.some(([from, to]) => at >= from && at < to))
    .map((comment) => pad + comment.text.trimEnd())
  return [{ from: start, to: end, put: [...comments, ...parts].join('\n') }]
}
