// Ids and marks: what a node's end is called by waits and gaps.
import { listOf } from './schema/fields.ts'
import { isStep, sequencesOf, type WrittenNode } from './written.ts'

/** The names that a node's end marks: its id and its marks. */
export function marksOf(node: WrittenNode): string[] {
  const marks = ownMarks(node)
  return node.id === null ? marks : [node.id, ...marks]
}

export function ownMarks(node: WrittenNode): string[] {
  return isStep(node) ? listOf(node.fields.marks as string | string[] | undefined) : node.fields.marks
}

/** All ids and marks of some steps and of what is inside them. */
export function momentNames(nodes: WrittenNode[]): Set<string> {
  const names = new Set<string>()
  for (const node of nodes) {
    for (const name of marksOf(node)) names.add(name)
    if (!isStep(node)) for (const list of sequencesOf(node)) for (const name of momentNames(list)) names.add(name)
  }
  return names
}
