// What an edit does to a protocol's data: where it may be done, what comes of it, and where the edited thing is then.
import { forbiddenAt } from '../source/characters.ts'
import { depthMost } from '../source/limits.ts'
import { at, type Data, type Fields, isFields, type Path, withAt } from './data.ts'
import { type FormKind, formKinds, startingValues } from './form.ts'
import { copyOf, freeName } from './fresh.ts'
import { named } from './naming.ts'
import { isConstruct, isWord, listsInside, ownerAt, placeAmong, placeOf, stepOf, written } from './places.ts'

export type Edit =
  /** Gives a field a value. `field` may lead further in: ['ask', 'enough']. */
  | { type: 'set'; path: Path; field: string | Path; value: Data }
  /** Takes a field away. The last field of a step leaves its bare word. */
  | { type: 'unset'; path: Path; field: string | Path }
  /** A new step into a list of steps; a new gap; a new input or material, answer or branch under `name`. Without `values`
   * it has what its form requires, each at its example. */
  | { type: 'add'; parent: Path; index: number; kind: string; values?: Fields; name?: string }
  | { type: 'remove'; path: Path }
  /** `index` counts in the list without the moved thing; `parent` is where the list is before the move. */
  | { type: 'move'; from: Path; to: { parent: Path; index: number } }
  /** Puts `count` steps, the first at `path`, into a new construct: its steps, its first answer or its first branch. */
  | { type: 'wrap'; path: Path; count: number; in: string; values?: Fields }
  /** Puts the steps of a construct in its place: of an until also what is done otherwise, of a choice those of all its
   * answers, of branches all of them, one after the other. */
  | { type: 'unwrap'; path: Path }
  /** A copy right after it. Ids and names in it are made new, for each may stand once only. */
  | { type: 'duplicate'; path: Path }
  /** Another id for a step. What refers to it by the old one refers to it by the new. */
  | { type: 'name'; path: Path; to: string }
  /** Another step word, or another name for an input, a material, an answer or a branch. What refers to it is left. */
  | { type: 'rename'; path: Path; to: string }

export type Change = { ok: true; data: Data; path: Path } | { ok: false; problem: string }

/** Never changes `root`. Refuses in words what can't be done. */
export function change(root: Data, edit: Edit): Change {
  switch (edit.type) {
    case 'set':
      return isData(edit.value) ? setField(root, edit.path, edit.field, edit.value) : no('This value can’t be written.')
    case 'unset':
      return setField(root, edit.path, edit.field, undefined)
    case 'add':
      return add(root, edit)
    case 'remove':
      return remove(root, edit.path)
    case 'move':
      return move(root, edit.from, edit.to)
    case 'wrap':
      return wrap(root, edit)
    case 'unwrap':
      return unwrap(root, edit.path)
    case 'duplicate':
      return duplicate(root, edit.path)
    case 'name':
      return named(root, edit.path, edit.to)
    case 'rename':
      return rename(root, edit.path, edit.to)
  }
}

function no(problem: string): Change {
  return { ok: false, problem }
}

const nothingThere = 'There is nothing at this place.'

/** What the reader lets a file hold: no deeper than a protocol may be, no sign that does not show as what it is. */
function isData(value: unknown, depth = 0): value is Data {
  if (typeof value === 'string') return forbiddenAt(value) < 0
  if (value === null || typeof value === 'boolean') return true
  if (typeof value === 'number') return Number.isFinite(value)
  if (typeof value !== 'object' || depth > depthMost) return false
  return Object.entries(value).every(([key, one]) => forbiddenAt(key) < 0 && isData(one, depth + 1))
}

function setField(root: Data, path: Path, field: string | Path, value: Data | undefined): Change {
  const owner = ownerAt(root, path)
  if (!owner) return no(nothingThere)
  const fieldPath = typeof field === 'string' ? [field] : field
  if (fieldPath.length === 0) return no('No field is named.')
  if (at(owner.fields, fieldPath) === undefined && value === undefined) return { ok: true, data: root, path }
  const fields = withAt(owner.fields, fieldPath, () => value) as Fields
  if (owner.kind === 'header') return { ok: true, data: fields, path }
  return { ok: true, data: withAt(root, path, () => written({ ...owner, fields })), path }
}

function add(root: Data, { parent, index, kind, values, name }: Extract<Edit, { type: 'add' }>): Change {
  if (values !== undefined && !isData(values)) return no('These values can’t be written.')
  if (!Number.isInteger(index) || index < 0) return no('The place is no whole number.')
  const list = at(root, parent)
  const place = placeOf(parent)
  const isList = place === 'steps' || (parent.length === 1 && parent[0] === 'gaps')
  if (!isList) return addNamed(root, parent, index, kind, values, name)
  if (list !== undefined && list !== null && !Array.isArray(list)) return no('No list of steps is at this place.')
  if (parent.length > 1 && at(root, parent.slice(0, -1)) === undefined) return no(nothingThere)
  if (place === 'steps' ? !isWord(kind) : kind !== 'gap') return no(`A ${kind} can’t stand here.`)
  const fields = values ?? startingValues(kind as FormKind)
  const item = place === 'steps' ? written({ ...emptyStep(kind), fields }) : fields
  const items = list ?? []
  const where = Math.min(index, items.length)
  return { ok: true, data: withAt(root, parent, () => items.toSpliced(where, 0, item)), path: [...parent, where] }
}

