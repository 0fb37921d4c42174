// The smallest changes of a text: what is not named in a splice stays as it is, to the byte.
import type { Data, Path } from './data.ts'
import type { Style } from './style.ts'
import type { Entry, Group, Parsed } from './tree.ts'
import { blockEntry, blockItem, blockText, flowEntry, flowText, scalarText } from './write.ts'

export type Splice = { from: number; to: number; put: string }

/** All of them at once; each in the offsets of the old text. Null: two of them touch the same place. */
export function spliced(text: string, splices: readonly Splice[]): string | null {
  const order = splices
    .map((splice, i) => ({ ...splice, i }))
    .sort((a, b) => a.from - b.from || a.to - b.to || a.i - b.i)
  let out = ''
  let done = 0
  for (const { from, to, put } of order) {
    if (from < done || to < from) return null
    out += text.slice(done, from) + put
    done = to
  }
  return out + text.slice(done)
}

export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1
}

/** How many lines end between two places. */
export function lineEndsIn(text: string, from = 0, to = text.length): number {
  let count = 0
  for (let at = text.indexOf('\n', from); at >= 0 && at < to; at = text.indexOf('\n', at + 1)) count++
  return count
}

/** Before the line end, and before the \r of one. */
export function lineEnd(text: string, offset: number): number {
  const at = text.indexOf('\n', offset)
  const end = at < 0 ? text.length : at
  return end > offset && text.charAt(end - 1) === '\r' ? end - 1 : end
}

export function columnOf(text: string, offset: number): number {
  return offset - lineStart(text, offset)
}

/** Whether only spaces stand before it on its line. */
export function beginsLine(text: string, offset: number): boolean {
  return /^ *$/.test(text.slice(lineStart(text, offset), offset))
}

/** Where the comment lines right above an entry begin, which go with it; its own line where there are none. */
export function leadStart(text: string, entry: Entry): number {
  let start = lineStart(text, entry.start)
  const pad = ' '.repeat(entry.start - start)
  while (start > 0) {
    const above = lineStart(text, start - 1)
    if (!text.slice(above, start).startsWith(`${pad}#`)) break
    start = above
  }
  return start
}

/** The body of a new entry: in lines at a column, or in brackets. */
export type Body = { lines: (col: number) => string; flow: string }

/** `path`: that of the group. */
export function bodyOf(group: 'map' | 'list', path: Path, key: string | number, value: Data, style: Style): Body {
  const at = [...path, key]
  if (group === 'map') {
    const name = String(key)
    return { lines: (col) => blockEntry(name, value, path, col, style), flow: flowEntry(name, value, style) }
  }
  return { lines: (col) => blockItem(value, at, col, style), flow: flowText(value, style, !style.json) }
}

/** Puts an entry into a group that has some already. */
export function inserted(p: Parsed, group: Group, index: number, body: Body): Splice[] {
  const { text } = p
  const before = group.entries[Math.min(index, group.entries.length) - 1]
  const first = group.entries[0]
  if (!first) return []
  if (group.flow) {
    const second = group.entries[1] ?? group.entries[0]
    const broken = second && second.start > lineEnd(text, first.start)
    const between = broken ? `,\n${' '.repeat(columnOf(text, second.start))}` : ', '
    if (before) return [{ from: before.end, to: before.end, put: between + body.flow }]
    return [{ from: first.start, to: first.start, put: body.flow + between }]
  }
  const col = columnOf(text, first.start)
  const pad = ' '.repeat(col)
  if (before) {
    const at = lineEnd(text, before.end)
    return [{ from: at, to: at, put: `\n${pad}${body.lines(col)}` }]
  }
  if (!beginsLine(text, first.start)) {
    return [{ from: first.start, to: first.start, put: `${body.lines(col)}\n${pad}` }]
  }
  const at = leadStart(text, first)
  return [{ from: at, to: at, put: `${pad}${body.lines(col)}\n` }]
}

/** Puts the first entry into an entry's value, which is empty or missing. */
export function begun(p: Parsed, owner: Entry, inFlow: boolean, style: Style, list: boolean, body: Body): Splice[] {
  const { text } = p
  const { value, valueFrom } = owner
  if (inFlow) return [{ from: valueFrom, to: value.end, put: list ? ` [${body.flow}]` : ` {${body.flow}}` }]
  const from = list ? style.listIndent : style.indent
  const col = keyColumn(text, owner) + from
  const at = lineEnd(text, owner.end)
  const cleared = { from: valueFrom, to: Math.max(value.end, valueFrom), put: '' }
  return [cleared, { from: at, to: at, put: `\n${' '.repeat(col)}${body.lines(col)}` }]
}

