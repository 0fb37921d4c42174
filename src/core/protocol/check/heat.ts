// The heat on every way through: off at the end, and off wherever the dyer may be away.
import type { Steps } from '../read/steps.ts'
import { isStep, sequencesOf, type WrittenNode, type WrittenStep } from '../written.ts'

/** Is the heat on? `since`: a heat that may have turned it on; null: it is off on every way. */
type Heat = WrittenStep | null

export function heatProblems(nodes: WrittenNode[], steps: Steps): void {
  const left = walk(nodes, null, steps)
  if (!left) return
  const place = steps.places.get(left)
  if (!place) return
  const instead = 'add - heat: off after it, on every way through'
  steps.problems.say(place.keyAt, place.where, 'heat-left-on', 'After this the heat is never turned off.', instead)
}

function walk(nodes: WrittenNode[], before: Heat, steps: Steps): Heat {
  let heat = before
  for (const node of nodes) heat = isStep(node) ? afterStep(node, heat, steps) : afterConstruct(node, heat, steps)
  return heat
}

function afterStep(step: WrittenStep, heat: Heat, steps: Steps): Heat {
  if (step.word === 'heat') return String(step.fields.to).trim().toLowerCase() === 'off' ? null : step
  if (heat === null) return null
  const place = steps.places.get(step)
  if (place && step.fields.away === true) {
    const instead = 'put - heat: off before it, or take away: true out'
    steps.problems.say(
      place.keyAt,
      place.where,
      'away-with-heat-on',
      'The dyer may be away while the heat is on.',
      instead
    )
  }
  if (place && step.word === 'cool') {
    const instead = 'put - heat: off before it'
    steps.problems.say(place.keyAt, place.where, 'cool-with-heat-on', 'Nothing cools while the heat is on.', instead)
  }
  return heat
}

function afterConstruct(node: Exclude<WrittenNode, WrittenStep>, heat: Heat, steps: Steps): Heat {
  switch (node.word) {
    case 'repeat':
    case 'for each':
      return walk(node.fields.steps, walk(node.fields.steps, heat, steps), steps)
    case 'until': {
      const after = walk(node.fields.steps, heat, steps)
      const again = walk(node.fields.steps, after ?? heat, steps)
      const atAsk = heat ?? after ?? again
      const otherwise = walk(node.fields.otherwise ?? [], atAsk, steps)
      return atAsk ?? otherwise
    }
    case 'choice': {
      const ends = node.fields.answers.map((answer) => walk(answer.steps, heat, steps))
      return ends.find((end) => end !== null) ?? null
    }
    case 'alongside':
      return afterBranches(
        node.fields.branches.map((branch) => branch.steps),
        heat,
        steps
      )
  }
}

/** Branches share the stove: while one heats, none may be away. */
function afterBranches(branches: WrittenNode[][], heat: Heat, steps: Steps): Heat {
  const heats = branches.map((branch) => firstHeat(branch))
  const ends = branches.map((branch, i) => {
    const elsewhere = heats.find((other, j) => j !== i && other !== null) ?? null
    return { touches: touchesHeat(branch), end: walk(branch, heat ?? elsewhere, steps) }
  })
  const touching = ends.filter(({ touches }) => touches)
  if (touching.length === 0) return heat
  return touching.find(({ end }) => end !== null)?.end ?? null
}

function firstHeat(nodes: WrittenNode[]): WrittenStep | null {
  return allSteps(nodes).find((step) => step.word === 'heat' && String(step.fields.to).toLowerCase() !== 'off') ?? null
}

function touchesHeat(nodes: WrittenNode[]): boolean {
  return allSteps(nodes).some((step) => step.word === 'heat')
}

function allSteps(nodes: WrittenNode[]): WrittenStep[] {
  return nodes.flatMap((node) => (isStep(node) ? [node] : sequencesOf(node).flatMap(allSteps)))
}
