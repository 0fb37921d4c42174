// What each kind of row is called, and what it shows first.
import { type Field, type FormKind, formKinds, formOf, shortOf } from '../../../core/protocol/edit/form.ts'
import { type StepWord, stepWords } from '../../../core/protocol/model.ts'
import { type ConstructWord, constructWords } from '../../../core/protocol/written.ts'

export const isStepWord = (kind: string): kind is StepWord => (stepWords as readonly string[]).includes(kind)
export const isConstructWord = (kind: string): kind is ConstructWord =>
  (constructWords as readonly string[]).includes(kind)
export const isFormKind = (kind: string): kind is FormKind => (formKinds as readonly string[]).includes(kind)

/** The names that every form of a group has: of little use to most steps. */
const common = (kinds: readonly FormKind[]): Set<string> => {
  const [first = new Set<string>(), ...rest] = kinds.map((kind) => new Set(formOf(kind).map(({ name }) => name)))
  return new Set([...first].filter((name) => rest.every((names) => names.has(name))))
}
const everywhere = new Map<readonly FormKind[], Set<string>>()

/** The fields of a form that have a value, are needed, or belong to this kind alone; and the rest, to be opened. Fields
 * that are rows of the list are in neither. */
export function inTwo(kind: FormKind, hasValue: (name: string) => boolean): { first: Field[]; more: Field[] } {
  const group = isStepWord(kind) ? stepWords : isConstructWord(kind) ? constructWords : null
  const shared = group === null ? new Set<string>() : (everywhere.get(group) ?? common(group))
  if (group !== null) everywhere.set(group, shared)
  const fields = formOf(kind).filter((field) => !isRows(field))
  const short = shortOf(kind)
  const isFirst = ({ name, required }: Field): boolean =>
    required || name === short || hasValue(name) || (!shared.has(name) && kind !== 'header')
  const first = fields.filter(isFirst)
  const order = (field: Field): number => (field.name === short ? 0 : field.required ? 1 : 2)
  return { first: first.toSorted((a, b) => order(a) - order(b)), more: fields.filter((field) => !isFirst(field)) }
}

/** The steps of a loop, the answers of a choice, branches; and of the header what has rows of its own. */
function isRows({ name, steps, of }: Field): boolean {
  return (
    steps === true || of?.steps === true || name === '' || ['strandline', 'inputs', 'materials', 'gaps'].includes(name)
  )
}
