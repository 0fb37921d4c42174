// A text made into a programme, or a plain complaint.
import type { Node, Programme, ProgrammeInputs, Protocol, Step } from '../../../src/core/protocol/model.ts'
import { programmeOf } from '../../../src/core/protocol/programme.ts'
import { readProtocol } from '../../../src/core/protocol/read.ts'
import { stepsOf } from '../../../src/core/protocol/tree.ts'

export const minuteMs = 60_000

export function protocolFrom(text: string): Protocol {
  const read = readProtocol(text)
  if (read.ok) return read.protocol
  throw new Error(read.problems.map((p) => `${p.line}:${p.column} ${p.code} ${p.what} (${p.instead})`).join('\n'))
}

export function inputs(more: Partial<ProgrammeInputs> = {}): ProgrammeInputs {
  return { skeins: [{ tag: 'S1', massG: 100 }], values: {}, materials: {}, roomC: null, boilC: null, ...more }
}

export function programmeFrom(text: string, more: Partial<ProgrammeInputs> = {}): Programme {
  const made = programmeOf(protocolFrom(text), inputs(more))
  if (made.ok) return made.programme
  throw new Error(made.problems.map((p) => `${p.field}: ${p.code} ${p.what}`).join('\n'))
}

/** All paths in the order of the document. */
export function pathsOf(programme: Programme): string[] {
  return stepsOf(programme).map((step) => step.path)
}

export function stepOf(programme: Programme, path: string): Step {
  const found = stepsOf(programme).find((step) => step.path === path)
  if (!found) throw new Error(`no step ${path}; there are ${pathsOf(programme).join(', ')}`)
  return found
}

export function everyNode(nodes: Node[]): Node[] {
  return nodes.flatMap((node) => [node, ...insideOf(node)])
}

function insideOf(node: Node): Node[] {
  switch (node.node) {
    case 'step':
      return []
    case 'rounds': {
      const inside = node.rounds.flatMap((r) => [...(r.ask ? [r.ask] : []), ...everyNode(r.steps)])
      return [...inside, ...everyNode(node.otherwise?.steps ?? [])]
    }
    case 'choice':
      return [node.ask, ...node.answers.flatMap((answer) => everyNode(answer.steps))]
    case 'alongside':
      return node.branches.flatMap((branch) => everyNode(branch.steps))
  }
}
