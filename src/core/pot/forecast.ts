// Where the coming steps stand in time: the open steps at their due times, what follows at likely times after them.
// A forecast shows; what is due is decided by next-due.ts alone. Where the thermometer tells more than the protocol, its
// expectations (expected/) move what is shown.
import type { Alongside, Choice, Node, Rounds, Step } from '../protocol/model.ts'
import { nodeAt, sequenceOf, stepAt } from '../protocol/tree.ts'
import type { Expectations } from './expected/expectation.ts'
import type { Knot } from './knot.ts'
import type { ActiveStep, LiveState } from './state.ts'

/** A strand shows no more than this; what lies beyond is hours away. */
const KNOTS_MOST = 240
/** What may never come is not waited for longer. */
const FAR_MS = 24 * 3_600_000
const nothingExpected: Expectations = {}

/** A place in time: likely, earliest, latest. */
type When = { atMs: number; leastMs: number; mostMs: number }

class Walk {
  readonly knots: Knot[] = []
  readonly state: LiveState
  readonly nowMs: number
  readonly expected: Expectations
  /** Moments still to come, as forecast. */
  readonly moments = new Map<string, When>()
  /** Branch ends of alongside nodes, until all have come. */
  readonly joins = new Map<string, When[]>()

  constructor(state: LiveState, nowMs: number, expected: Expectations) {
    this.state = state
    this.nowMs = nowMs
    this.expected = expected
  }
}

/** Knots of a live pot in order of their likely time. Where an until is open, what follows is faint with its range, as it is
 * where a temperature may never be reached. */
export function forecast(state: LiveState, nowMs: number, expected: Expectations = nothingExpected): Knot[] {
  const w = new Walk(state, nowMs, expected)
  const route = state.active.filter((a) => !a.side)
  for (const side of state.active) if (side.side) knotOfActive(w, side, 0)
  // Inner branches first, so that a join knows all that leads to it.
  for (const [i, active] of [...route].sort((a, b) => depth(b.path) - depth(a.path)).entries()) {
    const end = knotOfActive(w, active, route.length > 1 ? i : 0)
    if (end) followAfter(w, active.path, end.when, route.length > 1 ? i : 0, end.faint)
  }
  return w.knots.slice(0, KNOTS_MOST).sort((a, b) => a.atMs - b.atMs)
}

function depth(path: string): number {
  return path.split('/').length
}

function knotOfActive(w: Walk, active: ActiveStep, lane: number): Reached | null {
  const step = stepAt(w.state.programme, active.path)
  if (!step) return null
  const { at, faint } = whenOfActive(w, active, step)
  push(w, step, at, lane, false, true)
  const from = notBefore(at, w.nowMs)
  if (step.wait && step.wait.until.length === 0) return { when: from, faint }
  return { when: later(from, step.hands.likelyMs, 0, step.hands.mostMs), faint }
}

function whenOfActive(w: Walk, active: ActiveStep, step: Step): { at: When; faint: boolean } {
  // While a count stands still, its due time is only that of the next reading.
  const { remainingMs, timeDueAtMs } = active
  const dueAtMs = remainingMs !== null ? w.nowMs + remainingMs : (active.dueAtMs ?? w.nowMs + step.clock.likelyMs)
  const due: When = { atMs: dueAtMs, leastMs: dueAtMs, mostMs: dueAtMs }
  const expected = w.expected[active.path]
  if (!expected) return { at: due, faint: false }
  const farMs = Math.max(dueAtMs, w.nowMs + FAR_MS)
  if (expected.kind === 'never') return { at: { ...due, mostMs: farMs }, faint: true }
  const { atMs, leastMs, mostMs } = expected
  const at = notBefore({ atMs, leastMs, mostMs: mostMs ?? Math.max(farMs, atMs) }, timeDueAtMs ?? leastMs)
  return { at, faint: mostMs === null }
}

function notBefore({ atMs, leastMs, mostMs }: When, ms: number): When {
  return { atMs: Math.max(atMs, ms), leastMs: Math.max(leastMs, ms), mostMs: Math.max(mostMs, ms) }
}

function later(when: When, likelyMs: number, leastMs: number, mostMs: number): When {
  return { atMs: when.atMs + likelyMs, leastMs: when.leastMs + leastMs, mostMs: when.mostMs + mostMs }
}

