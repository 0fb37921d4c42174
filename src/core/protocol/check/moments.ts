// Does every moment that is waited for come, on every way through, and before the wait would stand for ever?
// The protocol is walked once with nobody's answers known: what comes in one answer only does not count, branches that
// run alongside take turns, and a wait that nothing can end any more is a problem.

import type { WaitDraft } from '../draft.ts'
import { marksOf } from '../names.ts'
import type { Tried } from '../read/drafts.ts'
import type { Steps } from '../read/steps.ts'
import { isStep, type WrittenNode, type WrittenStep } from '../written.ts'

/** The moments that have surely come: a layer for each answer, over those that came before it. */
class Come {
  readonly own = new Set<string>()
  readonly before: Come | null

  constructor(before: Come | null) {
    this.before = before
  }

  has(name: string): boolean {
    return this.own.has(name) || (this.before?.has(name) ?? false)
  }
}

/** A walk stops at a wait whose moment has not come, and goes on where it stopped. */
type Walk = Generator<{ step: WrittenStep; name: string }, void, void>

class Walker {
  readonly tried: Tried
  /** Waits told already; they let the walk pass. */
  readonly told = new Set<WrittenStep>()
  progress = 0

  constructor(tried: Tried) {
    this.tried = tried
  }

  *sequence(nodes: WrittenNode[], come: Come): Walk {
    for (const node of nodes) {
      // Most steps wait for no moment, and need no walk of their own.
      if (isStep(node)) {
        const names = namesWaitedFor(node, this.tried)
        if (names.length > 0) yield* this.step(node, names, come)
      } else yield* this.construct(node, come)
      for (const name of marksOf(node)) come.own.add(name)
      this.progress++
    }
  }

  *step(step: WrittenStep, names: readonly string[], come: Come): Walk {
    for (const name of names) {
      while (!come.has(name) && !this.told.has(step)) yield { step, name }
    }
  }

  *construct(node: Exclude<WrittenNode, WrittenStep>, come: Come): Walk {
    switch (node.word) {
      case 'repeat':
      case 'for each':
        yield* this.sequence(node.fields.steps, come)
        return
      case 'until':
        // The first answer may be good enough: then nothing inside ever comes.
        yield* this.sequence(node.fields.steps, new Come(come))
        yield* this.sequence(node.fields.otherwise ?? [], new Come(come))
        return
      case 'choice': {
        const layers = node.fields.answers.map(() => new Come(come))
        yield* this.together(node.fields.answers.map(({ steps }, i) => this.sequence(steps, layers[i] ?? come)))
        const [first, ...others] = layers
        for (const name of first?.own ?? []) if (others.every((layer) => layer.own.has(name))) come.own.add(name)
        return
      }
      case 'alongside':
        yield* this.together(node.fields.branches.map(({ steps }) => this.sequence(steps, come)))
        return
    }
  }

  /** Branches take turns; the whole stops where all that are left have stopped. */
  *together(walks: Walk[]): Walk {
    let open = walks
    while (open.length > 0) {
      const before = this.progress
      const stopped: { walk: Walk; at: { step: WrittenStep; name: string } }[] = []
      for (const walk of open) {
        const next = walk.next()
        if (!next.done) stopped.push({ walk, at: next.value })
        else this.progress++
      }
      open = stopped.map(({ walk }) => walk)
      const [first] = stopped
      if (first && this.progress === before) yield first.at
    }
  }
}

const none: readonly string[] = []

function namesWaitedFor(step: WrittenStep, tried: Tried): readonly string[] {
  return (tried.drafts.get(step) ?? []).flatMap(({ wait }) => (wait === null ? none : momentsOf(wait)))
}

function momentsOf({ from, until }: WaitDraft): readonly string[] {
  if (from === null && until.every(({ kind }) => kind !== 'moment')) return none
  const moments = until.flatMap((one) => (one.kind === 'moment' ? [one.name] : []))
  return from === null ? moments : [from, ...moments]
}

export function momentProblems(nodes: WrittenNode[], tried: Tried, steps: Steps): void {
  const walker = new Walker(tried)
  const walk = walker.sequence(nodes, new Come(null))
  let sure: Set<string> | null = null
  for (let next = walk.next(); !next.done; next = walk.next()) {
    const { step, name } = next.value
    if (walker.told.has(step)) continue
    walker.told.add(step)
    const place = steps.places.get(step)
    if (!place) continue
    sure ??= surelyMarked(nodes)
    if (sure.has(name)) {
      const instead = 'wait for a moment that comes before this step, or in a branch alongside'
      steps.problems.say(
        place.keyAt,
        place.where,
        'moment-comes-later',
        `"${name}" can't come before this wait ends.`,
        instead
      )
    } else {
      const instead = 'mark it on every way: marks: in each answer, or after the until'
      steps.problems.say(
        place.keyAt,
        place.where,
        'moment-may-not-come',
        `"${name}" does not come on every way.`,
        instead
      )
    }
  }
}

/** Names that come on every way through, whenever. */
function surelyMarked(nodes: WrittenNode[]): Set<string> {
  const names = new Set<string>()
  for (const node of nodes) {
    for (const name of marksOf(node)) names.add(name)
    if (isStep(node)) continue
    switch (node.word) {
      case 'repeat':
      case 'for each':
        for (const name of surelyMarked(node.fields.steps)) names.add(name)
        break
      case 'until':
        break
      case 'choice': {
        const [first, ...others] = node.fields.answers.map(({ steps }) => surelyMarked(steps))
        for (const name of first ?? []) if (others.every((other) => other.has(name))) names.add(name)
        break
      }
      case 'alongside':
        for (const { steps } of node.fields.branches) for (const name of surelyMarked(steps)) names.add(name)
        break
    }
  }
  return names
}
