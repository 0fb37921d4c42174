// Small invented programmes for looking at the Stove: enough of a dip gradient, a level dyeing, and a long cool-down.
import type {
  Alongside,
  Amount,
  Choice,
  Node,
  Programme,
  Question,
  Rounds,
  SetOut,
  Span,
  Step,
  Wait
} from '../../../src/core/protocol/model.ts'

export const minute = 60_000
export const hour = 60 * minute
const span = (ms: number): Span => ({ leastMs: ms, likelyMs: ms, mostMs: ms })

export function step(id: string, word: Step['word'], given: Partial<Step>): Step {
  return {
    node: 'step',
    id,
    path: id,
    word,
    behaviour: 'act',
    call: id,
    doing: id,
    done: 'done',
    detail: null,
    knot: id,
    shape: 'dot',
    hands: span(0),
    clock: span(0),
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
    ...given
  }
}

export const wait = (forMs: number | null, given: Partial<Wait> = {}): Wait => ({
  forMs,
  leastMs: forMs ?? 0,
  graceMs: 0,
  from: null,
  until: [],
  ...given
})

export const hold = (id: string, forMs: number, given: Partial<Step> = {}): Step =>
  step(id, 'hold', {
    behaviour: 'wait',
    call: 'Hold',
    doing: 'Holding',
    knot: 'Hold',
    clock: span(forMs),
    wait: wait(forMs),
    setPoint: { lowC: 85, highC: 90, outside: 'note' },
    ...given
  })

const mL = (value: number, of: string): Amount => ({ value, unit: 'mL', of, asEntered: `${value} mL` })

export const acid = (id: string, no: number, of: number, given: Partial<Step> = {}): Step =>
  step(id, 'add', {
    behaviour: 'dose',
    call: `Acid ${no} in`,
    doing: `Acid ${no}`,
    done: 'acid is in',
    knot: `Acid ${no}`,
    shape: 'drop',
    hands: span(minute),
    detail: 'at the wall of the pot',
    dose: { amount: mL(30, 'acid'), cup: `acid ${no} of ${of}`, setOutId: `acid ${no}` },
    ...given
  })

export const heatOff = (): Step =>
  step('off', 'heat', {
    call: 'Heat off',
    doing: 'Heat off',
    done: 'heat is off',
    knot: 'Heat off',
    shape: 'bar',
    heat: 'off',
    hands: span(10_000)
  })

export const ramp = (toC: number, forMs: number): Step =>
  step('ramp', 'heat', {
    behaviour: 'ramp',
    call: `Read the bath: ${toC} °C`,
    doing: 'Heating',
    done: 'reached',
    knot: `${toC} °C`,
    shape: 'bar',
    clock: { leastMs: forMs / 2, likelyMs: forMs, mostMs: forMs * 2 },
    ramp: { lowC: toC, highC: toC + 3, cPerMin: ((toC - 23) * minute) / forMs, expectedFromC: 23 },
    heat: 'on'
  })

export const cool = (toC: number): Step =>
  step('cool', 'cool', {
    behaviour: 'wait',
    call: `Read the bath: ${toC} °C`,
    doing: 'Cooling',
    done: `${toC} °C reached`,
    knot: `${toC} °C`,
    shape: 'wave',
    clock: { leastMs: hour, likelyMs: 3 * hour, mostMs: 6 * hour },
    wait: wait(30 * minute, { until: [{ kind: 'temperature', lowC: null, highC: toC, going: 'down' }] }),
    bench: true
  })

const words = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']

export function bands(count: number, holdMs: number): Rounds {
  return {
    node: 'rounds',
    id: 'dip',
    path: 'dip',
    kind: 'each',
    label: 'bands',
    likelyRounds: count,
    otherwise: null,
    marks: [],
    rounds: Array.from({ length: count }, (_, i) => {
      const path = `dip[${i + 1}]`
      return {
        path,
        label: `band ${i + 1} of ${count}`,
        ask: null,
        steps: [
          step('lower', 'lower', {
            path: `${path}/lower`,
            call: `Lower band ${i + 1}`,
            doing: `Band ${i + 1}`,
            done: 'lowered',
            knot: `Band ${i + 1}`,
            shape: 'band',
            detail: `to the ${words[i + 1]} tie mark`,
            hands: span(30_000),
            yarn: 'in',
            depth: { fraction: (i + 1) / count, label: `${2 * (i + 1)} cm` }
          }),
          hold('hold', holdMs, { path: `${path}/hold` })
        ]
      }
    })
  }
}

export function untilClear(most: number): Rounds {
  const question: Question = { kind: 'grade', of: 'bath', enough: 'trace' }
  const ask = (path: string): Step =>
    step('ask', 'sample', {
      path: `${path}/ask`,
      behaviour: 'ask',
      call: 'Judge the bath',
      doing: 'Judge the bath',
      done: 'judged',
      knot: 'Bath grade',
      shape: 'ring',
      hands: span(minute),
      question,
      detail: 'a white spoon, after stirring'
    })
  return {
    node: 'rounds',
    id: 'clear',
    path: 'clear',
    kind: 'until',
    label: 'until clear',
    likelyRounds: 1,
    otherwise: null,
    marks: [],
    rounds: Array.from({ length: most + 1 }, (_, i) => {
      const path = `clear[${i + 1}]`
      const steps: Node[] =
        i < most
          ? [
              acid('top', i + 2, most + 1, { path: `${path}/top`, outOfBathMostMs: 3 * minute }),
              hold('stay', 10 * minute, { path: `${path}/stay` })
            ]
          : []
      return { path, label: `pass ${i + 1}, up to ${most}`, ask: ask(path), steps }
    })
  }
}

export function alongside(id: string, branches: Record<string, Node[]>): Alongside {
  return {
    node: 'alongside',
    id,
    path: id,
    label: id,
    marks: [],
    branches: Object.entries(branches).map(([name, steps]) => ({ id: name, label: name, path: `${id}/${name}`, steps }))
  }
}

export function choice(id: string, ask: string, answers: Record<string, Node[]>): Choice {
  const options = Object.keys(answers).map((label) => ({ id: label, label }))
  return {
    node: 'choice',
    id,
    path: id,
    label: ask,
    marks: [],
    ask: step('ask', 'check', {
      path: `${id}/ask`,
      behaviour: 'ask',
      call: ask,
      doing: ask,
      knot: ask,
      shape: 'ring',
      question: { kind: 'choice', ask, answers: options }
    }),
    answers: Object.entries(answers).map(([label, steps]) => ({ id: label, label, path: `${id}/${label}`, steps }))
  }
}

export function programme(title: string, steps: Node[]): Programme {
  const setOut: SetOut[] = [1, 2, 3, 4].map((no) => ({
    id: `acid ${no}`,
    label: `acid ${no} of 3`,
    amount: mL(30, 'acid'),
    sum: '2 % of 100 g in three, as 5 % vinegar',
    kind: 'acid',
    percent: 5,
    paths: []
  }))
  return {
    title,
    steps,
    gaps: [],
    setOut,
    estimate: { clock: span(2 * hour), hands: span(20 * minute) },
    late: 'shift',
    goodsMassG: 100,
    liquorML: 2000,
    liquorRatio: 20,
    roomC: 21,
    coolingPerMin: 0.01,
    inputs: [],
    cautions: []
  }
}
