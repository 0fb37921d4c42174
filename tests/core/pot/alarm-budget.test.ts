import { describe, expect, it } from 'vitest'
import { alarmBudget } from '../../../src/core/pot/alarm-budget.ts'
import { Bench } from './given.ts'
import { act, MIN, programme, wait } from './programmes.ts'

const toldOf = (pot: Bench) => pot.entries.map(({ atMs, by, event }) => ({ atMs, by, event }))

describe('how many sounds a pot makes', () => {
  it('counts each call after a wait once, and not the acts that follow at once on an answer', () => {
    const pot = Bench.start(programme([wait('soak', 4 * MIN), act('lift'), act('acid'), act('enter')]))
    pot.pass(4)
    for (const path of ['lift', 'acid', 'enter']) {
      pot.do({ type: 'MarkDone', path })
      pot.pass(0)
    }
    // The call to lift; that of the end comes with the last answer.
    expect(alarmBudget(toldOf(pot))).toEqual({ sounds: 1, mostAnHour: 1 })
  })

  it('finds the fullest hour', () => {
    const turns = Array.from({ length: 40 }, (_, at) => [wait(`w${at}`, 2 * MIN), act(`t${at}`)]).flat()
    const pot = Bench.start(programme(turns))
    for (let at = 0; at < 40; at++) {
      pot.pass(2)
      pot.do({ type: 'MarkDone', path: `t${at}` })
    }
    expect(alarmBudget(toldOf(pot))).toEqual({ sounds: 40, mostAnHour: 30 })
  })
})
