// Programmes built by hand for the engine's tests, so that they stand on the engine alone and not on the reader.
import type {
  Alongside,
  Choice,
  Gap,
  Node,
  Programme,
  Question,
  Round,
  Rounds,
  Step,
  Wait
} from '../../../src/core/protocol/model.ts'

export const MIN = 60_000
const NO_TIME = { leastMs: 0, likelyMs: 0, mostMs: 0 }

type Draft = Partial<Omit<Step, 'node' | 'path'>> & { id: string }
/** Nodes before their paths are known. */
export type Plan = (parent: string) => Node

function at(parent: string, id: string): string {
  return parent === '' ? id : `${parent}/${id}`
}

export function step(draft: Draft): (parent: string) => Step {
  return (parent) => ({
    node: 'step',
    word: 'do',
    behaviour: 'act',
    call: draft.id,
    doing: draft.id,
    done: 'done',
    detail: null,
    knot: draft.id,
    shape: 'dot',
    hands: { leastMs: 10_000, likelyMs: 30_000, mostMs: 60_000 },
    clock: NO_TIME,
    late: null,
    marks: [],
    wait: null,
    ramp: null,
    dose: null,
    question: null,
    setPoint: null,
    heat: null,
    yarn: null,
    outOfBathMostMs: null,
    depth: null,
    forbids: [],
    records: [],
    cautions: [],
    soft: false,
    bench: false,
    lookEveryMs: null,
    ...draft,
    path: at(parent, draft.id)
  })
}

export const act = (id: string, more: Partial<Draft> = {}) => step({ id, ...more })

export const wait = (
  id: string,
  forMs: number | null,
  more: Partial<Draft> & { until?: Wait['until']; leastMs?: number; graceMs?: number | null; from?: string } = {}
) => {
  const { until = [], leastMs = 0, graceMs = 0, from = null, ...draft } = more
  const likelyMs = draft.clock?.likelyMs ?? forMs ?? 10 * MIN
  return step({
    id,
    word: 'hold',
    behaviour: 'wait',
    hands: NO_TIME,
    clock: { leastMs: likelyMs, likelyMs, mostMs: likelyMs },
    wait: { forMs, leastMs, graceMs, from, until },
    ...draft
  })
}

export const dose = (id: string, value: number, of = 'vinegar', more: Partial<Draft> = {}) =>
  step({
    id,
    word: 'add',
    behaviour: 'dose',
    shape: 'drop',
    dose: { amount: { value, unit: 'mL', of, asEntered: `${value} mL of ${of}` }, cup: id, setOutId: of },
    ...more
  })

export const ramp = (id: string, fromC: number, lowC: number, cPerMin: number, more: Partial<Draft> = {}) => {
  const likelyMs = ((lowC - fromC) / cPerMin) * MIN
  return step({
    id,
    word: 'heat',
    behaviour: 'ramp',
    shape: 'wave',
    heat: 'on',
    ramp: { lowC, highC: lowC + 5, cPerMin, expectedFromC: fromC },
    clock: { leastMs: likelyMs, likelyMs, mostMs: likelyMs },
    ...more
  })
}

export const ask = (id: string, question: Question, more: Partial<Draft> = {}) =>
  step({ id, word: 'check', behaviour: 'ask', shape: 'ring', question, ...more })

export const gradeOf = (of: string, enough: 'clear' | 'trace' = 'trace'): Question => ({ kind: 'grade', of, enough })

const all = (plans: Plan[], parent: string): Node[] => plans.map((p) => p(parent))

export function repeat(id: string, times: number, plans: Plan[], marks: string[] = []): Plan {
  return (parent): Rounds => {
    const path = at(parent, id)
    const rounds: Round[] = Array.from({ length: times }, (_, i) => {
      const here = `${path}[${i + 1}]`
      return { path: here, label: `${i + 1}`, ask: null, steps: all(plans, here) }
    })
    return { node: 'rounds', id, path, kind: 'repeat', label: id, rounds, likelyRounds: times, otherwise: null, marks }
  }
}

export function until(id: string, question: Question, atMost: number, plans: Plan[], otherwise: Plan[] = []): Plan {
  return (parent): Rounds => {
    const path = at(parent, id)
    const rounds: Round[] = Array.from({ length: atMost + 1 }, (_, i) => {
      const here = `${path}[${i + 1}]`
      const steps = i < atMost ? all(plans, here) : []
      return { path: here, label: `${i + 1}`, ask: ask('ask', question)(here), steps }
    })
    const other = `${path}.otherwise`
    const tail = otherwise.length > 0 ? { path: other, steps: all(otherwise, other) } : null
    return { node: 'rounds', id, path, kind: 'until', label: id, rounds, likelyRounds: 1, otherwise: tail, marks: [] }
  }
}

export function choice(id: string, answers: Record<string, Plan[]>): Plan {
  return (parent): Choice => {
    const path = at(parent, id)
    const ids = Object.keys(answers)
    const question: Question = { kind: 'choice', ask: id, answers: ids.map((a) => ({ id: a, label: a })) }
    return {
      node: 'choice',
      id,
      path,
      label: id,
      ask: ask('ask', question)(path),
      answers: ids.map((a) => {
        const here = `${path}=${a}`
        return { id: a, label: a, path: here, steps: all(answers[a] as Plan[], here) }
      }),
      marks: []
    }
  }
}

export function alongside(id: string, branches: Record<string, Plan[]>, marks: string[] = []): Plan {
  return (parent): Alongside => {
    const path = at(parent, id)
    return {
      node: 'alongside',
      id,
      path,
      label: id,
      branches: Object.keys(branches).map((b) => {
        const here = `${path}.${b}`
        return { id: b, label: b, path: here, steps: all(branches[b] as Plan[], here) }
      }),
      marks
    }
  }
}

export function programme(plans: Plan[], gaps: Gap[] = [], more: Partial<Programme> = {}): Programme {
  return {
    title: 'Test',
    steps: all(plans, ''),
    gaps,
    setOut: [
      {
        id: 'vinegar',
        label: 'acid',
        amount: { value: 60, unit: 'mL', of: 'vinegar', asEntered: '60 mL' },
        sum: '',
        kind: 'acid',
        percent: 5,
        paths: []
      }
    ],
    estimate: { clock: NO_TIME, hands: NO_TIME },
    late: 'shift',
    goodsMassG: 100,
    liquorML: 3000,
    liquorRatio: 30,
    roomC: 20,
    coolingPerMin: 0.0112,
    inputs: [],
    cautions: [],
    ...more
  }
}
