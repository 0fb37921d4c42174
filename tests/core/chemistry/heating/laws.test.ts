import { describe, expect, test } from 'vitest'
import { newtonC, newtonMin } from '../../../../src/core/chemistry/heating/laws.ts'

const heats = { fromC: 20, towardsC: 80, perMin: 1 / 25 }
const cools = { fromC: 90, towardsC: 20, perMin: 1 / 60 }

describe("Newton's law", () => {
  test('The time of a temperature is the time at which it has that temperature', () => {
    for (const targetC of [21, 50, 79]) expect(newtonC(heats, newtonMin(heats, targetC) ?? 0)).toBeCloseTo(targetC, 10)
    for (const targetC of [89, 50, 21]) expect(newtonC(cools, newtonMin(cools, targetC) ?? 0)).toBeCloseTo(targetC, 10)
  })

  test('Where it starts it is at once', () => {
    expect(newtonMin(heats, 20)).toBe(0)
  })

  test('What lies behind it, at its end or past it is never reached', () => {
    for (const targetC of [10, 80, 85]) expect(newtonMin(heats, targetC)).toBeNull()
    for (const targetC of [95, 20, 10]) expect(newtonMin(cools, targetC)).toBeNull()
    expect(newtonMin({ ...heats, towardsC: 20 }, 30)).toBeNull()
    expect(newtonMin({ ...heats, perMin: 0 }, 30)).toBeNull()
  })
})
