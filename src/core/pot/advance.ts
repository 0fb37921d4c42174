// The walk through the programme: starting what comes next, closing what is done, ending what is whole.
import type { Alongside, Choice, Node, Rounds, Step } from '../protocol/model.ts'
import { sequenceOf, stepAt } from '../protocol/tree.ts'
import type { CloseHow } from './events.ts'
import type { ActiveStep } from './state.ts'
import type { Telling } from './tell.ts'
import { answerSlackMs, conditionsMet, lateRuleOf, timingOf } from './timing.ts'

/** What goes along from a closed step to the next: lateness to absorb, and leave to be late (null: never late). */
export type Along = { carryMs: number; graceMs: number | null }
const NOTHING: Along = { carryMs: 0, graceMs: 0 }

export function startSequence(t: Telling, nodes: Node[], along: Along = NOTHING): boolean {
  const first = nodes[0]
  if (!first) return false
  startNode(t, first, along)
  return true
}

function startNode(t: Telling, node: Node, along: Along): void {
  switch (node.node) {
    case 'step':
      startStep(t, node, along, false)
      return
    case 'rounds':
      startRound(t, node, 1, along)
      return
    case 'choice':
      startStep(t, node.ask, along, false)
      return
    case 'alongside':
      for (const branch of node.branches) {
        if (!startSequence(t, branch.steps, along)) t.tell({ type: 'Ended', path: branch.path })
      }
      joinBranches(t, node, along)
      return
  }
}

export function startStep(t: Telling, step: Step, along: Along, side: boolean): void {
  const timing = timingOf(t.run, step, t.atMs, along.carryMs, along.graceMs)
  t.tell({ type: 'StepStarted', path: step.path, ...timing, side })
  if (step.heat === 'on' && !t.run.heatOn) t.tell({ type: 'HeatSet', on: true, level: null, path: step.path })
}

function startRound(t: Telling, rounds: Rounds, round: number, along: Along): void {
  const pass = rounds.rounds[round - 1]
  if (!pass) {
    t.tell({ type: 'RoundsEnded', path: rounds.path, how: 'all', rounds: round - 1 })
    endNode(t, rounds, along)
    return
  }
  t.tell({ type: 'RoundStarted', path: rounds.path, round })
  if (pass.ask) startStep(t, pass.ask, along, false)
  else if (!startSequence(t, pass.steps, along)) startRound(t, rounds, round + 1, along)
}

/** Closes an active step at the command's time and goes on. A repeat beside the route leads nowhere. */
export function closeStep(t: Telling, active: ActiveStep, how: CloseHow, reason: string | null): void {
  const step = stepAt(t.run.programme, active.path)
  if (!step) return
  const { carryMs } = settle(t, active, step, how, reason)
  for (const name of step.marks) t.tell({ type: 'MomentMarked', name })
  if (how !== 'skipped') takeEffect(t, step)
  followMoments(t)
  // A wait that may run over leaves what follows it that much time before it is late.
  if (!active.side) goOnAfter(t, step.path, { carryMs, graceMs: step.wait ? step.wait.graceMs : 0 })
}

/** Closes a step and says what its lateness means; what follows is for the caller to start. */
export function settle(t: Telling, active: ActiveStep, step: Step, how: CloseHow, reason: string | null): Along {
  const lateMs = how === 'skipped' || how === 'clock' ? 0 : lateness(active, step, t.atMs)
  const rule = lateRuleOf(t.run.programme, step)
  const carryMs = active.carryMs + (rule === 'absorb' ? lateMs : 0)
  t.tell({ type: 'StepClosed', path: step.path, how, lateMs, carryMs, reason })
  if (lateMs > 0 && rule === 'off-protocol') {
    t.tell({ type: 'WentOffProtocol', path: step.path, why: `${step.knot} came late` })
  }
  return { carryMs, graceMs: 0 }
}

function lateness(active: ActiveStep, step: Step, atMs: number): number {
  if (active.lateAfterMs === null || atMs <= active.lateAfterMs) return 0
  return atMs - active.lateAfterMs + answerSlackMs(step)
}

function takeEffect(t: Telling, step: Step): void {
  if (step.heat === 'off') t.tell({ type: 'HeatSet', on: false, level: null, path: step.path })
  if (!step.yarn && !step.depth) return
  const place = step.yarn === 'out' || step.yarn === 'lifted' ? 'out' : 'in'
  t.tell({
    type: 'YarnMoved',
    place,
    tags: t.run.pot.skeins.map((s) => s.tag),
    limitAtMs: place === 'out' && step.outOfBathMostMs !== null ? t.atMs + step.outOfBathMostMs : null,
    depth: step.depth?.fraction ?? null,
    path: step.path
  })
}

