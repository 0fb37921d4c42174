import type { Amount, Step } from '../../../src/core/protocol/model.ts'

export const minuteMs = 60_000

/** A step of a programme with nothing in it but what a test says. */
export function someStep(some: Partial<Step> = {}): Step {
  const ms = some.clock?.likelyMs ?? 0
  return {
    node: 'step',
    id: some.id ?? some.path ?? 's',
    path: some.path ?? some.id ?? 's',
    word: 'do',
    behaviour: 'act',
    call: 'Do it',
    doing: 'Doing',
    done: 'done',
    detail: null,
    knot: 'Do',
    shape: 'dot',
    hands: { leastMs: 0, likelyMs: 30_000, mostMs: minuteMs },
    clock: { leastMs: ms, likelyMs: ms, mostMs: ms },
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
    ...some
  }
}

export function someDose(of: string, value = 30, unit: Amount['unit'] = 'mL', setOutId = of): Step['dose'] {
  return { amount: { value, unit, of, asEntered: `${value} ${unit}` }, cup: null, setOutId }
}
