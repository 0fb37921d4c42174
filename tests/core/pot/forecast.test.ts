import { describe, expect, it } from 'vitest'
import { forecast } from '../../../src/core/pot/forecast.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import { Bench, T0 } from './given.ts'
import { act, alongside, dose, gradeOf, MIN, programme, repeat, until, wait } from './programmes.ts'

const minutes = (bench: Bench) =>
  forecast(bench.state as LiveState, bench.nowMs).map((k) => ({
    path: k.path,
    at: (k.atMs - T0) / MIN,
    faint: k.faint
  }))

describe('the forecast', () => {
  it('stands each coming act at the end of the waits before it, hands included', () => {
    const pot = Bench.start(programme([wait('w', 10 * MIN), dose('A1', 30), wait('v', 5 * MIN), dose('A2', 30)]))
    expect(minutes(pot)).toEqual([
      { path: 'w', at: 10, faint: false },
      { path: 'A1', at: 10, faint: false },
      { path: 'A2', at: 15.5, faint: false }
    ])
  })

  it('unrolls a repeat, since its length is known', () => {
    const pot = Bench.start(
      programme([
        act('go'),
        repeat('dip', 3, [act('in', { hands: { leastMs: 0, likelyMs: 0, mostMs: 0 } }), wait('h', 2 * MIN)])
      ])
    )
    expect(minutes(pot).map((k) => k.path)).toEqual(['go', 'dip[1]/in', 'dip[2]/in', 'dip[3]/in'])
  })

  it('shows one question of an until, and what follows faint with its range', () => {
    const loop = until('clear', gradeOf('bath'), 3, [wait('h', 10 * MIN)])
    const pot = Bench.start(programme([wait('w', MIN), loop, act('off')]))
    const knots = forecast(pot.state as LiveState, pot.nowMs)
    const off = knots.find((k) => k.path === 'off')
    expect(knots.filter((k) => k.path.startsWith('clear'))).toHaveLength(1)
    expect(off).toMatchObject({ faint: true, leastMs: T0 + MIN, atMs: T0 + 11 * MIN, mostMs: T0 + 31 * MIN })
  })

  it('joins branches at the later one', () => {
    const both = alongside('both', { a: [wait('long', 30 * MIN)], b: [wait('short', 5 * MIN)] })
    const pot = Bench.start(programme([both, act('enter')]))
    expect(minutes(pot).find((k) => k.path === 'enter')?.at).toBe(30)
  })

  it('agrees with what then happens when every answer comes at its cue', () => {
    const plan = programme([
      wait('w', 3 * MIN),
      act('x', { hands: { leastMs: 0, likelyMs: 0, mostMs: 0 } }),
      wait('v', 7 * MIN),
      act('y')
    ])
    const pot = Bench.start(plan)
    const foretold = minutes(pot).find((k) => k.path === 'y')?.at
    pot.pass(3)
    pot.do({ type: 'MarkDone', path: 'x' })
    pot.pass(10)
    expect(pot.due('y')).toBe(foretold)
  })
})
