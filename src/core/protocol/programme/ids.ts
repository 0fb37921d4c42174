// Ids of steps that the writer left without: the word, numbered where it would not be alone.
import { isStep, type WrittenNode } from '../written.ts'

const none: readonly string[] = []
const ofLifted: readonly string[] = ['-lift', '-stir', '-enter']
const suffixes: Partial<Record<WrittenNode['word'], readonly string[]>> = {
  heat: ['-up'],
  soak: ['-in'],
  air: ['-out'],
  dry: ['-hang']
}

/** Of the acts that belong to a node. */
function suffixesOf(node: WrittenNode): readonly string[] {
  return isStep(node) && node.fields.yarn === 'lifted' ? ofLifted : (suffixes[node.word] ?? none)
}

/** The id of a node and those of the acts that belong to it. */
export function allIdsOf(id: string, node: WrittenNode): string[] {
  return [id, ...suffixesOf(node).map((suffix) => `${id}${suffix}`)]
}

/** One id a node, in order. An id is a moment too, so none may be a name that the writer uses elsewhere. */
export function assignIds(nodes: WrittenNode[], names: ReadonlySet<string>): string[] {
  const used = new Set<string>()
  // The first number that may still be free, by what would be named: names are only ever taken.
  const next = new Map<string, number>()
  for (const node of nodes) if (node.id !== null) for (const id of allIdsOf(node.id, node)) used.add(id)
  return nodes.map((node) => {
    if (node.id !== null) return node.id
    const base = node.word === 'for each' ? 'each' : node.word
    const more = suffixesOf(node)
    const called = more.length === 0 ? base : `${base}${more.join()}`
    const isTaken = (one: string): boolean => used.has(one) || names.has(one)
    for (let no = next.get(called) ?? 1; ; no++) {
      const id = no === 1 ? base : `${base}-${no}`
      if (isTaken(id) || more.some((suffix) => isTaken(`${id}${suffix}`))) continue
      used.add(id)
      for (const suffix of more) used.add(`${id}${suffix}`)
      next.set(called, no + 1)
      return id
    }
  })
}
