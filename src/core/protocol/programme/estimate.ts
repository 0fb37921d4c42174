// How long it takes, by the clock and by the hands: least, likely, most.
import type { Choice, Estimate, Node, Rounds, Span } from '../model.ts'
import { longest, noTime, sum } from '../span.ts'

/** Branches that run alongside share the clock and add up for the hands. An until counts none, its likely number, or
 * all of its rounds; a choice its shortest, its first, or its longest answer. */
export function estimateOf(nodes: Node[]): Estimate {
  return together(nodes.map(estimateOfNode), sum)
}

export function estimateOfNode(node: Node): Estimate {
  switch (node.node) {
    case 'step':
      return { clock: node.clock, hands: node.hands }
    case 'rounds':
      return node.kind === 'until'
        ? ofUntil(node)
        : together(
            node.rounds.map((round) => estimateOf(round.steps)),
            sum
          )
    case 'choice':
      return ofChoice(node)
    case 'alongside':
      return together(
        node.branches.map((branch) => estimateOf(branch.steps)),
        longest
      )
  }
}

/** Hands always add up; only the clock can be shared. */
function together(parts: Estimate[], clock: (spans: Span[]) => Span): Estimate {
  return { clock: clock(parts.map((part) => part.clock)), hands: sum(parts.map((part) => part.hands)) }
}

function ofUntil(node: Rounds): Estimate {
  const asks = node.rounds.map((round) => (round.ask ? estimateOfNode(round.ask) : { clock: noTime, hands: noTime }))
  const passes = node.rounds.map((round) => estimateOf(round.steps))
  const upTo = (rounds: number): Estimate => together([...passes.slice(0, rounds), ...asks.slice(0, rounds + 1)], sum)
  const none = upTo(0)
  const likely = upTo(node.likelyRounds)
  const all = together([upTo(node.rounds.length), estimateOf(node.otherwise?.steps ?? [])], sum)
  return mix(none, likely, all)
}

function ofChoice(node: Choice): Estimate {
  const ask = estimateOfNode(node.ask)
  const answers = node.answers.map((answer) => estimateOf(answer.steps))
  const first = answers[0] ?? { clock: noTime, hands: noTime }
  const least = (pick: (e: Estimate) => Span): number => Math.min(...answers.map((e) => pick(e).leastMs))
  const most = (pick: (e: Estimate) => Span): number => Math.max(...answers.map((e) => pick(e).mostMs))
  const of = (pick: (e: Estimate) => Span): Span => ({
    leastMs: least(pick),
    likelyMs: pick(first).likelyMs,
    mostMs: most(pick)
  })
  return together([ask, { clock: of((e) => e.clock), hands: of((e) => e.hands) }], sum)
}

function mix(least: Estimate, likely: Estimate, most: Estimate): Estimate {
  const of = (pick: (e: Estimate) => Span): Span => ({
    leastMs: pick(least).leastMs,
    likelyMs: pick(likely).likelyMs,
    mostMs: pick(most).mostMs
  })
  return { clock: of((e) => e.clock), hands: of((e) => e.hands) }
}
