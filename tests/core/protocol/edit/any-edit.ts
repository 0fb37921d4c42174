// An edit by form that makes sense at some place of a protocol, chosen by numbers; and what it does to plain data, told
// the short way: a copy, spliced in place.
import fc from 'fast-check'
import type { Data, Fields, Path } from '../../../../src/core/protocol/edit/data.ts'
import type { Edit } from '../../../../src/core/protocol/edit/edit.ts'

export type Dice = { at: number; other: number; kind: number; value: number }
const nat = fc.nat(10_000)
export const dice: fc.Arbitrary<Dice> = fc.record({ at: nat, other: nat, kind: nat, value: nat })

const constructs = ['repeat', 'for each', 'until', 'choice', 'alongside']

const holdsSteps = (word: string, key: string): boolean =>
  word === 'choice' ||
  (word === 'alongside' ? !['id', 'label', 'marks'].includes(key) : ['steps', 'otherwise'].includes(key))

type Place = { list: Path; index: number }

/** Every list of steps of a protocol, and every step. */
export const places = (root: Data): { lists: Path[]; steps: Place[] } => {
  const lists: Path[] = []
  const steps: Place[] = []
  const walk = (list: Data, path: Path): void => {
    if (!Array.isArray(list)) return
    lists.push(path)
    for (const [index, item] of list.entries()) {
      steps.push({ list: path, index })
      if (typeof item !== 'object' || item === null || Array.isArray(item)) continue
      const [word = '', fields] = Object.entries(item)[0] ?? []
      if (!constructs.includes(word) || typeof fields !== 'object') continue
      const groups = word === 'choice' ? (fields as Fields).answers : fields
      const base = word === 'choice' ? [...path, index, word, 'answers'] : [...path, index, word]
      for (const [key, value] of Object.entries(groups ?? {})) {
        if (Array.isArray(value) && holdsSteps(word, key)) walk(value, [...base, key])
      }
    }
  }
  walk((root as Fields).steps ?? [], ['steps'])
  return { lists, steps }
}

const pick = <T>(from: readonly T[], no: number): T => from[no % from.length] as T

export const texts = [
  '6 min',
  'a: b',
  'x, y',
  '{each}',
  '20:1',
  'true',
  '12',
  ' lead',
  'two\nlines\n',
  "it's # not",
  '- a',
  'ä°'
]
const fieldsToSet = ['detail', 'knot', 'call', 'late', 'soft', 'hands', 'forbid', 'record', 'id']
const values: Data[] = [...texts, true, 5, 0.25, ['stir', 'lift, drop'], 'absorb']

export const editFor = (root: Data, { at, other, kind, value }: Dice): Edit => {
  const { lists, steps } = places(root)
  const step = pick(steps.length > 0 ? steps : [{ list: ['steps'], index: 0 }], at)
  const path = [...step.list, step.index]
  const list = pick(lists, other)
  const length = (at2(root, step.list) as Data[]).length
  const field = pick(fieldsToSet, other)
  switch (kind % 11) {
    case 0:
    case 1:
      return { type: 'set', path, field, value: pick(values, value) }
    case 2:
      return {
        type: 'set',
        path: [],
        field: pick(['about', 'room', 'cautions', 'title'], other),
        value: pick(values, value)
      }
    case 3:
      return { type: 'unset', path, field: pick(['at', 'late', 'for', 'yarn', 'rate', 'otherwise'], other) }
    case 4:
      return {
        type: 'add',
        parent: list,
        index: value % 5,
        kind: pick(['hold', 'turn', 'repeat', 'choice', 'add'], at)
      }
    case 5:
      return { type: 'remove', path }
    case 6:
    case 7:
      return { type: 'move', from: path, to: { parent: list, index: value % 5 } }
    case 8:
      return { type: 'wrap', path, count: 1 + (value % (length - step.index)), in: pick(constructs, other) }
    case 9:
      return { type: 'unwrap', path }
    default:
      return { type: 'duplicate', path }
  }
}

export const at2 = (root: Data, path: Path): Data | undefined =>
  path.reduce<Data | undefined>((here, part) => (here as Fields | undefined)?.[part as string], root)

/** What an edit makes of the data; null: it is refused. `made`: the new thing of an add or a wrap, whose starting values
 * are not this model's business. */
export const model = (before: Data, edit: Edit, made: Data | undefined): Data | null => {
  const root = structuredClone(before)
  const listAt = (path: Path): Data[] => at2(root, path.slice(0, -1)) as Data[]
  const index = (path: Path): number => Number(path.at(-1))
  switch (edit.type) {
    case 'set':
    case 'unset':
      return withField(root, edit.path, String(edit.field), edit.type === 'set' ? edit.value : undefined)
    case 'add': {
      const list = at2(root, edit.parent) as Data[]
      list.splice(edit.index, 0, made ?? null)
      return root
    }
    case 'remove': {
      listAt(edit.path).splice(index(edit.path), 1)
      dropEmptyOtherwise(root, edit.path.slice(0, -1))
      return root
    }
    case 'move': {
      const { from, to } = edit
      if (from.length <= to.parent.length && from.every((part, i) => part === to.parent[i])) return null
      const target = at2(root, to.parent) as Data[]
      const [moved] = listAt(from).splice(index(from), 1)
      target.splice(to.index, 0, moved ?? null)
      return root
    }
    case 'wrap': {
      listAt(edit.path).splice(index(edit.path), edit.count, made ?? null)
      return root
    }
    case 'unwrap': {
      const item = at2(root, edit.path) as Fields
      const [word = '', fields] = typeof item === 'object' ? (Object.entries(item)[0] ?? []) : []
      if (!constructs.includes(word)) return null
      const branches = word === 'alongside' ? Object.entries(fields ?? {}).filter(([key]) => holdsSteps(word, key)) : []
      if (!branches.every(([, list]) => Array.isArray(list))) return null
      const inside = places({ steps: [{ [word]: fields ?? null }] }).lists.filter(
        (path) => path.length === (word === 'choice' ? 5 : 4)
      )
      const all = inside.flatMap((path) => at2(item, path.slice(2)) as Data[])
      listAt(edit.path).splice(index(edit.path), 1, ...all)
      return root
    }
    default:
      return null
  }
}

const dropEmptyOtherwise = (root: Data, list: Path): void => {
  const owner = at2(root, list.slice(0, -1)) as Fields
  if (list.at(-1) === 'otherwise' && (owner.otherwise as Data[]).length === 0) delete owner.otherwise
}

const withField = (root: Data, path: Path, field: string, value: Data | undefined): Data => {
  if (path.length === 0) return { ...(root as Fields), [field]: value ?? null }
  const list = at2(root, path.slice(0, -1)) as Data[]
  const item = list[Number(path.at(-1))] as Data
  const word = typeof item === 'string' ? item : (Object.keys(item as Fields)[0] ?? '')
  const inner = typeof item === 'string' ? {} : (item as Fields)[word]
  const short =
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? inner
      : { [shorts[word] ?? '?']: inner ?? null }
  const fields: Fields = { ...(short as Fields) }
  if (value === undefined) delete fields[field]
  else fields[field] = value
  list[Number(path.at(-1))] = { [word]: fields }
  return root
}

/** From the language reference. */
const shorts: Record<string, string> = {
  hold: 'for',
  soak: 'for',
  air: 'for',
  wait: 'until',
  add: 'amount',
  measure: 'what',
  lower: 'to',
  transfer: 'to',
  heat: 'to',
  do: 'say'
}