function emptyStep(kind: string): NonNullable<ReturnType<typeof stepOf>> {
  return stepOf(kind) as NonNullable<ReturnType<typeof stepOf>>
}

/** Into a map: an input, a material, an answer, a branch. */
function addNamed(
  root: Data,
  parent: Path,
  index: number,
  kind: string,
  values: Fields | undefined,
  name: string | undefined
): Change {
  const wanted = placeOf([...parent, 'one'])
  const group = at(root, parent)
  const steps = wanted === 'steps' && (kind === 'answer' || kind === 'branch')
  if (kind !== wanted && !steps) return no(`A ${kind} can’t stand here.`)
  if (steps && !isFields(group)) return no(nothingThere)
  const fields = isFields(group) ? group : {}
  const key = name ?? freeName(kind, Object.keys(fields))
  if (Object.hasOwn(fields, key)) return no(`${key} is there already.`)
  if (key.trim() === '') return no('A name is missing.')
  if (placeOf([...parent, key]) !== wanted) return no(`${key} can’t be a name here.`)
  const known = (formKinds as readonly string[]).includes(kind)
  const value: Data = steps ? [] : (values ?? (known ? startingValues(kind as FormKind) : {}))
  const material =
    kind === 'material' ? written({ kind, fields: value as Fields, named: false, word: false, short: 'kind' }) : value
  const where = placeAmong(parent, Object.keys(fields), index)
  const entries = Object.entries(fields).toSpliced(where, 0, [key, material])
  return { ok: true, data: withAt(root, parent, () => Object.fromEntries(entries)), path: [...parent, key] }
}

function remove(root: Data, path: Path): Change {
  if (path.length === 0 || at(root, path) === undefined) return no(nothingThere)
  const parent = path.slice(0, -1)
  const data = withAt(root, path, () => undefined)
  const group = at(data, parent)
  const empty = Array.isArray(group) ? group.length === 0 : isFields(group) && Object.keys(group).length === 0
  // A list that may be left out is left out: an empty one would be a mistake.
  const optional = ['inputs', 'materials', 'gaps'].includes(String(parent[0])) && parent.length === 1
  const gone = empty && (optional || (parent.at(-1) === 'otherwise' && placeOf(parent) === 'steps'))
  return { ok: true, data: gone ? withAt(data, parent, () => undefined) : data, path: parent }
}

function move(root: Data, from: Path, to: { parent: Path; index: number }): Change {
  const moved = at(root, from)
  if (from.length === 0 || moved === undefined) return no(nothingThere)
  if (!Number.isInteger(to.index) || to.index < 0) return no('The place is no whole number.')
  if (startsWith(to.parent, from)) return no('A step can’t go into itself.')
  const parent = from.slice(0, -1)
  const key = from.at(-1)
  if (startsWith(to.parent, parent) && to.parent.length === parent.length)
    return moveWithin(root, parent, key, to.index)
  if (placeOf(from) !== 'step' || placeOf(to.parent) !== 'steps') return no('It can’t go there.')
  const target = at(root, to.parent) ?? null
  if (target !== null && !Array.isArray(target)) return no('No list of steps is at this place.')
  if (to.parent.length > 1 && !isFields(at(root, to.parent.slice(0, -1)))) return no(nothingThere)
  const where = Math.min(to.index, target?.length ?? 0)
  const put = withAt(root, to.parent, () => (target ?? []).toSpliced(where, 0, moved))
  const inserted = shifted(from, to.parent, where, 1)
  const after = shifted(to.parent, parent, Number(key), -1)
  return { ok: true, data: withAt(put, inserted, () => undefined), path: [...after, where] }
}

function moveWithin(root: Data, parent: Path, key: string | number | undefined, index: number): Change {
  const group = at(root, parent)
  if (Array.isArray(group)) {
    const rest = group.toSpliced(Number(key), 1)
    const where = Math.min(index, rest.length)
    const list = rest.toSpliced(where, 0, group[Number(key)] ?? null)
    return { ok: true, data: withAt(root, parent, () => list), path: [...parent, where] }
  }
  if (!isFields(group) || parent.length === 0) return no('The header keeps its order.')
  const entries = Object.entries(group)
  const one = entries.find(([name]) => name === key)
  const rest = entries.filter((entry) => entry !== one)
  const where = placeAmong(
    parent,
    rest.map(([name]) => name),
    index
  )
  const moved = one ? rest.toSpliced(where, 0, one) : entries
  return { ok: true, data: withAt(root, parent, () => Object.fromEntries(moved)), path: [...parent, String(key)] }
}

export function startsWith(path: Path, start: Path): boolean {
  return start.length <= path.length && start.every((part, i) => path[i] === part)
}