/** Waits that count from a moment, or end at one, learn when it came: none is over before it. */
function followMoments(t: Telling): void {
  for (const active of [...t.run.active]) {
    const step = stepAt(t.run.programme, active.path)
    const wait = step?.wait
    if (!step || !wait || active.remainingMs !== null) continue
    const timing = timingOf(t.run, step, active.startedAtMs, active.carryMs + active.absorbedMs, 0)
    const timeDueAtMs = active.timeDueAtMs ?? timing.timeDueAtMs
    const begins = timeDueAtMs !== active.timeDueAtMs
    // A reading may have put off a wait whose moment had not come: by then its due time says nothing.
    const met = conditionsMet(t.run, active, wait)
    const overdue = met && active.dueAtMs !== null && active.dueAtMs < t.atMs
    if (active.dueAtMs !== null && !overdue && !begins) continue
    if (timing.dueAtMs === null && !begins) continue
    const expected = met ? t.atMs : (active.dueAtMs ?? timing.dueAtMs)
    const dueAtMs = expected === null ? null : Math.max(expected, timeDueAtMs ?? 0, t.atMs)
    const { lateAfterMs } = timing
    const { path } = step
    t.tell({
      type: 'DueMoved',
      path,
      dueAtMs,
      timeDueAtMs,
      lateAfterMs,
      remainingMs: null,
      why: 'moment',
      reason: null
    })
  }
}

function goOnAfter(t: Telling, path: string, along: Along): void {
  const { siblings, index, owner } = sequenceOf(t.run.programme, path)
  const next = siblings[index + 1]
  if (next) {
    startNode(t, next, along)
    return
  }
  if (owner === null) {
    if (t.run.active.every((a) => a.side)) t.tell({ type: 'StepsDone' })
    return
  }
  switch (owner.kind) {
    case 'round':
      startRound(t, owner.rounds, (t.run.round[owner.rounds.path] ?? 1) + 1, along)
      return
    case 'otherwise':
      endNode(t, owner.of, along)
      return
    case 'answer':
      endNode(t, owner.of, along)
      return
    case 'branch': {
      const branch = owner.of.branches[owner.branch]
      if (branch) t.tell({ type: 'Ended', path: branch.path })
      joinBranches(t, owner.of, along)
      return
    }
  }
}

function joinBranches(t: Telling, node: Alongside, along: Along): void {
  const all = node.branches.every((b) => (t.run.ended[b.path] ?? -1) >= 0)
  if (all && t.run.ended[node.path] === undefined) endNode(t, node, along)
}

function endNode(t: Telling, node: Rounds | Choice | Alongside, along: Along): void {
  t.tell({ type: 'Ended', path: node.path })
  for (const name of node.marks) t.tell({ type: 'MomentMarked', name })
  followMoments(t)
  goOnAfter(t, node.path, along)
}

/** The answer to the question that opens a round of an until: enough ends the loop, else the round goes on. */
export function afterRoundAsk(t: Telling, rounds: Rounds, enough: boolean | null, along: Along): void {
  const round = t.run.round[rounds.path] ?? 1
  const pass = rounds.rounds[round - 1]
  if (enough !== false) {
    t.tell({ type: 'RoundsEnded', path: rounds.path, how: enough ? 'enough' : 'skipped', rounds: round - 1 })
    endNode(t, rounds, along)
    return
  }
  // Only the last pass has no more than its question; a pass with nothing in it is over at once.
  if (pass && round < rounds.rounds.length) {
    if (!startSequence(t, pass.steps, along)) startRound(t, rounds, round + 1, along)
    return
  }
  t.tell({ type: 'RoundsEnded', path: rounds.path, how: 'limit', rounds: round - 1 })
  if (!rounds.otherwise || !startSequence(t, rounds.otherwise.steps, along)) endNode(t, rounds, along)
}

export function takeBranch(t: Telling, choice: Choice, answer: string, along: Along): void {
  t.tell({ type: 'ChoiceTaken', path: choice.path, answer })
  const taken = choice.answers.find((a) => a.id === answer)
  if (!taken || !startSequence(t, taken.steps, along)) endNode(t, choice, along)
}

/** Whose question is this step: a loop's, a choice's, or its own (null). */
export function askOwner(t: Telling, step: Step): Rounds | Choice | null {
  const { index, owner } = sequenceOf(t.run.programme, step.path)
  if (index >= 0 || owner === null) return null
  return owner.kind === 'round' ? owner.rounds : owner.kind === 'answer' ? owner.of : null
}
