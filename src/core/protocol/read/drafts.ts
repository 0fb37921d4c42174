// Tries every step out once, with the defaults of the inputs and the first item of each loop.
import type { Draft } from '../draft.ts'
import { resolveCount, resolveItems } from '../loop-items.ts'
import { Reading } from '../reading.ts'
import { readQuestion } from '../schema/question-fields.ts'
import { type Scope, withItem } from '../scope.ts'
import { placeAt } from '../source/located.ts'
import { readStepIn, type StepRead } from '../step-read.ts'
import { isStep, type WrittenConstruct, type WrittenEach, type WrittenNode, type WrittenStep } from '../written.ts'
import { whereOf } from './problems.ts'
import type { Steps } from './steps.ts'

/** What a node turned out to be: the acts of a step, the rounds of a loop. */
export type Tried = { drafts: Map<WrittenStep, readonly Draft[]>; rounds: Map<WrittenConstruct, number> }

export function tryOut(nodes: WrittenNode[], scope: Scope, steps: Steps, tried: Tried): void {
  for (const node of nodes) {
    if (isStep(node)) tryStep(node, scope, steps, tried)
    else tryConstruct(node, scope, steps, tried)
  }
}

function tryStep(node: WrittenStep, scope: Scope, steps: Steps, tried: Tried): void {
  const read = readStepIn(node, scope, scope.startC)
  sayAll(read, node, steps)
  tried.drafts.set(node, read.drafts)
}

function tryConstruct(node: WrittenConstruct, scope: Scope, steps: Steps, tried: Tried): void {
  const r = new Reading(scope)
  switch (node.word) {
    case 'repeat':
      tried.rounds.set(node, resolveCount(node.fields.times, ['times'], r) ?? 1)
      tryOut(node.fields.steps, scope, steps, tried)
      break
    case 'for each':
      tryEach(node, scope, r, steps, tried)
      break
    case 'until': {
      const rounds = resolveCount(node.fields['at most'], ['at most'], r) ?? 1
      tried.rounds.set(node, rounds)
      const question = readQuestion(node.fields.ask, ['ask'], r)
      if (question?.kind === 'grade' && question.enough === null) {
        r.say(['ask'], 'missing-field', 'enough is missing: which grade ends the rounds?', 'add enough: trace')
      }
      if ((node.fields.likely ?? 0) > rounds) {
        r.say(['likely'], 'least-over-most', 'likely is more than at most.', `write at most ${rounds}`)
      }
      tryOut(node.fields.steps, scope, steps, tried)
      tryOut(node.fields.otherwise ?? [], scope, steps, tried)
      break
    }
    case 'choice':
      r.text(node.fields.ask, ['ask'])
      for (const answer of node.fields.answers) tryOut(answer.steps, scope, steps, tried)
      break
    case 'alongside':
      for (const branch of node.fields.branches) tryOut(branch.steps, scope, steps, tried)
      break
  }
  sayAll(r, node, steps)
}

function tryEach(node: WrittenEach, scope: Scope, r: Reading, steps: Steps, tried: Tried): void {
  const { item: name, items: written } = node.fields
  const items = resolveItems(written, [name], r) ?? ['1']
  tried.rounds.set(node, items.length)
  if (scope.loops.some((loop) => loop.name === name)) {
    r.say([name], 'duplicate-id', `A for each over ${name} stands inside another.`, 'use item for one of them')
  }
  // Amounts are given item by item, so every item is tried.
  for (const [i, item] of items.entries()) {
    const inner = withItem(scope, { name, item, index: i + 1, count: items.length, items })
    tryOut(node.fields.steps, inner, steps, tried)
    if (i >= 11 && !('list' in written)) break
  }
}

type WithProblems = Pick<Reading | StepRead, 'problems'>

function sayAll({ problems }: WithProblems, node: WrittenNode, steps: Steps): void {
  if (problems.length === 0) return
  const place = steps.places.get(node)
  if (!place) return
  for (const { at, code, what, instead } of problems) {
    const spot = at.length === 0 ? place.keyAt : placeAt(place.located, at, place.keyAt)
    steps.problems.say(spot, whereOf(place.where, at), code, `${node.word}: ${what}`, instead)
  }
}
