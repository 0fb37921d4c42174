// The way through the programme, read from the journal alone: nothing begins before what comes before it is over, no
// round is left out, and a loop ends only as it may.

import type { Answer, PotEvent } from '../../../src/core/pot/events.ts'
import { grades, type Node, type Programme, type Question, type Rounds } from '../../../src/core/protocol/model.ts'
import { nodeAt, sequenceOf, stepAt } from '../../../src/core/protocol/tree.ts'
import type { PotEntry } from '../../../src/session/ports.ts'

export function routeBroken(programme: Programme, held: readonly PotEntry[]): string[] {
  const route = new Route(programme)
  for (const { event } of held) route.heed(event)
  return route.broken
}

class Route {
  readonly broken: string[] = []
  readonly #programme: Programme
  readonly #open = new Map<string, boolean>()
  readonly #begun = new Set<string>()
  readonly #ended = new Set<string>()
  readonly #round = new Map<string, number>()
  readonly #roundsEnd = new Map<string, string>()
  readonly #taken = new Map<string, string>()
  readonly #answers = new Map<string, Answer>()

  constructor(programme: Programme) {
    this.#programme = programme
  }

  heed(event: PotEvent): void {
    switch (event.type) {
      case 'StepStarted':
        this.#begins(event.path, event.side)
        break
      case 'StepClosed':
        if (!this.#open.delete(event.path)) this.broken.push(`${event.path} was closed while it was not open`)
        this.#ended.add(event.path)
        break
      case 'Answered':
        this.#answers.set(event.path, event.answer)
        break
      case 'RoundStarted':
        this.#roundBegins(event.path, event.round)
        break
      case 'RoundsEnded':
        this.#roundsEnds(event.path, event.how)
        break
      case 'ChoiceTaken':
        this.#taken.set(event.path, event.answer)
        break
      case 'Ended':
        this.#ends(event.path)
        break
      case 'StepsDone':
        if (!this.#isOver(this.#programme.steps)) this.broken.push('all steps were called done while some are left')
        for (const [path, side] of this.#open) if (!side) this.broken.push(`steps done while ${path} is open`)
        break
      default:
        break
    }
  }

  #begins(path: string, side: boolean): void {
    if (this.#open.has(path)) this.broken.push(`${path} began while it was open`)
    this.#open.set(path, side)
    if (side) {
      if (!this.#ended.has(path)) this.broken.push(`${path} was done once more before it was done`)
      return
    }
    if (this.#begun.has(path)) this.broken.push(`${path} began twice`)
    this.#begun.add(path)
    const why = this.#mayNotBegin(path)
    if (why !== null) this.broken.push(`${path} began ${why}`)
  }

  #mayNotBegin(path: string): string | null {
    const { siblings, index, owner } = sequenceOf(this.#programme, path)
    const before = siblings[index - 1]
    if (index > 0) return before && this.#ended.has(before.path) ? null : `before ${before?.path} was over`
    if (owner === null) return null
    switch (owner.kind) {
      case 'round': {
        if (this.#round.get(owner.rounds.path) !== owner.round) return 'outside its round'
        const ask = owner.rounds.rounds[owner.round - 1]?.ask
        if (index < 0 || !ask) return null
        return this.#said(ask.path, ask.question) === false ? null : 'though its question was not answered so'
      }
      case 'otherwise':
        return this.#roundsEnd.get(owner.of.path) === 'limit' ? null : 'before the rounds were used up'
      case 'answer':
        if (index < 0) return this.#mayNotBegin(owner.of.path)
        return path.startsWith(`${owner.of.path}=${this.#taken.get(owner.of.path)}/`) ? null : 'in a branch not taken'
      case 'branch':
        return this.#mayNotBegin(owner.of.path)
    }
  }

  #roundBegins(path: string, round: number): void {
    const before = this.#round.get(path) ?? 0
    this.#round.set(path, round)
    if (round !== before + 1) this.broken.push(`${path} went from round ${before} to round ${round}`)
    const rounds = this.#rounds(path)
    const last = rounds?.rounds[round - 2]
    if (last && !this.#isOver(last.steps)) this.broken.push(`${path}: round ${round} began before the last was over`)
    if (round > 1) return
    const why = this.#mayNotBegin(path)
    if (why !== null) this.broken.push(`${path} began ${why}`)
  }

  #roundsEnds(path: string, how: string): void {
    this.#roundsEnd.set(path, how)
    const rounds = this.#rounds(path)
    const round = this.#round.get(path) ?? 0
    const ask = rounds?.rounds[round - 1]?.ask
    if (!rounds) return
    if ((how === 'all' || how === 'limit') && round !== rounds.rounds.length) {
      this.broken.push(`${path} ended (${how}) after round ${round} of ${rounds.rounds.length}`)
    }
    if (!ask || (how !== 'enough' && how !== 'limit')) return
    const good = this.#said(ask.path, ask.question)
    if ((how === 'enough') === (good === false)) this.broken.push(`${path} ended (${how}) against the answer`)
  }

  #ends(path: string): void {
    const node = nodeAt(this.#programme, path)
    if (this.#ended.has(path)) this.broken.push(`${path} ended twice`)
    this.#ended.add(path)
    if (node !== null && !this.#isWhole(node)) this.broken.push(`${path} ended before all in it was over`)
  }

  #isWhole(node: Node): boolean {
    switch (node.node) {
      case 'step':
        return this.#ended.has(node.path)
      case 'alongside':
        return node.branches.every(({ path, steps }) => this.#ended.has(path) && this.#isOver(steps))
      case 'choice':
        return this.#isOver(node.answers.find(({ id }) => id === this.#taken.get(node.path))?.steps ?? [])
      case 'rounds': {
        const how = this.#roundsEnd.get(node.path)
        return how === 'limit' && node.otherwise ? this.#isOver(node.otherwise.steps) : how !== undefined
      }
    }
  }

  #isOver(steps: readonly Node[]): boolean {
    const last = steps.at(-1)
    return last === undefined || this.#ended.has(last.path)
  }

  #rounds(path: string): Rounds | null {
    const node = nodeAt(this.#programme, path)
    return node?.node === 'rounds' ? node : null
  }

  #said(path: string, question: Question | null): boolean | null {
    const answer = this.#answers.get(path)
    if (stepAt(this.#programme, path) === null || !answer || !question) return null
    return isEnough(question, answer)
  }
}

/** Is it what the question hopes for? Written down once more here, so that the engine is not its own judge. */
export function isEnough(question: Question, answer: Answer): boolean | null {
  const inside = (value: number, low: number | null, high: number | null): boolean =>
    value >= (low ?? Number.NEGATIVE_INFINITY) && value <= (high ?? Number.POSITIVE_INFINITY)
  if (question.kind === 'grade' && answer.kind === 'grade') {
    return question.enough === null ? null : grades.indexOf(answer.grade) <= grades.indexOf(question.enough)
  }
  if (question.kind === 'temperature' && answer.kind === 'temperature') {
    return inside(answer.tempC, question.lowC, question.highC)
  }
  if (question.kind === 'number' && answer.kind === 'number') return inside(answer.value, question.low, question.high)
  if (question.kind === 'choice' && answer.kind === 'choice') return question.answers[0]?.id === answer.answer
  if (question.kind === 'ph' && answer.kind === 'ph') {
    const { reading } = answer
    if (reading.kind === 'unreadable') return null
    const values = reading.kind === 'value' ? [reading.ph] : [reading.low, reading.high]
    return values.every((ph) => inside(ph, question.low, question.high))
  }
  return null
}
