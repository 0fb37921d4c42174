// Ids and marks: what a node's end is called by waits and gaps.
import { listOf } from './schema/fields.ts'
import { isStep, sequencesOf, type WrittenNode } from './written.ts'

const marks = new WeakMap<WrittenNode, readonly string[]>()

/** The names that a node's end marks: its id and its marks. A node never changes, and is asked time and again. */
export function marksOf(node: WrittenNode): readonly string[] {
  const known = marks.get(node)
  if (known) return known
  const own = ownMarks(node)
  const made = node.id === null ? own : [node.id, ...own]
  marks.set(node, made)
  return made
}

const none: readonly string[] = []

export function ownMarks(node: WrittenNode): readonly string[] {
  if (!isStep(node)) return node.fields.marks
  const { marks: written } = node.fields as { marks?: string | string[] }
  return written === undefined ? none : listOf(written)
}

const moments = new WeakMap<readonly WrittenNode[], ReadonlySet<string>>()

/** All ids and marks of some steps and of what is inside them. */
export function momentNames(nodes: readonly WrittenNode[]): ReadonlySet<string> {
  const known = moments.get(nodes)
  if (known) return known
  const names = new Set<string>()
  for (const node of nodes) {
    for (const name of marksOf(node)) names.add(name)
    if (!isStep(node)) for (const list of sequencesOf(node)) for (const name of momentNames(list)) names.add(name)
  }
  moments.set(nodes, names)
  return names
}
