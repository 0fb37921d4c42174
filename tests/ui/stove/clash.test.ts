import { expect, it } from 'vitest'
import { clashNow, clashSay } from '../../../src/ui/screens/stove/clash.ts'
import type { LivePot } from '../../../src/ui/screens/stove/live.ts'
import { Bench, T0 } from '../../core/pot/given.ts'
import { act, programme, wait } from '../../core/pot/programmes.ts'

const MIN = 60_000
const work = (potId: string, atMin: number, canWaitMs: number | null) => ({
  potId,
  path: 'lift',
  label: 'Lift',
  atMs: atMin * MIN,
  handsMs: 2 * MIN,
  canWaitMs
})
const name = (potId: string): string => ({ plum: 'Plum', moss: 'Moss' })[potId] ?? ''

it.each([
  [3 * MIN, 'In 12 min Plum and Moss want hands at once. Plum first, 2 min; Moss can wait 3 min.'],
  [null, 'In 12 min Plum and Moss want hands at once. Plum first, 2 min; Moss can wait.'],
  [
    1 * MIN,
    'In 12 min Plum and Moss want hands at once. Plum first, 2 min; Moss can wait 1 min and would be 1 min late.'
  ]
])('says which goes first and how long the other can wait: %s', (canWaitMs, say) => {
  const clash = { first: work('plum', 12, 0), second: work('moss', 12, canWaitMs), waitMs: 2 * MIN }
  expect(clashSay(clash, name, 0)).toBe(say)
})

function pot(potId: string, atMin: number): LivePot {
  const hands = { leastMs: 0, likelyMs: 2 * MIN, mostMs: 2 * MIN }
  const { state } = Bench.start(programme([wait('soak', atMin * MIN), act('lift', { hands, late: 'shift' })]))
  return { potId, state: state as LivePot['state'], alerts: [], readOnly: null }
}

it('says it from a quarter of an hour ahead to the last minute, until it was seen', () => {
  const pots = [pot('plum', 20), pot('moss', 20)]
  const at = (min: number, seen = new Set<string>()): boolean => clashNow(pots, T0 + min * MIN, seen) !== null
  expect([at(4), at(5), at(15), at(19), at(19.5)]).toEqual([false, true, true, true, false])
  const seen = new Set([clashNow(pots, T0 + 10 * MIN, new Set())?.key ?? ''])
  expect(at(10, seen)).toBe(false)
})