/** A path after something came into (1) or went from (-1) a list at an index. */
function shifted(path: Path, list: Path, index: number, by: 1 | -1): Path {
  if (!startsWith(path, list)) return path
  const own = path[list.length]
  const behind = typeof own === 'number' && (by === 1 ? own >= index : own > index)
  return behind ? [...list, own + by, ...path.slice(list.length + 1)] : path
}

function wrap(root: Data, { path, count, in: word, values }: Extract<Edit, { type: 'wrap' }>): Change {
  const index = Number(path.at(-1))
  const list = at(root, path.slice(0, -1))
  if (placeOf(path) !== 'step' || !Array.isArray(list) || at(root, path) === undefined) return no(nothingThere)
  if (!isConstruct(word)) return no(`${word} holds no steps.`)
  if (!Number.isInteger(count) || count < 1 || index + count > list.length) return no('There are not so many steps.')
  if (values !== undefined && !isData(values)) return no('These values can’t be written.')
  const steps = list.slice(index, index + count)
  const construct = { [word]: holding(word, values ?? {}, steps) }
  const wrapped = list.toSpliced(index, count, construct)
  return { ok: true, data: withAt(root, path.slice(0, -1), () => wrapped), path }
}

/** The fields of a new construct around some steps; what is required and not given stands at its example. */
function holding(word: string, values: Fields, steps: Data[]): Fields {
  const { first, ...usual } = startingValues(word as FormKind)
  const counted = ['band', 'jar', 'skein', 'colour', 'item'].some((name) => Object.hasOwn(values, name))
  if (counted) delete usual.band
  const fields: Fields = { ...usual, ...values }
  if (word === 'alongside') {
    const [branch] = listsInside(word, values).flat()
    return branch === undefined ? { ...fields, first: steps } : { ...fields, [branch]: steps }
  }
  if (word !== 'choice') return { ...fields, steps }
  const given = isFields(values.answers) ? Object.keys(values.answers) : ['yes', 'no']
  return { ...fields, answers: Object.fromEntries(given.map((key, i) => [key, i === 0 ? steps : []])) }
}

function unwrap(root: Data, path: Path): Change {
  const step = placeOf(path) === 'step' ? stepOf(at(root, path)) : null
  const list = at(root, path.slice(0, -1))
  if (!step || !Array.isArray(list)) return no(nothingThere)
  if (!isConstruct(step.kind)) return no(`${step.kind} holds no steps.`)
  const inside = listsInside(step.kind, step.fields).map((below) => at(step.fields, below) ?? [])
  if (!inside.every(Array.isArray)) return no('What is in it is no list of steps.')
  const index = Number(path.at(-1))
  const unwrapped = list.toSpliced(index, 1, ...inside.flat())
  return { ok: true, data: withAt(root, path.slice(0, -1), () => unwrapped), path }
}

function duplicate(root: Data, path: Path): Change {
  const one = at(root, path)
  const parent = path.slice(0, -1)
  const group = at(root, parent)
  const key = path.at(-1)
  if (one === undefined || path.length < 2) return no(nothingThere)
  if (Array.isArray(group)) {
    const index = Number(key) + 1
    const copy = placeOf(path) === 'step' ? copyOf(one, root) : one
    return { ok: true, data: withAt(root, parent, () => group.toSpliced(index, 0, copy)), path: [...parent, index] }
  }
  const place = placeOf(path)
  if (!isFields(group) || (place !== 'input' && place !== 'material' && place !== 'steps'))
    return no('It can’t be doubled.')
  if (place === 'steps' && placeOf([...parent, 'one']) !== 'steps') return no('It can’t be doubled.')
  const name = freeName(String(key), Object.keys(group))
  const copy = place === 'steps' && Array.isArray(one) ? copyOf(one, root) : one
  const entries = Object.entries(group)
  const after = entries.findIndex(([other]) => other === key) + 1
  const doubled = Object.fromEntries(entries.toSpliced(after, 0, [name, copy]))
  return { ok: true, data: withAt(root, parent, () => doubled), path: [...parent, name] }
}

function rename(root: Data, path: Path, to: string): Change {
  const one = at(root, path)
  const name = to.trim()
  if (one === undefined || path.length < 2) return no(nothingThere)
  if (name === '') return no('A name is missing.')
  if (placeOf(path) === 'step') {
    const step = stepOf(one)
    if (!step) return no(nothingThere)
    if (!isWord(name)) return no(`There is no step ${name.slice(0, 40)}.`)
    const renamed: Data = isFields(one) ? { [name]: Object.values(one)[0] ?? null } : name
    return { ok: true, data: withAt(root, path, () => renamed), path }
  }
  const parent = path.slice(0, -1)
  const group = at(root, parent)
  const sibling = [...parent, name]
  const free = placeOf(path) !== 'other' && placeOf(path) === placeOf([...parent, 'one'])
  if (!isFields(group) || !free || placeOf(sibling) !== placeOf(path)) return no('Its name can’t be changed.')
  if (name !== path.at(-1) && Object.hasOwn(group, name)) return no(`${name} is there already.`)
  const entries = Object.entries(group).map(([key, value]) => [key === path.at(-1) ? name : key, value])
  return { ok: true, data: withAt(root, parent, () => Object.fromEntries(entries)), path: sibling }
}
