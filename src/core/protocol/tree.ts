// The programme as a tree with an address for every node: paths in, nodes and their places out.
import type { Alongside, Choice, Node, Programme, Rounds, Step } from './model.ts'

/** What a sequence of nodes belongs to; null: it is the programme itself. */
export type Owner =
  | null
  | { kind: 'round'; rounds: Rounds; round: number }
  | { kind: 'branch'; of: Alongside; branch: number }
  | { kind: 'answer'; of: Choice }
  | { kind: 'otherwise'; of: Rounds }

/** Where a node stands: its neighbours in order, its place among them, and whose sequence that is.
 * The question of a loop's round stands before the first step of that round (index -1); so does that of a choice. */
export type Place = { siblings: Node[]; index: number; owner: Owner }

type Index = { nodes: Map<string, Node>; places: Map<string, Place>; steps: Step[] }

// Programmes are never changed, so an index made once holds for good; it goes when its programme goes.
const indexes = new WeakMap<Programme, Index>()

function indexOf(programme: Programme): Index {
  const known = indexes.get(programme)
  if (known) return known
  const index: Index = { nodes: new Map(), places: new Map(), steps: [] }
  enter(index, programme.steps, null)
  indexes.set(programme, index)
  return index
}

function enter(index: Index, siblings: Node[], owner: Owner): void {
  for (const [i, node] of siblings.entries()) {
    index.nodes.set(node.path, node)
    index.places.set(node.path, { siblings, index: i, owner })
    enterInto(index, node)
  }
}

function enterAsk(index: Index, ask: Step, siblings: Node[], owner: Owner): void {
  index.nodes.set(ask.path, ask)
  index.places.set(ask.path, { siblings, index: -1, owner })
  index.steps.push(ask)
}

function enterInto(index: Index, node: Node): void {
  switch (node.node) {
    case 'step':
      index.steps.push(node)
      return
    case 'rounds':
      for (const [i, round] of node.rounds.entries()) {
        const owner: Owner = { kind: 'round', rounds: node, round: i + 1 }
        if (round.ask) enterAsk(index, round.ask, round.steps, owner)
        enter(index, round.steps, owner)
      }
      if (node.otherwise) enter(index, node.otherwise.steps, { kind: 'otherwise', of: node })
      return
    case 'choice': {
      const owner: Owner = { kind: 'answer', of: node }
      enterAsk(index, node.ask, [], owner)
      for (const answer of node.answers) enter(index, answer.steps, owner)
      return
    }
    case 'alongside':
      for (const [i, branch] of node.branches.entries())
        enter(index, branch.steps, { kind: 'branch', of: node, branch: i })
      return
  }
}

export function nodeAt(programme: Programme, path: string): Node | null {
  return indexOf(programme).nodes.get(path) ?? null
}

export function stepAt(programme: Programme, path: string): Step | null {
  const node = nodeAt(programme, path)
  return node?.node === 'step' ? node : null
}

/** The place of a node; an unknown path has no neighbours. */
export function sequenceOf(programme: Programme, path: string): Place {
  return indexOf(programme).places.get(path) ?? { siblings: [], index: 0, owner: null }
}

/** All steps in the order of the document, questions of loops and choices among them. */
export function stepsOf(programme: Programme): Step[] {
  return indexOf(programme).steps
}