/** The column that a value's own lines stand in from: that of its key, or of what follows its dash. */
function keyColumn(text: string, owner: Entry): number {
  return columnOf(text, owner.start) + (owner.key === null ? 2 : 0)
}

/** Takes an entry out. The last one leaves brackets behind; `owner` is the entry whose value the group is. */
export function removed(p: Parsed, group: Group, index: number, owner: Entry | null): Splice[] {
  const { text } = p
  const entry = group.entries[index]
  if (!entry) return []
  const next = group.entries[index + 1]
  if (group.flow) return removedFromFlow(p, group, index)
  const end = lineEnd(text, entry.end)
  if (!beginsLine(text, entry.start)) {
    if (!next) return []
    const free = !p.comments().some(({ start }) => start >= entry.end && start < next.start)
    return [{ from: entry.start, to: free ? next.start : end, put: '' }]
  }
  const start = lineStart(text, entry.start)
  const lines = wholeLines(text, start, end)
  if (group.entries.length > 1 || !owner) return [lines]
  return [{ from: owner.valueFrom, to: owner.valueFrom, put: group.kind === 'list' ? ' []' : ' {}' }, lines]
}

/** Whole lines with one line end: the one before them, so that something may be put right behind them at once; at the
 * beginning of the text the one after. */
export function wholeLines(text: string, start: number, end: number): Splice {
  if (start > 0) return { from: start - (text.charAt(start - 2) === '\r' ? 2 : 1), to: end, put: '' }
  return { from: 0, to: end < text.length ? text.indexOf('\n', end) + 1 : end, put: '' }
}

function removedFromFlow(p: Parsed, group: Group, index: number): Splice[] {
  const { text } = p
  const entry = group.entries[index] as Entry
  const before = group.entries[index - 1]
  const next = group.entries[index + 1]
  if (next) {
    const comma = commaIn(p, entry.end, next.start)
    const free = !p.comments().some(({ start }) => start >= entry.end && start < next.start)
    return [{ from: entry.start, to: free ? next.start : comma + 1, put: '' }]
  }
  if (!before) return [{ from: entry.start, to: entry.end, put: '' }]
  const comma = commaIn(p, before.end, entry.start)
  const free = !p.comments().some(({ start }) => start >= before.end && start < entry.start)
  if (free) return [{ from: before.end, to: entry.end, put: '' }]
  return [
    { from: comma, to: comma + 1, put: '' },
    { from: entry.start, to: entry.end, put: '' }
  ].filter(({ from }) => from < text.length)
}

/** The comma between two entries, past any comment. */
function commaIn(p: Parsed, from: number, to: number): number {
  const comments = p.comments().filter(({ start }) => start >= from && start < to)
  for (let at = from; at < to; at++) {
    const comment = comments.find(({ start, end }) => at >= start && at < end)
    if (comment) at = comment.end - 1
    else if (p.text.charAt(at) === ',') return at
  }
  return from
}

/** Another value for an entry. `path`: that of the entry. Comments inside the old value are kept, above it. */
export function replaced(p: Parsed, group: Group, entry: Entry, path: Path, value: Data, style: Style): Splice[] {
  const { text } = p
  const old = entry.value
  const nothing = old.end <= entry.valueFrom
  if (group.flow) {
    const put = flowText(value, style, group.kind === 'list' && !style.json)
    const colon = group.kind === 'map' && text.charAt(entry.valueFrom - 1) !== ':' ? ':' : ''
    if (nothing) return [{ from: entry.valueFrom, to: entry.valueFrom, put: `${colon} ${put}` }]
    return [{ from: old.start, to: old.end, put }]
  }
  const fresh = blockText(value, path, keyColumn(text, entry), style)
  const simple = !fresh.includes('\n') && old.kind === 'scalar' && old.style !== 'block'
  if (simple && !nothing && fresh !== '') {
    const put =
      old.style === 'double' && typeof value === 'string'
        ? scalarText(value, false, { ...style, json: true })
        : fresh.slice(1)
    return [{ from: old.start, to: old.end, put }]
  }
  const to = Math.max(entry.valueFrom, old.end)
  const at = lineEnd(text, to)
  const [head = '', ...rest] = fresh.split('\n')
  const hoisted = commentsBetween(p, entry.valueFrom, to)
  const pad = ' '.repeat(columnOf(text, entry.start))
  const above = lineStart(text, entry.start)
  return [
    ...hoisted.map((comment) => ({ from: above, to: above, put: `${pad}${comment}\n` })),
    { from: entry.valueFrom, to, put: head },
    { from: at, to: at, put: rest.map((line) => `\n${line}`).join('') }
  ]
}

export function commentsBetween(p: Parsed, from: number, to: number): string[] {
  return p
    .comments()
    .filter(({ start }) => start >= from && start < to)
    .map(({ text }) => text.trimEnd())
}
