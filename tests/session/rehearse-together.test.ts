import { describe, expect, it } from 'vitest'
import type { Programme } from '../../src/core/protocol/model.ts'
import { rehearse } from '../../src/session/rehearsal.ts'
import { forgetfulPerson, slowPerson } from '../../src/session/rehearsal-person.ts'
import { rehearseTogether, type TogetherPot } from '../../src/session/rehearse-together.ts'
import { identity, T0 } from '../core/pot/given.ts'
import { act, programme, wait } from '../core/pot/programmes.ts'

const MIN = 60_000
const text = { title: 'Test', text: '', version: 'v', from: 'file' as const }
const hands = (min: number) => ({ hands: { leastMs: 0, likelyMs: min * MIN, mostMs: min * MIN } })

function pot(potId: string, plan: Programme, afterMin = 0): TogetherPot {
  return { programme: plan, pot: { ...identity(), potId }, protocol: text, afterMs: afterMin * MIN }
}

const tenThenLift = (): Programme => programme([wait('soak', 10 * MIN), act('lift', hands(3)), wait('drip', MIN)])

describe('pots rehearsed together', () => {
  it('one that is called while the hands are on another waits for them, and what follows waits with it', () => {
    // Both are called at 10 min. The first keeps the hands for 3 min, so the second is done at 13 and ends at 14.
    const { pots, meetings } = rehearseTogether([pot('a', tenThenLift()), pot('b', tenThenLift())], T0)
    expect(pots.map(({ endedAfterMs }) => endedAfterMs)).toEqual([11 * MIN, 14 * MIN])
    expect(meetings).toHaveLength(1)
    expect(meetings[0]).toMatchObject({
      atMs: T0 + 10 * MIN,
      first: { potId: 'a', path: 'lift', calledAtMs: T0 + 10 * MIN, doneAtMs: T0 + 10 * MIN },
      second: { potId: 'b', path: 'lift', calledAtMs: T0 + 10 * MIN, doneAtMs: T0 + 13 * MIN },
      waitedMs: 3 * MIN
    })
  })

  it('started three minutes apart they never meet', () => {
    const { pots, meetings } = rehearseTogether([pot('a', tenThenLift()), pot('b', tenThenLift(), 3)], T0)
    expect(pots.map(({ endedAfterMs }) => endedAfterMs)).toEqual([11 * MIN, 11 * MIN])
    expect(meetings).toEqual([])
  })

  it('two minutes apart the second waits for one', () => {
    const { meetings } = rehearseTogether([pot('a', tenThenLift()), pot('b', tenThenLift(), 2)], T0)
    expect(meetings.map(({ atMs, waitedMs }) => [(atMs - T0) / MIN, waitedMs / MIN])).toEqual([[12, 1]])
  })

  it('a pot alone goes as it does by itself', () => {
    const alone = rehearse(tenThenLift(), identity(), text, T0)
    const together = rehearseTogether([pot('plum', tenThenLift())], T0)
    expect(together.pots[0]?.endedAfterMs).toBe(alone.endedAfterMs)
    expect(together.pots[0]?.told.map(({ atMs, event }) => [atMs, event.type])).toEqual(
      alone.told.map(({ atMs, event }) => [atMs, event.type])
    )
  })

  it('its own acts follow each other without waiting for the hands', () => {
    const plan = programme([act('one', hands(5)), act('two', hands(5))])
    expect(rehearseTogether([pot('a', plan)], T0).pots[0]?.endedAfterMs).toBe(0)
  })

  it('a pot that can’t be ended says where, and the other comes to its end', () => {
    const never = programme([wait('never', null, { until: [{ kind: 'moment', name: 'nothing' }] })])
    const { pots } = rehearseTogether([pot('a', never), pot('b', tenThenLift())], T0)
    expect(pots[0]).toMatchObject({ endedAfterMs: null, stuck: 'stuck at never' })
    expect(pots[1]).toMatchObject({ endedAfterMs: 11 * MIN, stuck: null })
  })
})

describe('a bath that never is so warm', () => {
  it('keeps its own pot only, and it says so', () => {
    const hot = { kind: 'temperature' as const, lowC: 90, highC: null, going: 'up' as const }
    const cold = programme([wait('warm', null, { until: [hot] })])
    const { pots } = rehearseTogether([pot('a', cold), pot('b', tenThenLift())], T0)
    expect(pots[0]?.stuck).toMatch(/^warm: waits for 90 °C, which the simulated bath never reaches/)
    expect(pots[1]?.endedAfterMs).toBe(11 * MIN)
  })
})

describe('the persons', () => {
  it('the slow one is two minutes late at each act', () => {
    const plan = programme([act('one'), wait('w', 5 * MIN), act('two')])
    expect(rehearse(plan, identity(), text, T0, slowPerson).endedAfterMs).toBe(9 * MIN)
  })

  it('the forgetful one forgets some acts of many, and the same ones each time', () => {
    const many = Array.from({ length: 40 }, (_, nth) => act(`act-${nth}`))
    const late = (): number =>
      (rehearse(programme(many), identity(), text, T0, forgetfulPerson).endedAfterMs ?? 0) / MIN
    expect(late() % 12).toBe(0)
    expect(late() / 12).toBeGreaterThan(4)
    expect(late() / 12).toBeLessThan(20)
    expect(late()).toBe(late())
  })
})
