import { describe, expect, it } from 'vitest'
import { fold } from '../../../src/core/pot/fold.ts'
import type { LiveState } from '../../../src/core/pot/state.ts'
import { expectedTempC, movedC, readingsAround } from '../../../src/ui/screens/stove/expected.ts'
import { noon } from './fixtures.ts'
import { fernCools, moss, ochre } from './pots.ts'

const state = (journal: ReturnType<typeof moss>): LiveState => fold(journal.entries) as LiveState
const minute = 60_000

describe('the reading a pad offers first', () => {
  it('is the middle of what is held', () => {
    expect(expectedTempC(state(moss()), null, noon)).toBe(88)
  })

  it('is the middle of the range that is asked for', () => {
    const asked = { kind: 'temperature' as const, lowC: 80, highC: 84 }
    expect(expectedTempC(state(moss()), asked, noon)).toBe(82)
    expect(expectedTempC(state(moss()), { ...asked, lowC: null, highC: 40 }, noon)).toBe(40)
  })

  it('rises with the ramp from the last reading, not past its end', () => {
    // 61 °C read 6 min ago, rising at 57 °C in 40 min.
    expect(expectedTempC(state(ochre()), null, noon)).toBe(Math.round(61 + (6 * 57) / 40))
    expect(expectedTempC(state(ochre()), null, noon + 60 * minute)).toBe(80)
  })

  it('falls by Newton’s law once the heat is off', () => {
    // 92 °C read 15 min before noon, k = 0.01 per minute, 21 °C room.
    const after60 = 21 + (92 - 21) * Math.exp(-0.01 * 75)
    expect(expectedTempC(state(fernCools()), null, noon + 60 * minute)).toBe(Math.round(after60))
  })

  it('stands among seven: every whole degree within 3 °C is one tap', () => {
    expect(readingsAround(86, 'C').map((r) => r.tempC)).toEqual([83, 84, 85, 86, 87, 88, 89])
  })

  it('covers 3 °C in Fahrenheit as well, by every second degree', () => {
    const readings = readingsAround(86, 'F')
    expect(readings.map((r) => r.say)).toEqual(['181', '183', '185', '187', '189', '191', '193'])
    expect((readings[6]?.tempC ?? 0) - (readings[0]?.tempC ?? 0)).toBeGreaterThanOrEqual(6)
  })
})

describe('the window of readings, moved', () => {
  it.each(['C', 'F'] as const)('reaches each whole degree of a bath in °%s', (unit) => {
    const reached = new Set<string>()
    for (const by of [-5, 5]) {
      let middleC = 60
      for (let presses = 0; presses < 40; presses++) {
        for (const { say } of readingsAround(middleC, unit)) reached.add(say)
        middleC = movedC(middleC, by, unit)
      }
    }
    const [least, most] = unit === 'C' ? [10, 100] : [50, 212]
    for (let degrees = least; degrees <= most; degrees++) expect(reached.has(String(degrees)), `${degrees}`).toBe(true)
  })
})
