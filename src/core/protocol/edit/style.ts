// How a file is written, so that what is added to it looks as if its writer had written it.
import { stillOf } from './further-on.ts'
import { find, type Group, type Parsed, type Tree } from './tree.ts'

export type Style = {
  /** The whole file is JSON: every key and text in quotes. */
  json: boolean
  eol: '\n' | '\r\n'
  /** How far fields stand in from their word. */
  indent: number
  /** How far dashes stand in from the key of their list; many write them right under it. */
  listIndent: number
  /** Steps have their fields on lines of their own rather than in braces. */
  fieldsInLines: boolean
}

export function styleOf({ text, root }: Parsed): Style {
  const eol = text.includes('\r\n') ? '\r\n' : '\n'
  const plain: Style = { json: false, eol, indent: 2, listIndent: 2, fieldsInLines: false }
  if (root === null || root.kind === 'scalar') return plain
  if (root.flow) return { ...plain, json: text.charAt(root.entries[0]?.start ?? 0) === '"' }
  const steps = find(root, ['steps'])?.entry.value
  if (steps?.kind !== 'list' || steps.flow) return plain
  const listIndent = Math.max(0, columnOf(text, steps.start) - columnOf(text, root.start))
  const [flow, block] = mapsIn(steps)
  return { ...plain, listIndent, indent: indentIn(text, steps) ?? 2, fieldsInLines: block.length > flow.length }
}

function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1)
}

/** The maps of fields under the words of a list of steps: those in braces, and those on lines of their own. */
function mapsIn(steps: Group): [Group[], Group[]] {
  // How it is written does not depend on where it stands: nothing is moved to be looked at.
  const fields = steps.entries
    .map(({ value }) => stillFieldsOf(value))
    .filter((value): value is Group => value?.kind === 'map' && !value.entries.some(({ value }) => holdsSteps(value)))
  return [fields.filter(({ flow }) => flow), fields.filter(({ flow }) => !flow)]
}

function fieldsOf(step: Tree): Tree | undefined {
  return step.kind === 'map' ? step.entries[0]?.value : undefined
}

function stillFieldsOf(step: Tree): Tree | undefined {
  const fields = step.kind === 'map' ? stillOf(step).entries[0]?.value : undefined
  return fields && fields.kind !== 'scalar' ? stillOf(fields) : fields
}

function holdsSteps(value: Tree): boolean {
  return value.kind === 'list' && !value.flow
}

function indentIn(text: string, steps: Group): number | null {
  for (const { value } of steps.entries) {
    const still = stillFieldsOf(value)
    if (still?.kind !== 'map' || still.flow) continue
    const fields = fieldsOf(value) ?? still
    const indent = columnOf(text, fields.start) - columnOf(text, value.start)
    if (indent > 0 && indent <= 8) return indent
  }
  return null
}
