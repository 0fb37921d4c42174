// What a running pot may still take: the doses on its way that have not come.
import type { LiveState } from '../pot/state.ts'
import type { Amount, Node, Step } from '../protocol/model.ts'

/** Amounts still to come of each material that stands on the shelf, by the material's id. */
export type Needed = Map<string, { amount: number; unit: Amount['unit'] }>

export type OnItsWay = Pick<LiveState, 'programme' | 'ended' | 'taken' | 'round'>

/** All passes of a loop that may come are counted, and of answers not given yet the one that takes most: there is to be
 * enough whichever way the pot goes. */
export function stillNeeded({ programme, ended, taken, round }: OnItsWay): Needed {
  const ofStep = ({ path, dose }: Step): Needed => {
    const needed: Needed = new Map()
    if (ended[path] !== undefined) return needed
    for (const { material, each } of dose?.from ?? []) {
      const { value, unit } = (dose as NonNullable<Step['dose']>).amount
      needed.set(material, { amount: value * each, unit })
    }
    return needed
  }
  const ofAll = (nodes: readonly Node[]): Needed => together(nodes.map(ofNode))
  const ofNode = (node: Node): Needed => {
    if (ended[node.path] !== undefined) return new Map()
    switch (node.node) {
      case 'step':
        return ofStep(node)
      case 'rounds': {
        const gone = (round[node.path] ?? 1) - 1
        return together([...node.rounds.slice(gone), node.otherwise ?? { steps: [] }].map(({ steps }) => ofAll(steps)))
      }
      case 'choice': {
        const answer = taken[node.path]
        const open = node.answers.filter(({ id }) => answer === undefined || id === answer)
        return most(open.map(({ steps }) => ofAll(steps)))
      }
      case 'alongside':
        return together(node.branches.map(({ steps }) => ofAll(steps)))
    }
  }
  return ofAll(programme.steps)
}

function together(all: readonly Needed[]): Needed {
  return merged(all, (a, b) => a + b)
}

function most(all: readonly Needed[]): Needed {
  return merged(all, Math.max)
}

function merged(all: readonly Needed[], of: (a: number, b: number) => number): Needed {
  const needed: Needed = new Map()
  for (const one of all) {
    for (const [material, { amount, unit }] of one) {
      needed.set(material, { amount: of(needed.get(material)?.amount ?? 0, amount), unit })
    }
  }
  return needed
}
