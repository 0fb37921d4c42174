// Writes a protocol out: every round of every loop, every branch and answer, each with a path of its own.
import type { Draft } from '../draft.ts'
import { asking } from '../draft.ts'
import { resolveCount, resolveItems } from '../loop-items.ts'
import type { Choice, InputProblem, Node, Round, Rounds, Step } from '../model.ts'
import { type FieldProblem, Reading } from '../reading.ts'
import { readQuestion, wordsOf } from '../schema/question-fields.ts'
import { type Scope, withItem } from '../scope.ts'
import { stepsMost } from '../source/limits.ts'
import { nothingSaid, readStepIn } from '../step-read.ts'
import { capital } from '../words.ts'
import {
  isStep,
  type WrittenAlongside,
  type WrittenAsk,
  type WrittenChoice,
  type WrittenConstruct,
  type WrittenEach,
  type WrittenNode,
  type WrittenRepeat,
  type WrittenStep,
  type WrittenUntil
} from '../written.ts'
import { copyOf, type Expected } from './expect.ts'
import { assignIds } from './ids.ts'
import type { Portion } from './portions.ts'
import type { Setting } from './setting.ts'
import { stepOf } from './step-of.ts'
import { vesselGoodsG } from './vessel-goods.ts'

/** What holds around a node: names, the goods it is for, whether it is reached on every way. */
export type Around = { scope: Scope; vessel: string | null; massG: number; ifWanted: boolean }

export class Unroll {
  readonly setting: Setting
  readonly names: ReadonlySet<string>
  readonly problems: InputProblem[]
  readonly portions: Portion[] = []
  now: Expected
  #steps = 0

  constructor(setting: Setting, names: ReadonlySet<string>, now: Expected, problems: InputProblem[]) {
    this.setting = setting
    this.names = names
    this.now = now
    this.problems = problems
  }

  sequence(nodes: WrittenNode[], parent: string, around: Around): Node[] {
    // Loops in loops would go round millions of times with nothing left to write out.
    if (this.#steps > stepsMost) return []
    const ids = assignIds(nodes, this.names)
    return nodes.flatMap((node, i) => {
      const id = ids[i] ?? node.word
      const path = parent === '' ? id : `${parent}/${id}`
      return isStep(node) ? this.#step(node, id, path, around) : [this.#construct(node, id, path, around)]
    })
  }

  /** Over the limit nothing more is written out; the problem is told once. */
  #counted(): boolean {
    this.#steps++
    if (this.#steps === stepsMost + 1) {
      const what = `The loops make more than ${stepsMost} steps.`
      this.problems.push({ code: 'too-many-steps', field: 'steps', what, instead: 'Give fewer rounds or items.' })
    }
    return this.#steps <= stepsMost
  }

