// How many steps a protocol has, written and once its loops are written out, before anything is written out.
import type { StepWord } from '../model.ts'
import type { Bearing } from '../read/header.ts'
import type { Steps } from '../read/steps.ts'
import { stepsMost, timesMost, writtenStepsMost } from '../source/limits.ts'
import { isStep, sequencesOf, type WrittenNode, type WrittenStep } from '../written.ts'

/** False, and told, where there are too many. */
export function countSteps(nodes: WrittenNode[], header: Bearing, steps: Steps): boolean {
  const written = writtenIn(nodes)
  const first = nodes[0]
  const place = (first && steps.places.get(first)?.keyAt) ?? { line: 1, column: 1 }
  if (written > writtenStepsMost) {
    const what = `${written} steps are written.`
    steps.problems.say(
      place,
      'steps',
      'too-many-steps',
      what,
      `keep them to ${writtenStepsMost}: use repeat and for each`
    )
    return false
  }
  const full = fullIn(nodes, mostOf(header))
  if (full > stepsMost) {
    const what = `Written out, the loops make ${Math.min(full, 1e9)} steps.`
    steps.problems.say(
      place,
      'steps',
      'too-many-steps',
      what,
      `keep them to ${stepsMost}: fewer rounds, fewer loops in loops`
    )
    return false
  }
  return true
}

function writtenIn(nodes: WrittenNode[]): number {
  return nodes.reduce(
    (sum, node) => sum + 1 + (isStep(node) ? 0 : sequencesOf(node).reduce((inner, list) => inner + writtenIn(list), 0)),
    0
  )
}

type Most = (written: string | number) => number

/** The most that a count can come to: an input's upper limit, else its default. */
function mostOf(header: Bearing): Most {
  return (written) => {
    if (typeof written === 'number') return written
    const input = header.inputs.find(({ id }) => id === written)
    const most = input?.most ?? (typeof input?.default === 'number' ? input.default : 1)
    return Math.min(Math.max(most, 1), timesMost)
  }
}

function fullIn(nodes: WrittenNode[], most: Most): number {
  return nodes.reduce((sum, node) => sum + fullOf(node, most), 0)
}

function fullOf(node: WrittenNode, most: Most): number {
  if (isStep(node)) return actsOf(node)
  switch (node.word) {
    case 'repeat':
      return most(node.fields.times) * fullIn(node.fields.steps, most)
    case 'for each': {
      const { items } = node.fields
      const from = 'list' in items || typeof items.from !== 'number' ? 1 : items.from
      const rounds = 'list' in items ? items.list.length : Math.max(0, most(items.to) - from + 1)
      return rounds * fullIn(node.fields.steps, most)
    }
    case 'until':
      return (
        most(node.fields['at most']) * (fullIn(node.fields.steps, most) + 1) +
        1 +
        fullIn(node.fields.otherwise ?? [], most)
      )
    case 'choice':
      return 1 + sequencesOf(node).reduce((sum, list) => sum + fullIn(list, most), 0)
    case 'alongside':
      return sequencesOf(node).reduce((sum, list) => sum + fullIn(list, most), 0)
  }
}

/** Some words make several acts: lift, add, stir, enter; heat up and read. */
const acts: Partial<Record<StepWord, number>> = { heat: 2, soak: 2, air: 2, dry: 2 }

function actsOf(node: WrittenStep): number {
  return node.fields.yarn === 'lifted' ? 4 : (acts[node.word] ?? 1)
}
