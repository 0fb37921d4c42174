// Where a row stands among its like, and what can be done with it.
import { at, type Data, isFields } from '../../../core/protocol/edit/data.ts'
import type { Edit } from '../../../core/protocol/edit/edit.ts'
import { listsInside, ownerAt } from '../../../core/protocol/edit/places.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import { dataOf, parse } from '../../../core/protocol/edit/tree.ts'
import { isConstructWord, isStepWord } from './kinds.ts'

type Path = readonly (string | number)[]

/** A place for a new step. */
export type Place = { parent: Path; index: number }

export function dataIn(text: string): Data {
  const { root } = parse(text)
  return root ? dataOf(root) : null
}

export function isStep({ kind }: Row): boolean {
  return isStepWord(kind) || isConstructWord(kind) || kind === 'unknown'
}

/** How many stand in the same list, and the place of this one among them; null: it has no like. */
function amongOf(data: Data, path: Path): { index: number; count: number } | null {
  const group = at(data, path.slice(0, -1))
  const key = path.at(-1)
  if (Array.isArray(group)) return { index: Number(key), count: group.length }
  if (!isFields(group)) return null
  const names = Object.keys(group)
  return { index: names.indexOf(String(key)), count: names.length }
}

/** One place up or down; at the end of a list inside another step, out of it. Null: there is no further. */
export function moveOf(data: Data, row: Row, by: -1 | 1): Edit | null {
  if (row.kind === 'header' || row.kind === 'otherwise' || row.kind === 'branch') return null
  const among = amongOf(data, row.path)
  if (!among) return null
  const parent = row.path.slice(0, -1)
  const index = among.index + by
  if (index >= 0 && index < among.count) return { type: 'move', from: row.path, to: { parent, index } }
  const outer = parent.findLastIndex((part) => typeof part === 'number')
  if (!isStep(row) || outer < 0) return null
  const place = Number(parent[outer])
  return { type: 'move', from: row.path, to: { parent: parent.slice(0, outer), index: by < 0 ? place : place + 1 } }
}

/** How many steps from this one on stand in its list. */
export function stepsFrom(data: Data, { path }: Row): number {
  const among = amongOf(data, path)
  return among ? among.count - among.index : 0
}

export function placeAfter({ path }: Row): Place {
  return { parent: path.slice(0, -1), index: Number(path.at(-1)) + 1 }
}

/** The place for a first step inside; null: nothing goes right into it. */
export function placeInside({ path, kind }: Row): Place | null {
  if (kind === 'answer' || kind === 'branch' || kind === 'otherwise') return { parent: path, index: 0 }
  if (kind === 'repeat' || kind === 'for each' || kind === 'until')
    return { parent: [...path, kind, 'steps'], index: 0 }
  return null
}

/** What else a step that holds others can be given: another answer, another branch, what is done otherwise. */
export function furtherParts(
  data: Data,
  { path, kind }: Row
): { say: string; edit: Edit | null; place: Place | null }[] {
  if (kind === 'choice') {
    const parent = [...path, 'choice', 'answers']
    const index = Object.keys(at(data, parent) ?? {}).length
    return [{ say: 'Add an answer', edit: { type: 'add', parent, index, kind: 'answer' }, place: null }]
  }
  if (kind === 'alongside') {
    const parent = [...path, 'alongside']
    const index = listsInside('alongside', at(data, parent)).length
    return [{ say: 'Add a branch', edit: { type: 'add', parent, index, kind: 'branch' }, place: null }]
  }
  if (kind === 'until' && ownerAt(data, path)?.fields.otherwise === undefined) {
    const place = { parent: [...path, 'until', 'otherwise'], index: 0 }
    return [{ say: 'Add what is done otherwise', edit: null, place }]
  }
  return []
}
