import { expect, it } from 'vitest'
import { sealAll } from '../../src/session/seal-all.ts'
import { handClock } from '../../src/shell/clock/hand-clock.ts'
import { PERSON, T0 } from '../core/pot/given.ts'

it('an entry carries the offset of the time at which it happened, on whichever side of a change of the clocks it is written', () => {
  const changeMs = T0 + 86_400_000
  const clock = { ...handClock(T0), tzOffsetMin: (atMs: number) => (atMs < changeMs ? 120 : 60) }
  const writing = { clock, ids: { newId: () => 'x', writerId: 'w' }, recordedAtMs: changeMs + 1 }
  const offsets = [T0, changeMs + 1].map(
    (atMs) => sealAll('pot/a', [], [{ type: 'x' }], { commandId: 'c', atMs, by: PERSON }, writing)[0]?.tzOffsetMin
  )
  expect(offsets).toEqual([120, 60])
})
