// A text that differs from one parsed before inside a single item or field that has lines of its own: only that one is
// parsed again. Typing needs it: parsing all of a long protocol takes longer than a frame.
import { forbiddenAt } from '../source/characters.ts'
import { entryFurtherDown, furtherDown } from '../source/further-down.ts'
import { depthMost, roughProblem } from '../source/limits.ts'
import type { Located, Entry as Pair } from '../source/located.ts'
import { entryFurtherOn, furtherOn } from './further-on.ts'
import { lineEnd, lineEndsIn, lineStart } from './splice.ts'
import type { Entry, Group, Parsed, Tree } from './tree.ts'

/** A changed piece: the lines of one item or field, and by how much what follows moves. */
type Piece = { start: number; text: string; column: number }

const loneReturn = /\r(?!\n)/

/** Null: it can't be told from the piece alone, so the whole is to be parsed. What it gives is what that would give. */
export function reparsed(before: Parsed, text: string, anew: (piece: string) => Parsed): Parsed | null {
  const { root, located } = before
  if (before.problems.length > 0 || root?.kind !== 'map' || root.flow || located === null) return null
  if (roughProblem(text) !== null || text.startsWith('\uFEFF')) return null
  // A lone carriage return ends a line for editors and none for the parser.
  if (loneReturn.test(before.text) || loneReturn.test(text)) return null
  const renewing = new Renewing(before.text, text, anew)
  const made = renewing.above(root, located) ?? renewing.within(root, located, 0)
  return made && { text, root: made.tree, located: made.located, problems: [], comments: renewing.comments }
}

type Both = { tree: Tree; located: Located }

class Renewing {
  readonly #was: string
  readonly #text: string
  readonly #anew: (piece: string) => Parsed
  /** Where the change begins, and where it ended before it was made. */
  readonly #from: number
  readonly #to: number
  /** How far what follows moves. */
  readonly #by: number
  readonly #linesBy: number

  constructor(was: string, text: string, anew: (piece: string) => Parsed) {
    this.#was = was
    this.#text = text
    this.#anew = anew
    const most = Math.min(was.length, text.length)
    let from = 0
    while (from < most && was.charCodeAt(from) === text.charCodeAt(from)) from++
    let behind = 0
    const [wasLast, last] = [was.length - 1, text.length - 1]
    while (behind < most - from && was.charCodeAt(wasLast - behind) === text.charCodeAt(last - behind)) behind++
    const [to, nowTo] = [was.length - behind, text.length - behind]
    // A line put in between lines that begin alike is that line, not the end of it and the beginning of the next.
    const indent = from - lineStart(was, from)
    const before = was.slice(from - indent, from)
    const atLine = before === was.slice(to - indent, to) && before === text.slice(nowTo - indent, nowTo)
    const back = atLine && before.trim() === '' ? indent : 0
    this.#from = from - back
    this.#to = to - back
    this.#by = text.length - was.length
    this.#linesBy = lineEndsIn(text.slice(from, nowTo)) - lineEndsIn(was.slice(from, to))
  }

  /** Asked for by few edits: they have the whole text looked through. */
  readonly comments: Parsed['comments'] = () => this.#anew(this.#text).comments()

