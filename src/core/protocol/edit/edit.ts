// Edits of a protocol's text by form: the text stays the one truth, and all of it that an edit is not about stays as it is.
import { carried, doubled, unwrapped, wrapped } from './carry.ts'
import { type Change, change, type Edit } from './change.ts'
import { at, type Data, type Fields, isFields, type Path, same } from './data.ts'
import { isStepBare } from './places.ts'
import { begun, bodyOf, inserted, removed, replaced, type Splice, spliced } from './splice.ts'
import { type Style, styleOf } from './style.ts'
import { inStep } from './sync.ts'
import { dataOf, find, type Parsed, parse } from './tree.ts'
import { scalarText } from './write.ts'

export type { Edit } from './change.ts'
export type Edited = { ok: true; text: string; path: (string | number)[] } | { ok: false; problem: string }

/** Does one edit. Takes any text; refuses in words a text that is no YAML, a path where nothing is, and what the language
 * has no place for. Values are not judged: a field may be given what the reader then complains of. Gives the new text and
 * the path at which the edited thing is then (of a removed one, the path of what it stood in). Comments inside a removed
 * thing go with it, those above it stay; what is moved takes the comment lines right above it along. Never throws. */
export function applyEdit(text: string, edit: Edit): Edited {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : ''
  const p = parse(text.slice(mark.length))
  const [problem] = p.problems
  if (problem || !p.root) {
    const line = problem ? ` in line ${problem.line}` : ''
    return { ok: false, problem: `The text has a mistake${line}: mend it there first. ${problem?.what ?? ''}`.trim() }
  }
  const data = dataOf(p.root)
  const changed = change(data, edit)
  if (!changed.ok) return changed
  const path = [...changed.path]
  if ((edit.type === 'set' || edit.type === 'unset') && same(changed.data, data)) return { ok: true, text, path }
  const style = styleOf(p)
  const made = written(p, edit, changed, style)
  if (made === null)
    return { ok: false, problem: 'This part is written in a way that no form can change: edit the text.' }
  return { ok: true, text: mark + made, path }
}

/** As it was written where that can be carried, else as far as needed anew; always what the data say. */
function written(p: Parsed, edit: Edit, changed: Change & { ok: true }, style: Style): string | null {
  const splices = (splicesFor(p, edit, changed, style) ?? []).map((splice) => ({
    ...splice,
    put: style.eol === '\n' ? splice.put : splice.put.replace(/\r?\n/g, style.eol)
  }))
  const carriedText = splices.length === 0 ? null : spliced(p.text, splices)
  if (carriedText !== null && carriedText !== p.text) {
    const made = inStep(parse(carriedText), changed.data, style)
    if (made !== null) return made
  }
  return inStep(p, changed.data, style)
}

/** Null: there is no way to do it with the text as it stands. */
function splicesFor(p: Parsed, edit: Edit, { data, path }: Change & { ok: true }, style: Style): Splice[] | null {
  switch (edit.type) {
    case 'set':
    case 'unset':
      return null
    case 'name':
      return renamedScalars(p, p.root ? dataOf(p.root) : null, data, [], style)
    case 'add':
      return addition(p, edit.parent, path, data, style)
    case 'remove': {
      const found = find(p.root, edit.path)
      const kept = at(data, edit.path.slice(0, -1)) !== undefined
      const owner = find(p.root, edit.path.slice(0, -1))
      return found && kept ? removed(p, found.parent, found.index, owner?.entry ?? null) : null
    }
    case 'move':
      return carried(p, edit.from, edit.to.parent, placeIn(data, path), style)
    case 'wrap':
      return wrapped(p, edit.path, edit.count, at(data, path) ?? null, style)
    case 'unwrap':
      return unwrapped(p, edit.path, style)
    case 'duplicate': {
      const key = path.at(-1)
      if (typeof key === 'number') return doubled(p, edit.path, style)
      const found = find(p.root, edit.path)
      if (!found || key === undefined) return null
      const body = bodyOf('map', path.slice(0, -1), key, at(data, path) ?? null, style)
      return inserted(p, found.parent, found.index + 1, body)
    }
    case 'rename':
      return renaming(p, edit.path, edit.to.trim(), style)
  }
}

/** Each value that differs, where it stands; null: more than values differ. */
function renamedScalars(p: Parsed, was: Data, now: Data, path: Path, style: Style): Splice[] | null {
  if (same(was, now)) return []
  const keys = Object.keys(isFields(now) || Array.isArray(now) ? now : {})
  const alike = Array.isArray(was) === Array.isArray(now) && isFields(was) === isFields(now)
  if (alike && keys.length > 0 && same(keys, Object.keys(was as Fields))) {
    const parts = keys.map((key) => {
      const step = Array.isArray(now) ? Number(key) : key
      return renamedScalars(p, at(was, [step]) ?? null, at(now, [step]) ?? null, [...path, step], style)
    })
    return parts.every((part) => part !== null) ? parts.flat() : null
  }
  const found = find(p.root, path)
  if (!found || typeof now === 'object' || found.entry.value.kind !== 'scalar') return null
  return replaced(p, found.parent, found.entry, path, now, style)
}

function addition(p: Parsed, parent: Path, path: Path, data: Data, style: Style): Splice[] | null {
  const key = path.at(-1) ?? 0
  const target = find(p.root, parent)
  const group = target?.entry.value
  if (!target || !group) return null
  const kind = typeof key === 'number' ? 'list' : 'map'
  const body = bodyOf(kind, parent, key, at(data, path) ?? null, style)
  if (group.kind === 'scalar' || group.entries.length === 0) {
    if (group.kind === 'scalar' && group.value !== null) return null
    return begun(p, target.entry, target.parent.flow, style, kind === 'list', body)
  }
  return inserted(p, group, placeIn(data, path), body)
}

/** The place of an entry among its neighbours. That of a named one is not in its path: the data tell. */
function placeIn(data: Data, path: Path): number {
  const key = path.at(-1)
  if (typeof key === 'number') return key
  const group = at(data, path.slice(0, -1))
  return isFields(group) ? Object.keys(group).indexOf(String(key)) : 0
}

function renaming(p: Parsed, path: Path, to: string, style: Style): Splice[] | null {
  const found = find(p.root, path)
  if (!found) return null
  const { value } = found.entry
  const entry = found.entry.key === null && value.kind === 'map' ? value.entries[0] : found.entry
  const flow = value.kind === 'map' && found.entry.key === null ? value.flow : found.parent.flow
  if (!entry) return null
  if (isStepBare(entry.key, value)) return [{ from: value.start, to: value.end, put: scalarText(to, flow, style) }]
  const old = entry.key ?? ''
  const end = p.text.startsWith(old, entry.start) ? entry.start + old.length : -1
  if (end < 0 || style.json) {
    const quote = p.text.charAt(entry.start)
    const close = p.text.indexOf(quote, entry.start + 1)
    if (quote !== '"' && quote !== "'") return null
    return [{ from: entry.start, to: close + 1, put: JSON.stringify(to) }]
  }
  return [{ from: entry.start, to: end, put: scalarText(to, flow, style) }]
}
