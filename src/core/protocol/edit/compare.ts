// Two versions of a protocol side by side, step by step: what came, what went, what moved, and which fields changed.
import { type Change, changesBetween } from './alike.ts'
import { type Data, type Fields, isFields, type Path } from './data.ts'
import { kitchenOf } from './effect.ts'
import { type Matched, matched } from './match.ts'
import { isConstruct, listsInside, ownerAt, stepOf } from './places.ts'
import { type Row, rowsOf } from './rows.ts'
import { dataOf, parse } from './tree.ts'

export type FieldChange = Change

export type CompareRow = {
  left: Row | null
  right: Row | null
  /** `moved` may have changed fields too. `same` may have fields that are written in another way and mean the same. */
  what: 'same' | 'changed' | 'added' | 'removed' | 'moved'
  fields: FieldChange[]
}

export type Comparison = { rows: CompareRow[]; readable: { left: boolean; right: boolean } }

/** Rows of two texts in the order of the second, what went at the place where it stood. Steps are told apart by their
 * ids, then by likeness; those inside a construct are compared inside it. Comments, order of fields and short forms are
 * no difference. A text that is no YAML has no rows, and `readable` says so. Never throws. */
export function compareProtocols(textA: string, textB: string): Comparison {
  const left = sideOf(textA)
  const right = sideOf(textB)
  const rows = compareSides(left, right)
  return { rows, readable: { left: left.readable, right: right.readable } }
}

type Side = { data: Fields; rows: Map<string, Row>; kitchen: ReturnType<typeof kitchenOf>; readable: boolean }

function sideOf(text: string): Side {
  const p = parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  const data = p.root ? dataOf(p.root) : null
  const rows = new Map(rowsOf(p).map((row) => [keyOf(row.path), row]))
  const fields = isFields(data) ? data : {}
  return { data: fields, rows, kitchen: kitchenOf(fields), readable: p.problems.length === 0 && isFields(data) }
}

function keyOf(path: Path): string {
  return JSON.stringify(path)
}

/** The name under which another step word is told. */
const word = 'step'

const groups = ['inputs', 'materials', 'gaps', 'steps']

function compareSides(left: Side, right: Side): CompareRow[] {
  const rows: CompareRow[] = []
  const pair = new Pairing(left, right, rows)
  const headers = [...new Set([...Object.keys(left.data), ...Object.keys(right.data)])].filter(
    (key) => !groups.includes(key)
  )
  for (const key of headers) pair.fields([key], Object.hasOwn(left.data, key), Object.hasOwn(right.data, key))
  for (const key of ['inputs', 'materials'] as const) pair.named(key)
  pair.list(['steps'], ['steps'])
  pair.list(['gaps'], ['gaps'])
  return withMovesBetweenLists(rows)
}

/** A step that went from one list and came into another has moved, where its id or all of its fields say that it is the
 * same one. */
function withMovesBetweenLists(rows: CompareRow[]): CompareRow[] {
  const gone = new Set<CompareRow>()
  const joined = rows.map((row) => {
    if (row.what !== 'added' || row.fields.length === 0) return row
    const from = rows.find((other) => other.what === 'removed' && !gone.has(other) && isSameStep(other, row))
    if (!from) return row
    gone.add(from)
    return { left: from.left, right: row.right, what: 'moved' as const, fields: fieldsOfMove(from, row) }
  })
  return joined.filter((row) => !gone.has(row))
}

function isSameStep(removed: CompareRow, added: CompareRow): boolean {
  const kind = removed.left?.kind
  if (kind === undefined || kind !== added.right?.kind || kind === 'header' || kind === 'input' || kind === 'material')
    return false
  const id = removed.fields.find(({ name }) => name === 'id')?.was
  if (id !== undefined) return added.fields.some(({ name, now }) => name === 'id' && now === id)
  return fieldsOfMove(removed, added).length === 0
}

/** A field of what went against the field of the same name of what came. */
function fieldsOfMove(removed: CompareRow, added: CompareRow): FieldChange[] {
  const was = new Map(removed.fields.map((field) => [field.name, field.was]))
  const now = new Map(added.fields.map((field) => [field.name, field.now]))
  return [...new Set([...was.keys(), ...now.keys()])]
    .map((name) => ({ name, was: was.get(name) ?? null, now: now.get(name) ?? null, same: false }))
    .filter((change) => change.was !== change.now)
}

class Pairing {
  readonly left: Side
  readonly right: Side
  readonly rows: CompareRow[]

  constructor(left: Side, right: Side, rows: CompareRow[]) {
    this.left = left
    this.right = right
    this.rows = rows
  }

  /** A field of the header. */
  fields(path: Path, inLeft: boolean, inRight: boolean): void {
    const value = (side: Side, there: boolean): Fields => {
      const key = String(path[0])
      return there ? { [key]: side.data[key] ?? null } : {}
    }
    this.#row(inLeft ? path : null, inRight ? path : null, value(this.left, inLeft), value(this.right, inRight), false)
  }