  /** Empty lines and comments above everything: all of it moves, and nothing else happens. */
  above(root: Group, located: Located): Both | null {
    const first = root.entries[0]
    if (!first) return null
    const start = lineStart(this.#was, first.start)
    if (this.#to > start) return null
    const [wasHead, head] = [this.#was.slice(0, start), this.#text.slice(0, start + this.#by)]
    if (![wasHead, head].every(saysNothing)) return null
    return { tree: furtherOn(root, this.#by), located: furtherDown(located, this.#linesBy) }
  }

  /** The innermost that holds the change is tried first: the less is parsed, the better. */
  within(tree: Tree, located: Located, depth: number): Both | null {
    if (tree.kind === 'scalar' || tree.flow || depth > depthMost) return null
    const index = tree.entries.findLastIndex(({ start }) => start < this.#from)
    const entry = tree.entries[index]
    const inner = partOf(located, index)
    if (!entry || !inner) return null
    const deeper = this.within(entry.value, inner, depth + 1)
    if (deeper) {
      const { tree: value, located: read } = deeper
      const pair = pairOf(located, index)
      const put = {
        entry: { ...entry, value, end: Math.max(value.end, entry.valueFrom) },
        located: read,
        pair: pair && { ...pair, value: read }
      }
      return withParts(tree, located, index, [put], this.#by, this.#linesBy)
    }
    return this.#piecewise(tree, located, index, depth)
  }

  #piecewise(group: Group, located: Located, index: number, depth: number): Both | null {
    const piece = this.#piece(group, index)
    if (piece === null) return null
    const { root, located: read, problems } = this.#anew(piece.text)
    if (problems.length > 0 || root?.kind !== group.kind || root.flow || read === null) return null
    const [entry, second] = root.entries
    // Started elsewhere it would be another list.
    if (entry?.start !== piece.column) return null
    // A field put in may have the name of one further off.
    if (second && group.kind === 'map' && !areNew(root.entries.slice(1), group)) return null
    if (entry.key !== group.entries[index]?.key || depth + depthOf(root) > depthMost) return null
    const line = lineEndsIn(this.#was.slice(0, piece.start))
    const puts = root.entries.flatMap((one, i): Put[] => {
      const inner = partOf(read, i)
      const pair = pairOf(read, i)
      if (!inner) return []
      return [
        {
          entry: entryFurtherOn(one, piece.start),
          located: furtherDown(inner, line),
          pair: pair && entryFurtherDown(pair, line)
        }
      ]
    })
    return withParts(group, located, index, puts, this.#by, this.#linesBy)
  }

  #piece(group: Group, index: number): Piece | null {
    const [was, text] = [this.#was, this.#text]
    const { start: mark, valueFrom, end } = group.entries[index] as Entry
    const start = lineStart(was, mark)
    const column = mark - start
    // The dash, or the key with its colon, is to stand as it stood.
    if (was.slice(start, mark).trim() !== '' || this.#from < valueFrom) return null
    const dashes = group.kind === 'map'
    const wasEnd = endOfPiece(was, start, column, dashes)
    const next = group.entries[index + 1]
    // Brackets may be closed further out than the item stands, and then its end is not where its lines end.
    if (this.#to > wasEnd || end > wasEnd || (next && next.start < wasEnd)) return null
    // One may have become several.
    let nowEnd = endOfPiece(text, start, column, dashes)
    while (nowEnd < wasEnd + this.#by) nowEnd = endOfPiece(text, nowEnd, column, dashes)
    if (nowEnd !== wasEnd + this.#by) return null
    return { start, text: text.slice(start, nowEnd), column }
  }
}

/** Past the lines that stand further in than the first one, or are empty or a comment. `dashes`: under a key a list may
 * stand no further in than the key. */
function endOfPiece(text: string, start: number, column: number, dashes: boolean): number {
  let end = lineEndWith(text, start)
  while (end < text.length) {
    const here = lineEnd(text, end)
    const line = text.slice(end, here)
    const indent = line.length - line.trimStart().length
    const counts = line.trim() !== '' && line.charAt(indent) !== '#'
    const isInside = indent > column || (dashes && indent === column && /^-(?:\s|$)/.test(line.slice(indent)))
    if (counts && (!isInside || line.slice(0, indent).includes('\t'))) return end
    end = lineEndWith(text, end)
  }
  return end
}

/** Whether a text that ends with a line is only empty lines and comments. */
function saysNothing(head: string): boolean {
  const lines = head.split('\n')
  return lines.pop() === '' && forbiddenAt(head) < 0 && lines.every((line) => /^ *(?:#|\r?$)/.test(line))
}

function lineEndWith(text: string, from: number): number {
  const at = text.indexOf('\n', from)
  return at < 0 ? text.length : at + 1
}

function partOf(located: Located, index: number): Located | null {
  if (located.kind === 'list') return located.items[index] ?? null
  return located.kind === 'map' ? (located.entries[index]?.value ?? null) : null
}

function pairOf(located: Located, index: number): Pair | null {
  return located.kind === 'map' ? (located.entries[index] ?? null) : null
}

function areNew(entries: readonly Entry[], group: Group): boolean {
  return entries.every(({ key }) => group.entries.every((other) => other.key !== key))
}

function depthOf(tree: Tree): number {
  return tree.kind === 'scalar' ? 0 : 1 + Math.max(0, ...tree.entries.map(({ value }) => depthOf(value)))
}

/** `pair`: of a map. */
type Put = { entry: Entry; located: Located; pair: Pair | null }

/** The same with others in a part's place; what stands behind it moves. */
function withParts(
  group: Group,
  located: Located,
  index: number,
  puts: readonly Put[],
  by: number,
  linesBy: number
): Both | null {
  const behind = group.entries.slice(index + 1).map((one) => entryFurtherOn(one, by))
  const entries = [...group.entries.slice(0, index), ...puts.map(({ entry }) => entry), ...behind]
  const tree = { ...group, start: entries[0]?.start ?? group.start, end: entries.at(-1)?.end ?? group.end, entries }
  if (located.kind === 'list') {
    const read = puts.map((put) => put.located)
    const below = located.items.slice(index + 1).map((one) => furtherDown(one, linesBy))
    return { tree, located: { ...located, items: [...located.items.slice(0, index), ...read, ...below] } }
  }
  if (located.kind !== 'map') return null
  const pairs = puts.flatMap(({ pair }) => pair ?? [])
  const below = located.entries.slice(index + 1).map((one) => entryFurtherDown(one, linesBy))
  return { tree, located: { ...located, entries: [...located.entries.slice(0, index), ...pairs, ...below] } }
}
