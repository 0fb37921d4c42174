// What lies at a path of the text: the grammar of where steps stand, in one place.
import { stepWords } from '../model.ts'
import { constructWords } from '../written.ts'
import { at, type Data, type Fields, isFields, type Path } from './data.ts'
import { shortOf } from './form.ts'

/** `steps`: a list of steps, be it the protocol's, a construct's, an answer's or a branch's. */
export type PlaceKind = 'header' | 'input' | 'material' | 'gap' | 'step' | 'steps' | 'other'

const ownOfAlongside = ['id', 'label', 'marks']

export function placeOf(path: Path): PlaceKind {
  if (path.length === 0) return 'header'
  const [first, second] = path
  if (path.length === 2) {
    if (first === 'inputs') return 'input'
    if (first === 'materials') return 'material'
    if (first === 'gaps' && typeof second === 'number') return 'gap'
  }
  if (isStepList(path)) return 'steps'
  return typeof path.at(-1) === 'number' && isStepList(path.slice(0, -1)) ? 'step' : 'other'
}

function isStepList(path: Path): boolean {
  if (path[0] !== 'steps') return false
  let rest = path.slice(1)
  while (rest.length > 0) {
    const [index, word, ...below] = rest
    const inside = typeof index === 'number' ? lengthInside(word, below) : 0
    if (inside === 0) return false
    rest = below.slice(inside)
  }
  return true
}

/** How many parts of a path lead from a construct's word to one of its lists of steps; 0: it leads elsewhere. */
function lengthInside(word: string | number | undefined, [first, second]: Path): 0 | 1 | 2 {
  if (typeof first !== 'string') return 0
  if (word === 'repeat' || word === 'for each') return first === 'steps' ? 1 : 0
  if (word === 'until') return first === 'steps' || first === 'otherwise' ? 1 : 0
  if (word === 'choice') return first === 'answers' && typeof second === 'string' ? 2 : 0
  return word === 'alongside' && !ownOfAlongside.includes(first) ? 1 : 0
}

/** The lists of steps inside a construct, as paths below its word, in the order of the text. */
export function listsInside(word: string, fields: Data | undefined): string[][] {
  if (!isFields(fields)) return []
  const keys = Object.keys(fields)
  switch (word) {
    case 'repeat':
    case 'for each':
      return keys.filter((key) => key === 'steps').map((key) => [key])
    case 'until':
      return keys.filter((key) => key === 'steps' || key === 'otherwise').map((key) => [key])
    case 'choice':
      return isFields(fields.answers) ? Object.keys(fields.answers).map((key) => ['answers', key]) : []
    case 'alongside':
      return keys.filter((key) => !ownOfAlongside.includes(key)).map((key) => [key])
    default:
      return []
  }
}

export function isConstruct(word: string): boolean {
  return (constructWords as readonly string[]).includes(word)
}

export function isWord(word: string): boolean {
  return isConstruct(word) || (stepWords as readonly string[]).includes(word)
}

/** The place of the entry that is the `index`th of its kind among the keys of a map; behind the last where there are not
 * so many: the branches of an alongside stand among its own fields. */
export function placeAmong(parent: Path, keys: string[], index: number): number {
  const alike = keys.filter((key) => placeOf([...parent, key]) === placeOf([...parent, 'one']))
  const wanted = alike[index] ?? null
  if (wanted !== null) return keys.indexOf(wanted)
  return alike.length === 0 ? keys.length : keys.indexOf(alike.at(-1) ?? '') + 1
}

/** A step's word and fields, whichever way they are written. `named`: as a map of fields. */
export type Owner = { kind: string; fields: Fields; named: boolean; word: boolean; short: string | null }

/** Null: what lies there is no step, input, material, gap or header that could have fields. */
export function ownerAt(root: Data, path: Path): Owner | null {
  const data = at(root, path)
  const place = placeOf(path)
  if (place === 'step') return stepOf(data)
  if (place === 'steps' || data === undefined) return null
  if (isFields(data)) return { kind: place, fields: data, named: true, word: false, short: shortOf(place) }
  if (place === 'material' && typeof data === 'string') {
    return { kind: place, fields: { kind: data }, named: false, word: false, short: 'kind' }
  }
  return null
}

/** `- rinse`, `- hold: 6 min` and `- hold: {for: 6 min}` alike. Null: it is no step. */
export function stepOf(data: Data | undefined): Owner | null {
  if (typeof data === 'string') return { kind: data, fields: {}, named: false, word: true, short: shortOf(data) }
  if (!isFields(data)) return null
  const [entry, other] = Object.entries(data)
  if (!entry || other) return null
  const [kind, value] = entry
  const short = shortOf(kind)
  if (isFields(value)) return { kind, fields: value, named: true, word: true, short }
  if (value === null) return { kind, fields: {}, named: false, word: true, short }
  return short === null ? null : { kind, fields: { [short]: value }, named: false, word: true, short }
}

/** A step or a material in the shortest form that says it; `named` keeps the fields named where there are any. */
export function written({ kind, fields, named, word, short }: Owner): Data {
  const keys = Object.keys(fields)
  const only = keys.length === 1 && short !== null && keys[0] === short ? fields[short] : undefined
  const bare = only !== undefined && !named && !isFields(only)
  if (!word) return bare ? only : fields
  if (keys.length === 0) return kind
  return { [kind]: bare ? only : fields }
}

/** Whether an item of a list is a bare word: `- rinse`. */
export function isStepBare(key: string | null, value: { kind: string }): boolean {
  return key === null && value.kind === 'scalar'
}
