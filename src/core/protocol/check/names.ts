// Each id once, and no name that is an id in one place and a mark in another.
import { ownMarks } from '../names.ts'
import { allIdsOf } from '../programme/ids.ts'
import type { Steps } from '../read/steps.ts'
import { placeAt } from '../source/located.ts'
import { isStep, sequencesOf, type WrittenNode } from '../written.ts'

export function nameProblems(nodes: WrittenNode[], steps: Steps): void {
  const nodesInside = everyNode(nodes)
  const ids = new Set<string>()
  for (const node of nodesInside) {
    if (node.id === null) continue
    const all = allIdsOf(node.id, node)
    const twice = all.find((id) => ids.has(id))
    if (twice !== undefined) say(node, 'id', `${twice} names two steps.`, steps)
    for (const id of all) ids.add(id)
  }
  for (const node of nodesInside) {
    const clash = ownMarks(node).find((mark) => ids.has(mark))
    if (clash !== undefined) say(node, 'marks', `${clash} is an id and a mark.`, steps)
  }
}

function everyNode(nodes: readonly WrittenNode[], found: WrittenNode[] = []): WrittenNode[] {
  for (const node of nodes) {
    found.push(node)
    if (!isStep(node)) for (const list of sequencesOf(node)) everyNode(list, found)
  }
  return found
}

function say(node: WrittenNode, field: string, what: string, steps: Steps): void {
  const place = steps.places.get(node)
  if (!place) return
  const at = placeAt(place.located, [field], place.keyAt)
  steps.problems.say(at, `${place.where}.${field}`, 'duplicate-id', what, 'choose another name')
}