  #reading({ scope }: Around): Reading {
    return new Reading(scope, this.now.bathC)
  }

  #told(problems: readonly FieldProblem[], path: string): void {
    for (const { at, code, what, instead } of problems) {
      this.problems.push({ code, field: [path, ...at].join('.'), what, instead })
    }
  }

  #step(written: WrittenStep, id: string, path: string, around: Around): Step[] {
    const { drafts, said, problems } = readStepIn(written, around.scope, this.now.bathC)
    const steps = drafts.flatMap((draft): Step[] => {
      if (!this.#counted()) return []
      const place = { id: `${id}${draft.suffix}`, path: `${path}${draft.suffix}` }
      const ofAct = draft.suffix === '' ? said : nothingSaid(written.word)
      const step = stepOf(draft, ofAct, place, around.scope, this.now)
      this.#portion(draft, step, written, around)
      return [step]
    })
    this.#told(problems, path)
    return steps
  }

  #portion(draft: Draft, step: Step, written: WrittenStep, around: Around): void {
    if (!draft.dose) return
    const { vessel, massG, ifWanted } = around
    const ownCall = written.fields.call !== undefined
    const ownKnot = written.fields.knot !== undefined
    this.portions.push({ step, dose: draft.dose, vessel, massG, ifWanted, ownCall, ownKnot })
  }

  #ask(written: WrittenAsk, parent: string, around: Around): Step {
    const r = this.#reading(around)
    const question = readQuestion(written, [], r) ?? { kind: 'text', ask: 'Look' }
    this.#told(r.problems, `${parent}/ask`)
    return this.#question(asking(wordsOf(question), question, [10, 30, 90]), parent, around)
  }

  #question(draft: Draft, parent: string, { scope }: Around): Step {
    this.#counted()
    return stepOf(draft, nothingSaid('check'), { id: 'ask', path: `${parent}/ask` }, scope, this.now)
  }

  #construct(node: WrittenConstruct, id: string, path: string, around: Around): Node {
    const made = this.#whole(node, id, path, around)
    for (const name of [id, ...node.fields.marks]) this.now.moments.set(name, this.now.nowMs)
    return made
  }

  #whole(node: WrittenConstruct, id: string, path: string, around: Around): Node {
    switch (node.word) {
      case 'repeat':
        return this.#repeat(node, id, path, around)
      case 'for each':
        return this.#each(node, id, path, around)
      case 'until':
        return this.#until(node, id, path, around)
      case 'choice':
        return this.#choice(node, id, path, around)
      case 'alongside':
        return this.#alongside(node, id, path, around)
    }
  }

  #repeat(node: WrittenRepeat, id: string, path: string, around: Around): Rounds {
    const r = this.#reading(around)
    const times = resolveCount(node.fields.times, ['times'], r) ?? 1
    this.#told(r.problems, path)
    const rounds = Array.from({ length: times }, (_, i): Round => {
      const here = `${path}[${i + 1}]`
      const steps = this.sequence(node.fields.steps, here, around)
      return { path: here, label: `round ${i + 1} of ${times}`, ask: null, steps }
    })
    const label = node.fields.label ?? 'Repeat'
    return {
      node: 'rounds',
      id,
      path,
      kind: 'repeat',
      label,
      rounds,
      likelyRounds: times,
      otherwise: null,
      marks: node.fields.marks
    }
  }

  #each(node: WrittenEach, id: string, path: string, around: Around): Rounds {
    const r = this.#reading(around)
    const { item: name, items: written, label, marks } = node.fields
    const items = resolveItems(written, [name], r) ?? ['1']
    this.#told(r.problems, path)
    const own = name === 'jar' || name === 'skein'
    const goods = { skeins: this.setting.skeins, massG: around.massG }
    const rounds = items.map((item, i): Round => {
      const here = `${path}[${i + 1}]`
      const scope = withItem(around.scope, { name, item, index: i + 1, count: items.length, items })
      const inner: Around = own
        ? { ...around, scope, vessel: `${name} ${item}`, massG: vesselGoodsG(item, i, items.length, goods) }
        : { ...around, scope }
      const counted = /^\d+$/.test(item) ? `${name} ${item} of ${items.length}` : `${name} ${item}`
      return { path: here, label: counted, ask: null, steps: this.sequence(node.fields.steps, here, inner) }
    })
    return {
      node: 'rounds',
      id,
      path,
      kind: 'each',
      label: label ?? `For each ${name}`,
      rounds,
      likelyRounds: items.length,
      otherwise: null,
      marks
    }
  }

  #until(node: WrittenUntil, id: string, path: string, around: Around): Rounds {
    const { fields } = node
    const r = this.#reading(around)
    const most = resolveCount(fields['at most'], ['at most'], r) ?? 1
    this.#told(r.problems, path)
    const likelyRounds = Math.min(fields.likely ?? 1, most)
    const inner: Around = { ...around, ifWanted: true }
    let likelyEnd = this.now
    const rounds = Array.from({ length: most + 1 }, (_, i): Round => {
      const here = `${path}[${i + 1}]`
      const ask = this.#ask(fields.ask, here, around)
      if (i === likelyRounds) likelyEnd = copyOf(this.now)
      const steps = i < most ? this.sequence(fields.steps, here, inner) : []
      return { path: here, label: i < most ? `pass ${i + 1}, up to ${most}` : 'last look', ask, steps }
    })
    const other = `${path}.otherwise`
    const tail = fields.otherwise && { path: other, steps: this.sequence(fields.otherwise, other, inner) }
    // What follows is expected after the likely number of rounds.
    this.now = likelyEnd
    const label = fields.label ?? `Until ${fields.ask.enough ?? 'it is enough'}`
    return {
      node: 'rounds',
      id,
      path,
      kind: 'until',
      label,
      rounds,
      likelyRounds,
      otherwise: tail,
      marks: fields.marks
    }
  }

  #choice(node: WrittenChoice, id: string, path: string, around: Around): Choice {
    const { fields } = node
    const r = this.#reading(around)
    const question = r.text(fields.ask, ['ask'])
    this.#told(r.problems, path)
    const answers = fields.answers.map((answer) => ({ id: answer.id, label: capital(answer.label) }))
    const words = { call: question, knot: 'Answer', done: 'answered' }
    const ask = this.#question(asking(words, { kind: 'choice', ask: question, answers }, [10, 30, 90]), path, around)
    const before = this.now
    const ends: Expected[] = []
    const taken = fields.answers.map((answer, i) => {
      this.now = copyOf(before)
      const here = `${path}=${answer.id}`
      const steps = this.sequence(answer.steps, here, { ...around, ifWanted: true })
      ends.push(this.now)
      return { id: answer.id, label: answers[i]?.label ?? answer.label, path: here, steps }
    })
    this.now = ends[0] ?? before
    return { node: 'choice', id, path, label: fields.label ?? 'Choice', ask, answers: taken, marks: fields.marks }
  }

  #alongside(node: WrittenAlongside, id: string, path: string, around: Around): Node {
    const before = this.now
    const ends: Expected[] = []
    const branches = node.fields.branches.map((branch) => {
      const here = `${path}.${branch.id}`
      // Branches share their moments: one may wait for the other.
      this.now = { ...before, moments: before.moments }
      const steps = this.sequence(branch.steps, here, around)
      ends.push(this.now)
      return { id: branch.id, label: capital(branch.id), path: here, steps }
    })
    this.now = joined(before, ends)
    return { node: 'alongside', id, path, label: node.fields.label ?? 'Alongside', branches, marks: node.fields.marks }
  }
}

/** The slowest branch gives the time; the one that changed the bath most, its temperature. */
function joined(before: Expected, ends: Expected[]): Expected {
  const warmest = ends.reduce<Expected>(
    (a, b) =>
      Math.abs(b.bathC - before.bathC) > Math.abs(a.bathC - before.bathC) || b.heatOn !== before.heatOn ? b : a,
    before
  )
  const nowMs = Math.max(before.nowMs, ...ends.map((end) => end.nowMs))
  return { ...warmest, nowMs, moments: before.moments }
}
