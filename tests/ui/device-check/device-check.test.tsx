// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { cleanup, fireEvent, render, screen } from '@testing-library/preact'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { DeviceCheck } from '../../../src/ui/kitchen.ts'
import { forgetTaps } from '../../../src/ui/parts/guard.ts'
import { DeviceCheckScreen, verdictSay } from '../../../src/ui/screens/device-check/index.tsx'
import { aKitchen } from '../dye-book/a-kitchen.ts'

const MIN = 60_000
const check = (change: Partial<DeviceCheck> = {}): DeviceCheck => ({
  minutes: 15,
  beganAtMs: 0,
  endedAtMs: 15 * MIN,
  longestMs: 300,
  lateTimes: 0,
  lateMs: 0,
  ended: false,
  ...change
})

beforeEach(forgetTaps)
afterEach(cleanup)

describe('the verdict', () => {
  it.each([
    [{}, /never silent for more than 1.s: calls came in time/],
    [{ longestMs: 9 * MIN, lateTimes: 1, lateMs: 9 * MIN }, /slept for up to 9.min\. Do not lock/],
    [{ ended: true, longestMs: 9 * MIN }, /page was ended while it was locked\. Do not lock/],
    [{ endedAtMs: 3 * MIN }, /stopped before its time/]
  ] as [Partial<DeviceCheck>, RegExp][])('%j', (change, say) => {
    expect(verdictSay(check(change))).toMatch(say)
  })
})

describe('the screen', () => {
  it('begins for the time chosen, says what to do, and can be stopped', () => {
    const state = signal<DeviceCheck | null>(null)
    const begun: number[] = []
    const kitchen = Object.assign(aKitchen({ nowMs: 0 }), {
      deviceCheck: state,
      beginDeviceCheck(minutes: number) {
        begun.push(minutes)
        state.value = check({ minutes, endedAtMs: null })
      },
      stopDeviceCheck() {
        state.value = check({ endedAtMs: MIN })
      }
    })
    const { rerender } = render(<DeviceCheckScreen kitchen={kitchen} />)
    fireEvent.click(screen.getByText('60 min'))
    forgetTaps()
    fireEvent.click(screen.getByText('Begin'))
    expect(begun).toEqual([60])
    rerender(<DeviceCheckScreen kitchen={kitchen} />)
    expect(screen.getByRole('status').textContent).toMatch(/Lock the device now\. 60 min to go/)
    forgetTaps()
    fireEvent.click(screen.getByText('Stop the check'))
    rerender(<DeviceCheckScreen kitchen={kitchen} />)
    expect(screen.getByText('Longest silence')).toBeTruthy()
  })
})
