// Do the shares of each material stay within the whole?
import type { DoseDraft } from '../draft.ts'
import type { Tried } from '../read/drafts.ts'
import type { Bearing } from '../read/header.ts'
import type { Steps } from '../read/steps.ts'
import { isStep, type WrittenNode, type WrittenStep } from '../written.ts'

/** Rounding slack of thirds and sevenths. */
const slack = 1e-6

type Taken = { share: number; rests: number; last: WrittenStep | null }

/** What an alongside without a branch takes: it is told of elsewhere, and gets here all the same. */
const nothing: Taken = { share: 0, rests: 0, last: null }

/** The most that can be taken of one material, and how often its rest is. */
function takenIn(nodes: WrittenNode[], id: string, tried: Tried): Taken {
  let taken = nothing
  for (const node of nodes) taken = both(taken, takenBy(node, id, tried))
  return taken
}

function both(a: Taken, b: Taken): Taken {
  // Of most steps, with each letter that is typed.
  if (b === nothing) return a
  return { share: a.share + b.share, rests: a.rests + b.rests, last: b.last ?? a.last }
}

function times(taken: Taken, rounds: number): Taken {
  return { ...taken, share: taken.share * rounds, rests: taken.rests * Math.max(2, rounds) }
}

function takenBy(node: WrittenNode, id: string, tried: Tried): Taken {
  if (isStep(node)) return takenByStep(node, id, tried)
  const rounds = tried.rounds.get(node) ?? 1
  switch (node.word) {
    case 'repeat':
    case 'for each':
      return times(takenIn(node.fields.steps, id, tried), rounds)
    case 'until':
      return both(
        times(takenIn(node.fields.steps, id, tried), rounds),
        times(takenIn(node.fields.otherwise ?? [], id, tried), 1)
      )
    case 'choice': {
      const all = node.fields.answers.map((answer) => times(takenIn(answer.steps, id, tried), 1))
      return all.reduce((most, one) => (one.share > most.share || one.rests > most.rests ? one : most), nothing)
    }
    case 'alongside':
      return node.fields.branches.map((branch) => takenIn(branch.steps, id, tried)).reduce(both, nothing)
  }
}

function takenByStep(step: WrittenStep, id: string, tried: Tried): Taken {
  let taken = nothing
  for (const { dose } of tried.drafts.get(step) ?? [])
    if (dose?.material.id === id) taken = both(taken, takenAs(dose, step))
  return taken
}

function takenAs({ amount }: DoseDraft, last: WrittenStep): Taken {
  switch (amount.kind) {
    case 'share':
      return { share: amount.share, rests: 0, last }
    case 'rest':
      return { share: 0, rests: 1, last }
    default:
      return nothing
  }
}

export function shareProblems(nodes: WrittenNode[], header: Bearing, tried: Tried, steps: Steps): void {
  for (const { id, label } of header.materials) {
    const { share, rests, last } = takenIn(nodes, id, tried)
    const place = last && steps.places.get(last)
    if (!place) continue
    if (share > 1 + slack || (rests > 0 && share > 1 - slack)) {
      const sum = `${Math.round(share * 1000) / 10} %`
      const instead = rests > 0 ? 'leave something for the rest' : 'make the shares come to the whole'
      steps.problems.say(
        place.keyAt,
        place.where,
        'shares-over-whole',
        `The shares of ${label} come to ${sum}.`,
        instead
      )
    }
    if (rests > 1) {
      const instead = 'take the rest once, in a step that is reached on every way'
      steps.problems.say(place.keyAt, place.where, 'rest-unclear', `What is the rest of ${label} here?`, instead)
    }
  }
}
