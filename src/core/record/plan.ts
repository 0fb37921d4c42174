// The programme laid out in time before anything happened: each step at its likely place, loops at their likely length.
import type { Alongside, Node, Programme, Rounds, Step } from '../protocol/model.ts'
import type { Planned } from './record.ts'

/** Which answer is presumed at a choice, by the choice's path; the first where none is known. */
export type Taken = Record<string, string>

type Layout = { programme: Programme; taken: Taken; moments: Map<string, number>; planned: Map<string, Planned> }

/** Planned start and end of every step on the likely way, by path, in order. Steps that nobody expects (a third pass of
 * "until", an answer not taken) are left out. `startMs` may be 0: times are then counted from the start. */
export function planOf(programme: Programme, startMs: number, taken: Taken = {}): Map<string, Planned> {
  const layout: Layout = { programme, taken, moments: new Map(), planned: new Map() }
  layNodes(layout, programme.steps, startMs)
  return layout.planned
}

function layNodes(layout: Layout, nodes: Node[], fromMs: number): number {
  let atMs = fromMs
  for (const node of nodes) atMs = layNode(layout, node, atMs)
  return atMs
}

function layNode(layout: Layout, node: Node, fromMs: number): number {
  const endMs = layInside(layout, node, fromMs)
  layout.moments.set(node.id, endMs)
  for (const name of node.marks) layout.moments.set(name, endMs)
  return endMs
}

function layInside(layout: Layout, node: Node, fromMs: number): number {
  switch (node.node) {
    case 'step':
      return layStep(layout, node, fromMs)
    case 'rounds':
      return layRounds(layout, node, fromMs)
    case 'choice': {
      const answer = node.answers.find((a) => a.id === layout.taken[node.path]) ?? node.answers[0]
      return layNodes(layout, answer?.steps ?? [], layStep(layout, node.ask, fromMs))
    }
    case 'alongside':
      return layBranches(layout, node, fromMs)
  }
}

function layBranches(layout: Layout, node: Alongside, fromMs: number): number {
  return Math.max(fromMs, ...node.branches.map((branch) => layNodes(layout, branch.steps, fromMs)))
}

function layRounds(layout: Layout, node: Rounds, fromMs: number): number {
  if (node.kind !== 'until') return node.rounds.reduce((atMs, pass) => layNodes(layout, pass.steps, atMs), fromMs)
  let atMs = fromMs
  for (const pass of node.rounds.slice(0, node.likelyRounds)) {
    atMs = pass.ask ? layStep(layout, pass.ask, atMs) : atMs
    atMs = layNodes(layout, pass.steps, atMs)
  }
  const last = node.rounds[node.likelyRounds]?.ask
  return last ? layStep(layout, last, atMs) : atMs
}

function layStep(layout: Layout, step: Step, fromMs: number): number {
  const startMs = Math.max(fromMs, notBefore(layout, step))
  const endMs = Math.max(startMs, endOf(layout, step, startMs))
  layout.planned.set(step.path, { startMs, endMs })
  return endMs
}

function endOf(layout: Layout, step: Step, startMs: number): number {
  const { wait, ramp, clock, hands } = step
  if (!wait && !ramp) return startMs + hands.likelyMs
  const from = wait?.from ? layout.moments.get(wait.from) : undefined
  if (!wait || from === undefined || wait.forMs === null) return startMs + clock.likelyMs
  return Math.max(from + wait.forMs, startMs + wait.leastMs)
}

function notBefore(layout: Layout, step: Step): number {
  let atMs = Number.NEGATIVE_INFINITY
  for (const gap of layout.programme.gaps) {
    if (gap.atLeastMs === null || (gap.to !== step.id && !step.marks.includes(gap.to))) continue
    const from = layout.moments.get(gap.from)
    if (from !== undefined) atMs = Math.max(atMs, from + gap.atLeastMs)
  }
  return atMs
}
