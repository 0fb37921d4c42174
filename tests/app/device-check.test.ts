import { describe, expect, it } from 'vitest'
import { deviceChecks } from '../../src/app/device-check.ts'
import { memoryKept } from '../../src/shell/settings/kept.ts'

const MIN = 60_000

/** A device on a table: beats as the test says. */
function device(kept = memoryKept(), startMs = 0) {
  let nowMs = startMs
  let tick = (): void => {}
  const awake: boolean[] = []
  const checks = deviceChecks(
    kept,
    () => nowMs,
    (beat) => {
      tick = beat
    },
    (on) => awake.push(on)
  )
  const beats = (forMs: number, everyMs = 250): void => {
    for (let ms = everyMs; ms <= forMs; ms += everyMs) {
      nowMs += everyMs
      tick()
    }
  }
  const sleep = (forMs: number): void => {
    nowMs += forMs
    tick()
  }
  return { kept, checks, awake, beats, sleep, at: () => nowMs }
}

describe('the device check', () => {
  it('of a device that stays awake finds no silence, and ends by itself', () => {
    const { checks, awake, beats } = device()
    checks.begin(15)
    beats(15 * MIN)
    expect(checks.check.value).toMatchObject({ longestMs: 250, lateTimes: 0, lateMs: 0, ended: false })
    expect(checks.check.value?.endedAtMs).toBe(15 * MIN)
    expect(awake).toEqual([true, false])
  })

  it('tells how long it slept, each time and in all, and not beyond its end', () => {
    const { checks, beats, sleep } = device()
    checks.begin(15)
    beats(2 * MIN)
    sleep(3 * MIN)
    beats(MIN)
    sleep(60 * MIN)
    expect(checks.check.value).toMatchObject({ longestMs: 9 * MIN, lateTimes: 2, lateMs: 12 * MIN })
  })

  it('says of a page that was ended when it last counted', async () => {
    const first = device()
    first.checks.begin(60)
    first.beats(10 * MIN)
    const again = device(first.kept, first.at() + 20 * MIN)
    await again.checks.load()
    expect(again.checks.check.value).toMatchObject({ ended: true, lateTimes: 1 })
    const { longestMs = 0, endedAtMs } = again.checks.check.value ?? {}
    expect(Math.abs(longestMs - 20 * MIN)).toBeLessThanOrEqual(5_000)
    expect(endedAtMs).toBe(30 * MIN)
  })

  it('keeps its result for the next visit', async () => {
    const first = device()
    first.checks.begin(15)
    first.beats(MIN)
    first.checks.stop()
    const again = device(first.kept, 60 * MIN)
    await again.checks.load()
    expect(again.checks.check.value).toEqual(first.checks.check.value)
  })
})
