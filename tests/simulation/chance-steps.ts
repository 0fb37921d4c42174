// Steps by chance: each of the five behaviours with all that a step can carry.
import type {
  Grade,
  LateRule,
  OutsideRule,
  Question,
  RecordItem,
  SetPoint,
  Until
} from '../../src/core/protocol/model.ts'
import { act, ask, dose, MIN, type Plan, ramp, step, wait } from '../core/pot/programmes.ts'
import type { Chance } from './chance.ts'
import type { Counts } from './counts.ts'

const lateRules: LateRule[] = ['shift', 'absorb', 'off-protocol']
const outsideRules: OutsideRule[] = ['note', 'again', 'stop-count', 'off-protocol']
const recordItems: RecordItem[] = ['temperature', 'ph', 'level', 'residue', 'photo', 'note', 'wet mass', 'dry mass']
const enoughGrades: Grade[] = ['clear', 'trace', 'tint']

export class StepWriter {
  readonly chance: Chance
  readonly counts: Counts
  #ids = 0

  constructor(chance: Chance, counts: Counts) {
    this.chance = chance
    this.counts = counts
  }

  id(letter: string): string {
    return `${letter}${++this.#ids}`
  }

  had(name: string): void {
    this.counts.add('construct', name)
  }

  minutes(least: number, most: number): number {
    return this.chance.whole(least * 4, most * 4) * (MIN / 4)
  }

  /** `moments`: names that are certain to have been marked or to be marked alongside by the time this step runs. */
  step(moments: readonly string[]): { plan: Plan; id: string } {
    const kind = this.chance.weighed({ act: 26, dose: 15, wait: 34, ramp: 9, ask: 11, lift: 5 })
    switch (kind) {
      case 'act':
        return this.#act()
      case 'dose':
        return this.#dose()
      case 'wait':
        return this.#wait(moments)
      case 'ramp':
        return this.#ramp()
      case 'ask':
        return this.#ask()
      case 'lift':
        return this.#lift()
    }
  }