/** A time-only wait that the clock closes is plain yarn: it has no knot of its own while it lies ahead. */
function push(w: Walk, step: Step, when: When, lane: number, faint: boolean, active: boolean): void {
  if (!active && step.wait && step.wait.until.length === 0) return
  const owner = loopOf(w, step)
  w.knots.push({
    path: step.path,
    label: step.knot,
    shape: step.shape,
    ...when,
    clockMs: step.clock.likelyMs,
    handsMs: step.hands.likelyMs,
    faint,
    loop: owner,
    lane,
    bench: step.bench,
    active
  })
}

function loopOf(w: Walk, step: Step): Knot['loop'] {
  const match = /^(.*)\[(\d+)\]\/[^/]+$/.exec(step.path)
  if (!match) return null
  const node = nodeAt(w.state.programme, match[1] as string)
  if (node?.node !== 'rounds' || node.kind !== 'until') return null
  return { path: node.path, round: Number(match[2]), most: node.rounds.length - 1 }
}

/** What comes after the node at `path`, from `when` on. */
function followAfter(w: Walk, path: string, when: When, lane: number, faint: boolean): void {
  if (w.knots.length > KNOTS_MOST) return
  const { siblings, index, owner } = sequenceOf(w.state.programme, path)
  const node = nodeAt(w.state.programme, path)
  if (node) noteMoments(w, node, when)
  if (index < 0 && owner?.kind === 'round') {
    const rest = afterAsk(owner.rounds, owner.round - 1, when)
    followAfter(w, owner.rounds.path, rest, lane, true)
    return
  }
  if (index < 0 && owner?.kind === 'answer') {
    followAfter(w, owner.of.path, afterChoice(owner.of, when), lane, true)
    return
  }
  const end = walkSequence(w, siblings.slice(index + 1), when, lane, faint)
  if (owner === null) return
  switch (owner.kind) {
    case 'round': {
      const rest = restOfRounds(w, owner.rounds, owner.round, end.when, lane, end.faint)
      followAfter(w, owner.rounds.path, rest.when, lane, rest.faint)
      return
    }
    case 'answer':
    case 'otherwise':
      followAfter(w, owner.of.path, end.when, lane, end.faint)
      return
    case 'branch': {
      const joined = join(w, owner.of, end.when)
      if (joined) followAfter(w, owner.of.path, joined, 0, end.faint)
      return
    }
  }
}

/** The last branch to be forecast gives the time of the whole. */
function join(w: Walk, node: Alongside, end: When): When | null {
  const ends = [...(w.joins.get(node.path) ?? []), end]
  w.joins.set(node.path, ends)
  const open = node.branches.filter((b) => w.state.ended[b.path] === undefined).length
  if (ends.length < open) return null
  return {
    atMs: Math.max(...ends.map((e) => e.atMs)),
    leastMs: Math.max(...ends.map((e) => e.leastMs)),
    mostMs: Math.max(...ends.map((e) => e.mostMs))
  }
}

type Reached = { when: When; faint: boolean }

function walkSequence(w: Walk, nodes: Node[], from: When, lane: number, faint: boolean): Reached {
  let reached: Reached = { when: from, faint }
  for (const node of nodes) reached = walkNode(w, node, reached.when, lane, reached.faint)
  return reached
}

function walkNode(w: Walk, node: Node, when: When, lane: number, faint: boolean): Reached {
  if (w.knots.length > KNOTS_MOST) return { when, faint }
  const reached = walkInto(w, node, when, lane, faint)
  noteMoments(w, node, reached.when)
  return reached
}

function walkInto(w: Walk, node: Node, when: When, lane: number, faint: boolean): Reached {
  switch (node.node) {
    case 'step':
      return { when: walkStep(w, node, when, lane, faint), faint }
    case 'rounds':
      return restOfRounds(w, node, 0, when, lane, faint)
    case 'choice': {
      push(w, node.ask, when, lane, faint, false)
      return { when: afterChoice(node, when), faint: true }
    }
    case 'alongside': {
      const ends = node.branches.map((b, i) => walkSequence(w, b.steps, when, lane + i, faint))
      const latest = (pick: (e: When) => number): number => Math.max(...ends.map((e) => pick(e.when)))
      const joined = { atMs: latest((e) => e.atMs), leastMs: latest((e) => e.leastMs), mostMs: latest((e) => e.mostMs) }
      return { when: joined, faint: ends.some((e) => e.faint) }
    }
  }
}

