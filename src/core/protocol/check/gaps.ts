// Gaps: both ends are moments, and the second comes after the first.
import type { Gap } from '../model.ts'
import { marksOf } from '../names.ts'
import { nearest } from '../nearest.ts'
import type { Steps } from '../read/steps.ts'
import { type Located, placeAt } from '../source/located.ts'
import { isStep, sequencesOf, type WrittenNode } from '../written.ts'

export function gapProblems(
  nodes: WrittenNode[],
  gaps: Gap[],
  names: ReadonlySet<string>,
  steps: Steps,
  root: Located
): void {
  for (const [i, gap] of gaps.entries()) {
    const at = (key: string) => placeAt(root, ['gaps', i, key])
    let known = true
    for (const key of ['from', 'to'] as const) {
      if (names.has(gap[key])) continue
      known = false
      const near = nearest(gap[key], names)
      const instead = near === null ? 'give the step an id, or marks: with this name' : `write ${near}`
      steps.problems.say(at(key), `gaps[${i}].${key}`, 'unknown-moment', `No step marks "${gap[key]}".`, instead)
    }
    if (known && backwards(nodes, gap)) {
      const what = `"${gap.to}" does not come after "${gap.from}".`
      steps.problems.say(at('to'), `gaps[${i}]`, 'gap-backwards', what, 'swap from and to')
    }
  }
}

/** In one sequence the order is plain; inside a loop, and between branches and answers, either may come first. */
function backwards(nodes: WrittenNode[], gap: Gap): boolean {
  if (gap.from === gap.to) return true
  for (const node of nodes) {
    const from = marksSomewhere(node, gap.from)
    const to = marksSomewhere(node, gap.to)
    if (from && to) return marksOf(node).includes(gap.to) ? false : insideBackwards(node, gap)
    if (to) return !seenBefore(nodes, node, gap.from)
    if (from) return false
  }
  return false
}

function insideBackwards(node: WrittenNode, gap: Gap): boolean {
  if (isStep(node)) return false
  if (node.word === 'choice' || node.word === 'alongside') {
    return sequencesOf(node).some((list) => {
      const inside = (name: string) => list.some((inner) => marksSomewhere(inner, name))
      return inside(gap.from) && inside(gap.to) && backwards(list, gap)
    })
  }
  // A loop's second round brings the first moment after the last one.
  return false
}

function seenBefore(nodes: WrittenNode[], node: WrittenNode, name: string): boolean {
  return nodes.slice(0, nodes.indexOf(node)).some((earlier) => marksSomewhere(earlier, name))
}

function marksSomewhere(node: WrittenNode, name: string): boolean {
  if (marksOf(node).includes(name)) return true
  return !isStep(node) && sequencesOf(node).some((list) => list.some((inner) => marksSomewhere(inner, name)))
}