  #rule(): { late?: LateRule } {
    if (!this.chance.of(0.5)) return {}
    const late = this.chance.pick(lateRules)
    this.had(`late ${late}`)
    return { late }
  }

  #marks(): { marks?: string[] } {
    if (!this.chance.of(0.12)) return {}
    this.had('mark')
    return { marks: [this.id('m')] }
  }

  #act(): { plan: Plan; id: string } {
    const { chance } = this
    const id = this.id('act')
    this.had('act')
    const more: Parameters<typeof act>[1] = { ...this.#rule(), ...this.#marks() }
    if (chance.of(0.15)) {
      more.soft = true
      this.had('soft step')
    }
    if (chance.of(0.2)) {
      more.records = [chance.pick(recordItems)]
      if (chance.of(0.2)) more.records = [...new Set([...more.records, chance.pick(recordItems)])]
      for (const item of more.records) this.had(`record ${item}`)
    }
    if (chance.of(0.12)) {
      more.heat = chance.pick(['on', 'off'])
      this.had(`heat ${more.heat}`)
    }
    if (chance.of(0.1)) {
      more.depth = { fraction: chance.whole(1, 5) / 5, label: 'tie mark' }
      this.had('depth')
    }
    return { plan: act(id, more), id }
  }

  #lift(): { plan: Plan; id: string } {
    const id = this.id('lift')
    this.had('out-of-bath limit')
    const yarn = this.chance.pick(['out', 'lifted'] as const)
    return { plan: step({ id, word: 'lift', yarn, outOfBathMostMs: this.minutes(1, 6), ...this.#rule() }), id }
  }

  #dose(): { plan: Plan; id: string } {
    const id = this.id('dose')
    this.had('dose')
    const yarn = this.chance.of(0.1) ? ('in' as const) : null
    const of = this.chance.of(0.7) ? 'vinegar' : 'stock Y'
    return { plan: dose(id, this.chance.whole(1, 60), of, { ...this.#rule(), ...this.#marks(), yarn }), id }
  }

  #ramp(): { plan: Plan; id: string } {
    const id = this.id('ramp')
    this.had('ramp')
    const fromC = this.chance.whole(15, 50)
    const lowC = fromC + this.chance.whole(5, 40)
    return { plan: ramp(id, fromC, lowC, this.chance.whole(1, 6) / 2, { ...this.#rule(), ...this.#look() }), id }
  }

  #look(): { lookEveryMs?: number } {
    if (!this.chance.of(0.15)) return {}
    this.had('look')
    return { lookEveryMs: this.minutes(3, 15) }
  }

  #ask(): { plan: Plan; id: string } {
    const id = this.id('ask')
    const question = this.question()
    this.had(`ask ${question.kind}`)
    return { plan: ask(id, question, { ...this.#rule(), ...this.#marks(), setPoint: this.#setPoint(0.5) }), id }
  }

  question(kinds: readonly Question['kind'][] = ['grade', 'temperature', 'ph', 'number', 'choice', 'text']): Question {
    const { chance } = this
    const kind = chance.pick(kinds)
    switch (kind) {
      case 'grade':
        return { kind, of: 'bath', enough: chance.of(0.9) ? chance.pick(enoughGrades) : null }
      case 'temperature':
        return { kind, lowC: chance.of(0.8) ? 40 : null, highC: chance.of(0.8) ? 60 : null }
      case 'ph':
        return { kind, low: chance.of(0.8) ? 4 : null, high: chance.of(0.8) ? 5.5 : null }
      case 'number':
        return { kind, ask: 'level', unit: 'cm', low: chance.of(0.8) ? 5 : null, high: chance.of(0.8) ? 9 : null }
      case 'choice':
        return { kind, ask: 'which', answers: ['yes', 'no', 'neither'].map((a) => ({ id: a, label: a })) }
      case 'text':
        return { kind, ask: 'what is seen' }
    }
  }

  #setPoint(share: number): SetPoint | null {
    if (!this.chance.of(share)) return null
    const outside = this.chance.pick(outsideRules)
    this.had(`outside ${outside}`)
    return { lowC: 40, highC: 60, outside }
  }

  #wait(moments: readonly string[]): { plan: Plan; id: string } {
    const { chance } = this
    const id = this.id('wait')
    const conditions = chance.weighed({ none: 55, one: 30, two: 12, three: 3 })
    const many = { none: 0, one: 1, two: 2, three: 3 }[conditions]
    const until = Array.from({ length: many }, () => this.#until(moments))
    const forMs = many === 0 || chance.of(0.5) ? this.minutes(1, chance.of(0.1) ? 90 : 25) : null
    const from = forMs !== null && moments.length > 0 && chance.of(0.25) ? chance.pick(moments) : undefined
    if (from !== undefined) this.had('wait from a moment')
    if (forMs !== null) this.had('wait on time')
    for (const u of until) this.had(`wait on ${u.kind}`)
    if (many > 1 || (many === 1 && forMs !== null)) this.had('combined wait')
    const leastMs = forMs === null ? 0 : chance.pick([0, forMs, Math.round(forMs / 2)])
    const graceMs = chance.pick([0, 0, 2 * MIN, null])
    const more = { ...this.#rule(), ...this.#marks(), ...this.#look(), setPoint: this.#setPoint(0.3) }
    const bench = chance.of(0.1)
    return { plan: wait(id, forMs, { until, leastMs, graceMs, from, bench, ...more }), id }
  }

  #until(moments: readonly string[]): Until {
    const { chance } = this
    const kind = chance.weighed({ temperature: 3, person: 3, moment: moments.length > 0 ? 2 : 0, judgement: 2 })
    switch (kind) {
      case 'temperature':
        return chance.of(0.5)
          ? { kind, lowC: null, highC: chance.whole(30, 50), going: 'down' }
          : { kind, lowC: chance.whole(50, 90), highC: null, going: 'up' }
      case 'person':
        return { kind, ask: 'is it so' }
      case 'moment':
        return { kind, name: chance.pick(moments) }
      case 'judgement':
        return { kind, question: this.question(['grade', 'ph', 'number', 'choice', 'text']) }
    }
  }
}