function walkStep(w: Walk, step: Step, when: When, lane: number, faint: boolean): When {
  const { clock, hands, wait } = step
  if (wait || step.ramp) {
    const anchored = wait?.from ? anchor(w, wait.from, wait.forMs ?? 0, when) : null
    const end = anchored ?? later(when, clock.likelyMs, clock.leastMs, clock.mostMs)
    push(w, step, end, lane, faint, false)
    return end
  }
  push(w, step, when, lane, faint, false)
  return later(when, hands.likelyMs, hands.leastMs, hands.mostMs)
}

function anchor(w: Walk, name: string, forMs: number, when: When): When {
  const known = w.state.moments[name]
  const from = w.moments.get(name) ?? (known === undefined ? when : { atMs: known, leastMs: known, mostMs: known })
  return {
    atMs: Math.max(when.atMs, from.atMs + forMs),
    leastMs: Math.max(when.leastMs, from.leastMs + forMs),
    mostMs: Math.max(when.mostMs, from.mostMs + forMs)
  }
}

/** The passes of a loop after round `done`. An until shows the question of its next pass only: how many there will be,
 * nobody knows. */
function restOfRounds(w: Walk, node: Rounds, done: number, from: When, lane: number, faint: boolean): Reached {
  if (node.kind !== 'until') {
    let reached: Reached = { when: from, faint }
    for (const pass of node.rounds.slice(done)) {
      reached = walkSequence(w, pass.steps, reached.when, lane, reached.faint)
    }
    return reached
  }
  const next = node.rounds[done]
  if (!next?.ask) return { when: from, faint }
  push(w, next.ask, from, lane, faint, false)
  return { when: afterAsk(node, done, from), faint: faint || done < node.rounds.length - 1 }
}

/** After the question that follows `done` passes: none, the likely number, or all that are left. */
function afterAsk(node: Rounds, done: number, from: When): When {
  const pass = lengthOf(node.rounds[done]?.steps ?? [])
  const left = Math.max(0, node.rounds.length - 1 - done)
  const likely = Math.max(0, Math.min(left, node.likelyRounds - done))
  return later(from, likely * pass.likelyMs, 0, left * pass.mostMs)
}

function afterChoice(node: Choice, when: When): When {
  const spans = node.answers.map((a) => lengthOf(a.steps))
  const leastMs = Math.min(...spans.map((s) => s.leastMs))
  const mostMs = Math.max(...spans.map((s) => s.mostMs))
  return later(when, (spans[0] ?? NO_TIME).likelyMs, leastMs, mostMs)
}

const NO_TIME = { leastMs: 0, likelyMs: 0, mostMs: 0 }

/** The clock time of a sequence, loops at their likely length. */
function lengthOf(nodes: Node[]): typeof NO_TIME {
  let sum = NO_TIME
  for (const node of nodes) {
    const one = lengthOfNode(node)
    sum = {
      leastMs: sum.leastMs + one.leastMs,
      likelyMs: sum.likelyMs + one.likelyMs,
      mostMs: sum.mostMs + one.mostMs
    }
  }
  return sum
}

function lengthOfNode(node: Node): typeof NO_TIME {
  switch (node.node) {
    case 'step':
      return node.wait || node.ramp ? node.clock : node.hands
    case 'rounds': {
      const all = node.rounds.map((r) => lengthOf(r.steps))
      const sum = (pick: (s: typeof NO_TIME) => number, n: number): number =>
        all.slice(0, n).reduce((total, s) => total + pick(s), 0)
      const least = node.kind === 'until' ? 0 : all.length
      const likely = node.kind === 'until' ? node.likelyRounds : all.length
      return {
        leastMs: sum((s) => s.leastMs, least),
        likelyMs: sum((s) => s.likelyMs, likely),
        mostMs: sum((s) => s.mostMs, all.length)
      }
    }
    case 'choice':
      return lengthOf(node.answers[0]?.steps ?? [])
    case 'alongside': {
      const all = node.branches.map((b) => lengthOf(b.steps))
      const most = (pick: (s: typeof NO_TIME) => number): number => Math.max(0, ...all.map(pick))
      return { leastMs: most((s) => s.leastMs), likelyMs: most((s) => s.likelyMs), mostMs: most((s) => s.mostMs) }
    }
  }
}

function noteMoments(w: Walk, node: Node, when: When): void {
  w.moments.set(node.id, when)
  for (const name of node.marks) w.moments.set(name, when)
}
