// Ids of steps that the writer left without: the word, numbered where it would not be alone.
import { isStep, type WrittenNode } from '../written.ts'

const suffixes: Partial<Record<WrittenNode['word'], string[]>> = {
  heat: ['-up'],
  soak: ['-in'],
  air: ['-out'],
  dry: ['-hang']
}

/** The id of a node and those of the acts that belong to it. */
export function allIdsOf(id: string, node: WrittenNode): string[] {
  const lifted = isStep(node) && node.fields.yarn === 'lifted'
  const more = lifted ? ['-lift', '-stir', '-enter'] : (suffixes[node.word] ?? [])
  return [id, ...more.map((suffix) => `${id}${suffix}`)]
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
    const called = allIdsOf(base, node).join()
    for (let no = next.get(called) ?? 1; ; no++) {
      const id = no === 1 ? base : `${base}-${no}`
      const all = allIdsOf(id, node)
      if (all.some((one) => used.has(one) || names.has(one))) continue
      for (const one of all) used.add(one)
      next.set(called, no + 1)
      return id
    }
  })
}
