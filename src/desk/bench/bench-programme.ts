// A programme that asks for an act again and again, each after a wait of a known length: the bench's pots run on it.
import type { Programme, Step } from '../../core/protocol/model.ts'

const noTime = { leastMs: 0, likelyMs: 0, mostMs: 0 }

const plain: Omit<Step, 'id' | 'path' | 'word' | 'behaviour'> = {
  node: 'step',
  call: 'Turn the skein',
  doing: 'Waiting',
  done: 'turned',
  detail: null,
  knot: 'Turn',
  shape: 'dot',
  hands: noTime,
  clock: noTime,
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
  lookEveryMs: null
}

function turn(no: number): Step {
  return { ...plain, call: `Turn the skein, ${no}`, id: `turn${no}`, path: `turn${no}`, word: 'turn', behaviour: 'act' }
}

function wait(no: number, forMs: number): Step {
  const clock = { leastMs: forMs, likelyMs: forMs, mostMs: forMs }
  const part = { forMs, leastMs: 0, graceMs: 0, from: null, until: [] }
  return { ...plain, id: `wait${no}`, path: `wait${no}`, word: 'wait', behaviour: 'wait', clock, wait: part }
}

/** `waitMs` 0: the acts follow one another at once. */
export function turns(count: number, waitMs: number): Programme {
  const steps = Array.from({ length: count }, (_, at) =>
    waitMs === 0 ? [turn(at + 1)] : [wait(at + 1, waitMs), turn(at + 1)]
  ).flat()
  return {
    title: 'Bench',
    steps,
    gaps: [],
    setOut: [],
    estimate: { clock: noTime, hands: noTime },
    late: 'shift',
    goodsMassG: 100,
    liquorML: null,
    liquorRatio: null,
    roomC: 20,
    coolingPerMin: 0.01,
    inputs: [],
    cautions: []
  }
}

/** A rise to a temperature, or a cooling down to it, and then turns each after a wait. */
export function toTemperature(going: 'up' | 'down', targetC: number, count: number, waitMs: number): Programme {
  const all = turns(count, waitMs)
  const until = [{ kind: 'temperature', lowC: null, highC: targetC, going: 'down' } as const]
  const wait = { forMs: null, leastMs: 0, graceMs: null, from: null, until }
  const ramp = { lowC: targetC, highC: null, cPerMin: 2, expectedFromC: 20 }
  const named = { ...plain, id: 'way', path: 'way', call: 'Read the temperature', shape: 'wave' } as const
  const way: Step =
    going === 'up'
      ? { ...named, word: 'heat', behaviour: 'ramp', ramp, heat: 'on' }
      : { ...named, word: 'cool', behaviour: 'wait', wait }
  return { ...all, steps: [way, ...all.steps] }
}