  /** Inputs and materials: the name says which is which; their order is told too. */
  named(key: 'inputs' | 'materials'): void {
    const names = (side: Side): string[] => Object.keys(isFields(side.data[key]) ? side.data[key] : {})
    const [before, after] = [names(this.left), names(this.right)]
    const paths = (list: string[]): Path[] => list.map((name) => [key, name])
    this.#matches(matched(paths(before), paths(after), (a, b) => (a[1] === b[1] ? 1 : 0)))
  }

  list(leftPath: Path | null, rightPath: Path | null): void {
    const items = (side: Side, path: Path | null): Path[] => {
      const list = path === null ? null : valueAt(side.data, path)
      return Array.isArray(list) ? list.map((_, i) => [...(path ?? []), i]) : []
    }
    const likeness = (a: Path, b: Path): number =>
      likenessOf(valueAt(this.left.data, a), valueAt(this.right.data, b), this.left, this.right)
    this.#matches(matched(items(this.left, leftPath), items(this.right, rightPath), likeness))
  }

  #matches(pairs: Matched[]): void {
    for (const { left, right, moved } of pairs) {
      this.#row(left, right, this.#owned(this.left, left), this.#owned(this.right, right), moved)
      this.#inside(left, right)
    }
  }

  #owned(side: Side, path: Path | null): Fields {
    return path === null ? {} : ownFields(side.data, path)
  }

  #row(left: Path | null, right: Path | null, was: Fields, now: Fields, moved: boolean): void {
    const rowLeft = left === null ? null : (this.left.rows.get(keyOf(left)) ?? null)
    const rowRight = right === null ? null : (this.right.rows.get(keyOf(right)) ?? null)
    if (!rowLeft && !rowRight) return
    const changes = changesBetween(was, now, this.left.kitchen, this.right.kitchen)
    // What came or went is named by its row.
    const fields = rowLeft && rowRight ? changes : changes.filter(({ name }) => name !== word)
    const what = ((): CompareRow['what'] => {
      if (!rowLeft) return 'added'
      if (!rowRight) return 'removed'
      if (moved) return 'moved'
      return fields.every(({ same }) => same) ? 'same' : 'changed'
    })()
    this.rows.push({ left: rowLeft, right: rowRight, what, fields })
  }

  /** The lists of steps inside a construct, each against the list of the same name. */
  #inside(left: Path | null, right: Path | null): void {
    const lists = (side: Side, path: Path | null): Map<string, Path> => {
      const step = path === null ? null : stepOf(valueAt(side.data, path))
      if (path === null || !step || !isConstruct(step.kind)) return new Map()
      const inside = listsInside(step.kind, step.fields)
      return new Map(inside.map((below) => [below.join('/'), [...path, step.kind, ...below]]))
    }
    const [before, after] = [lists(this.left, left), lists(this.right, right)]
    for (const key of new Set([...before.keys(), ...after.keys()])) {
      const [a, b] = [before.get(key) ?? null, after.get(key) ?? null]
      // A branch or an answer has a row of its own; the plain steps of a loop have none.
      this.#row(a, b, {}, {}, false)
      this.list(a, b)
    }
  }
}

function valueAt(data: Data, path: Path): Data | undefined {
  return path.reduce<Data | undefined>((here, part) => {
    if (Array.isArray(here)) return here[Number(part)]
    return isFields(here) && Object.hasOwn(here, part) ? here[String(part)] : undefined
  }, data)
}

/** The fields to compare: the word itself is one, the steps inside are not. */
function ownFields(data: Data, path: Path): Fields {
  const owner = ownerAt(data, path)
  if (!owner) return { '': valueAt(data, path) ?? null }
  if (!owner.word) return owner.fields
  const inside = listsInside(owner.kind, owner.fields).map(([first]) => first)
  const rest = Object.entries(owner.fields).filter(([name]) => !inside.includes(name))
  return { [word]: owner.kind, ...Object.fromEntries(rest) }
}

/** How alike two items of a list are, 0 to 1. The same id is the same thing; another word is another thing. */
function likenessOf(a: Data | undefined, b: Data | undefined, left: Side, right: Side): number {
  const [first, second] = [stepOf(a) ?? bare(a), stepOf(b) ?? bare(b)]
  const ids = [first.fields.id, second.fields.id]
  if (ids[0] !== undefined && ids[0] === ids[1]) return 1
  if (first.kind !== second.kind) return 0
  const was = first.fields
  const now = second.fields
  const names = new Set([...Object.keys(was), ...Object.keys(now)])
  if (names.size === 0) return 0.9
  const changes = changesBetween(was, now, left.kitchen, right.kitchen).filter(({ same }) => !same).length
  const share = 1 - changes / names.size
  // Two things with ids of their own are two things, unless all the rest is the same.
  if (ids[0] !== undefined && ids[1] !== undefined) return share > 0.6 ? 0.3 : 0
  return 0.3 + 0.6 * share
}

function bare(data: Data | undefined): { kind: string; fields: Fields } {
  return isFields(data) ? { kind: 'map', fields: data } : { kind: String(data), fields: {} }
}
