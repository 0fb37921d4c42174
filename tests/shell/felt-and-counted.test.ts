// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest'
import { badgeRung } from '../../src/shell/badge/badge-rung.ts'
import { shakes, vibrationRung } from '../../src/shell/vibration/vibration-rung.ts'
import { call } from './calling.ts'

describe('vibration', () => {
  it('shakes with the beat of the sound, longer when it is late, and stops when nothing calls', () => {
    const at = { sec: 0 }
    const felt: [number, number[]][] = []
    const rung = vibrationRung(
      () => at.sec * 1000,
      (pattern) => void felt.push([at.sec, pattern])
    )
    for (at.sec = 0; at.sec < 60; at.sec += 0.25) {
      if (at.sec < 45) rung.raise([call({ urgency: at.sec < 30 ? 'now' : 'late' })])
      if (at.sec === 45) rung.rest()
    }
    expect(felt).toEqual([
      [0, shakes.now],
      [20, shakes.now],
      [30, shakes.late],
      [38, shakes.late],
      [45, []]
    ])
    const lengthMs = (pattern: number[]): number => pattern.reduce((sum, ms) => sum + ms, 0)
    expect(lengthMs(shakes.soon)).toBeLessThan(lengthMs(shakes.now))
    expect(lengthMs(shakes.now)).toBeLessThan(lengthMs(shakes.late))
  })

  it('asks the browser only after the first touch, and is silently absent where there is none', () => {
    const vibrate = vi.fn(() => true)
    const activation = { hasBeenActive: false }
    const on = (given: object): void => {
      for (const name of ['vibrate', 'userActivation'])
        Object.defineProperty(navigator, name, { value: (given as Record<string, unknown>)[name], configurable: true })
      vibrationRung(() => 0).raise([call()])
    }
    on({ vibrate, userActivation: activation })
    expect(vibrate).not.toHaveBeenCalled()
    activation.hasBeenActive = true
    on({ vibrate, userActivation: activation })
    expect(vibrate).toHaveBeenCalledExactlyOnceWith(shakes.now)
    expect(() => on({})).not.toThrow()
  })
})

describe('the badge', () => {
  const badge = () => ({ setAppBadge: vi.fn(async () => {}), clearAppBadge: vi.fn(async () => {}) })

  it('counts the pots that call, once for each change, and goes when none does', () => {
    const shown = badge()
    const rung = badgeRung(() => 0, shown)
    rung.rest()
    rung.raise([call({ urgency: 'soon' }, 'moss')])
    for (let tick = 0; tick < 5; tick++)
      rung.raise([call(), call({ key: 'gap' }), call({}, 'moss'), call({ urgency: 'soon' }, 'rust')])
    rung.raise([call()])
    rung.rest()
    rung.rest()
    expect(shown.setAppBadge.mock.calls).toEqual([[2], [1]])
    expect(shown.clearAppBadge).toHaveBeenCalledTimes(2)
  })

  it('is said again after a while: another tab that goes to rest takes it away', () => {
    const shown = badge()
    const at = { nowMs: 0 }
    const rung = badgeRung(() => at.nowMs, shown)
    for (; at.nowMs < 25_000; at.nowMs += 250) rung.raise([call()])
    expect(shown.setAppBadge).toHaveBeenCalledTimes(3)
  })

  it('a browser without badges, or one that refuses, breaks nothing', async () => {
    expect(() => badgeRung(() => 0, {}).raise([call()])).not.toThrow()
    const refused = { setAppBadge: () => Promise.reject(new DOMException('no', 'NotAllowedError')) }
    badgeRung(() => 0, refused).raise([call()])
    await new Promise((resolve) => setTimeout(resolve, 0))
  })
})
