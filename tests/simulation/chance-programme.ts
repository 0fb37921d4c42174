// Programmes by chance: every construct of the protocol language, nested, within a bound.
import type { Gap, Programme, Rounds } from '../../src/core/protocol/model.ts'
import { alongside, choice, MIN, type Plan, programme, repeat, until } from '../core/pot/programmes.ts'
import type { Chance } from './chance.ts'
import { StepWriter } from './chance-steps.ts'
import type { Counts } from './counts.ts'

/** Unrolled steps of one programme stay about under this, so that a day stays short. */
const STEPS_MOST = 26
const DEPTH_MOST = 3

type Written = { plans: Plan[]; ids: string[] }

export function programmeByChance(chance: Chance, counts: Counts): Programme {
  const author = new Author(new StepWriter(chance, counts))
  const { plans, ids } = author.sequence(chance.whole(2, 7), 0, 1, [])
  const late = chance.pick(['shift', 'absorb', 'off-protocol'] as const)
  return programme(plans, gapsByChance(chance, counts, ids), { late, title: 'By chance' })
}

function gapsByChance(chance: Chance, counts: Counts, ids: string[]): Gap[] {
  const gaps: Gap[] = []
  for (let i = 0; i < ids.length - 1 && gaps.length < 2; i++) {
    if (!chance.of(0.2)) continue
    const atLeastMs = chance.of(0.5) ? chance.whole(1, 10) * MIN : null
    const atMostMs = atLeastMs === null || chance.of(0.5) ? chance.whole(12, 60) * MIN : null
    counts.add('construct', atLeastMs === null ? 'gap at most' : atMostMs === null ? 'gap at least' : 'gap both ways')
    const late = chance.pick(['shift', 'absorb', 'off-protocol'] as const)
    gaps.push({
      from: ids[i] as string,
      to: ids[chance.whole(i + 1, ids.length - 1)] as string,
      atLeastMs,
      atMostMs,
      late
    })
  }
  return gaps
}

class Author {
  readonly #steps: StepWriter
  readonly #chance: Chance
  #left = STEPS_MOST

  constructor(steps: StepWriter) {
    this.#steps = steps
    this.#chance = steps.chance
  }

  /** `times`: how often this sequence is unrolled. `moments`: what is certain to come before or alongside it. */
  sequence(length: number, depth: number, times: number, moments: readonly string[]): Written {
    const plans: Plan[] = []
    const ids: string[] = []
    for (let i = 0; i < length; i++) {
      if (this.#left < times && plans.length > 0) break
      const { plan, id } = this.#node(depth, times, [...moments, ...ids])
      plans.push(plan)
      ids.push(id)
    }
    return { plans, ids }
  }

  #node(depth: number, times: number, moments: readonly string[]): { plan: Plan; id: string } {
    const nested = depth < DEPTH_MOST && this.#left > 4 * times
    const kind = nested
      ? this.#chance.weighed({ step: 62, repeat: 7, each: 6, until: 10, choice: 7, alongside: 8 })
      : 'step'
    if (kind !== 'step') this.#steps.had(kind)
    if (kind !== 'step' && depth > 0) this.#steps.had(`nested ${kind}`)
    switch (kind) {
      case 'step':
        this.#left -= times
        return this.#steps.step(moments)
      case 'repeat':
      case 'each':
        return this.#repeat(kind, depth, times, moments)
      case 'until':
        return this.#until(depth, times, moments)
      case 'choice':
        return this.#choice(depth, times, moments)
      case 'alongside':
        return this.#alongside(depth, times, moments)
    }
  }

  #inner(depth: number, times: number, moments: readonly string[], emptyShare: number): Plan[] {
    if (this.#chance.of(emptyShare)) return []
    return this.sequence(this.#chance.whole(1, 3), depth + 1, times, moments).plans
  }

  #repeat(
    kind: 'repeat' | 'each',
    depth: number,
    times: number,
    moments: readonly string[]
  ): { plan: Plan; id: string } {
    const id = this.#steps.id(kind)
    const rounds = this.#chance.whole(1, 3)
    const marks = this.#chance.of(0.2) ? [this.#steps.id('m')] : []
    const inner = this.#inner(depth, times * rounds, moments, 0.03)
    const plan = repeat(id, rounds, inner, marks)
    return { id, plan: (parent) => ({ ...(plan(parent) as Rounds), kind }) }
  }

  #until(depth: number, times: number, moments: readonly string[]): { plan: Plan; id: string } {
    const id = this.#steps.id('until')
    const atMost = this.#chance.whole(1, 3)
    const question = this.#steps.question(['grade', 'grade', 'temperature', 'ph', 'number', 'choice'])
    this.#left -= times * (atMost + 1)
    const inner = this.#inner(depth, times * atMost, moments, 0.05)
    const otherwise = this.#chance.of(0.6) ? this.#inner(depth, times, moments, 0) : []
    if (otherwise.length > 0) this.#steps.had('otherwise')
    this.#steps.had(`until ${question.kind}`)
    return { id, plan: until(id, question, atMost, inner, otherwise) }
  }

  #choice(depth: number, times: number, moments: readonly string[]): { plan: Plan; id: string } {
    const id = this.#steps.id('choice')
    this.#left -= times
    const answers: Record<string, Plan[]> = {}
    for (const answer of ['yes', 'no', 'neither'].slice(0, this.#chance.whole(2, 3))) {
      answers[answer] = this.#inner(depth, times, moments, 0.2)
    }
    return { id, plan: choice(id, answers) }
  }

  #alongside(depth: number, times: number, moments: readonly string[]): { plan: Plan; id: string } {
    const id = this.#steps.id('along')
    const branches: Record<string, Plan[]> = {}
    // A branch may wait for a moment of a branch written before it, never the other way: two that wait for each other
    // are refused by the reader.
    let known = moments
    for (const name of ['a', 'b', 'c'].slice(0, this.#chance.whole(2, 3))) {
      const empty = this.#chance.of(0.04)
      const branch = empty ? { plans: [], ids: [] } : this.sequence(this.#chance.whole(1, 3), depth + 1, times, known)
      branches[name] = branch.plans
      known = [...known, ...branch.ids]
    }
    const marks = this.#chance.of(0.2) ? [this.#steps.id('m')] : []
    return { id, plan: alongside(id, branches, marks) }
  }
}
