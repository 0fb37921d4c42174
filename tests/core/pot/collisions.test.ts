import { describe, expect, it } from 'vitest'
import { collisions, startOf } from '../../../src/core/pot/collisions.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import type { Gap } from '../../../src/core/protocol/model.ts'
import { Bench, T0 } from './given.ts'
import { act, MIN, type Plan, programme, wait } from './programmes.ts'

const busy = (handsMin: number) => ({ leastMs: 0, likelyMs: handsMin * MIN, mostMs: handsMin * MIN })

function pot(potId: string, steps: Plan[], gaps: Gap[] = []): { potId: string; state: LiveState } {
  return { potId, state: Bench.start(programme(steps, gaps)).state as LiveState }
}

/** Soaks, and then has something to do for two minutes. */
const work = (potId: string, atMin: number, late: 'shift' | 'absorb' | 'off-protocol', nextMin = 20) =>
  pot(potId, [
    wait('soak', atMin * MIN),
    act('lift', { hands: busy(2), late }),
    wait('hold', nextMin * MIN, { leastMs: 17 * MIN })
  ])

describe('two pots that will want hands at once', () => {
  it('are told with the one first that can wait less, and how long the other waits', () => {
    const [found, ...more] = collisions([work('plum', 10, 'shift'), work('moss', 11, 'absorb')], T0)
    expect(more).toEqual([])
    expect(found?.first).toMatchObject({ potId: 'moss', canWaitMs: 3 * MIN, handsMs: 2 * MIN })
    expect(found?.second).toMatchObject({ potId: 'plum', canWaitMs: null })
    expect(found?.waitMs).toBe(3 * MIN)
    expect(startOf(found as NonNullable<typeof found>)).toBe(T0 + 11 * MIN)
  })

  it('are the earlier one first where both can wait as long', () => {
    const [found] = collisions([work('plum', 11, 'shift'), work('moss', 10, 'shift')], T0)
    expect([found?.first.potId, found?.waitMs]).toEqual(['moss', 1 * MIN])
  })

  it('that miss one another are not told', () => {
    expect(collisions([work('plum', 10, 'shift'), work('moss', 12, 'shift')], T0)).toEqual([])
  })

  it('further off than half an hour, or of one pot alone, are not told', () => {
    expect(collisions([work('plum', 31, 'shift'), work('moss', 31, 'shift')], T0)).toEqual([])
    expect(collisions([work('plum', 10, 'shift')], T0)).toEqual([])
  })

  it('go by a gap that runs out', () => {
    const gap: Gap = { from: 'soak', to: 'acid', atLeastMs: null, atMostMs: 4 * MIN, late: 'shift' }
    const steps = [wait('soak', 6 * MIN), wait('rest', 3 * MIN), act('acid', { hands: busy(2), late: 'shift' })]
    const tight = pot('plum', steps, [gap])
    tight.state.moments.soak = T0 + 6 * MIN
    const [found] = collisions([work('moss', 9, 'shift'), tight], T0)
    expect(found?.first).toMatchObject({ potId: 'plum', canWaitMs: 1 * MIN })
  })

  it('a held pot and a soft turn want nobody at a time', () => {
    const held = work('plum', 10, 'shift')
    const soft = pot('moss', [wait('soak', 10 * MIN), act('turn', { hands: busy(2), soft: true })])
    expect(collisions([held, soft], T0)).toEqual([])
    const stopped = { ...held, state: { ...held.state, status: 'held', heldSinceMs: T0 } as LiveState }
    expect(collisions([stopped, work('moss', 10, 'shift')], T0)).toEqual([])
  })

  it('take acts one after the other in a pot for one piece of work', () => {
    const long = pot('plum', [
      wait('soak', 10 * MIN),
      act('lift', { hands: busy(1) }),
      act('acid', { hands: busy(1) }),
      act('enter', { hands: busy(1) })
    ])
    const [found, ...more] = collisions([long, work('moss', 12, 'shift')], T0)
    expect(more).toEqual([])
    expect(found?.first).toMatchObject({ potId: 'plum', path: 'lift', handsMs: 3 * MIN })
    expect(found?.waitMs).toBe(1 * MIN)
  })
})
