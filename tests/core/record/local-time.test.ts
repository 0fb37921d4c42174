import { describe, expect, it } from 'vitest'
import { localClock, localDay, localIso } from '../../../src/core/record/local-time.ts'
import { recordOf } from '../../../src/core/record/record-of.ts'
import { Bench } from '../pot/given.ts'
import { MIN } from '../pot/programmes.ts'
import { moss } from './moss.ts'

describe('the dyer’s own clock', () => {
  it.each([
    [0, 0, '1970-01-01T00:00:00+00:00'],
    [Date.UTC(2031, 5, 14, 8, 32, 7), 120, '2031-06-14T10:32:07+02:00'],
    [Date.UTC(2031, 5, 14, 2, 0, 0), -240, '2031-06-13T22:00:00-04:00'],
    [Date.UTC(2031, 5, 14, 20, 0, 0), 345, '2031-06-15T01:45:00+05:45']
  ])('%d ms at %d min east of UTC', (atMs, offset, iso) => {
    expect(localIso(atMs, offset)).toBe(iso)
    expect(localDay(atMs, offset)).toBe(iso.slice(0, 10))
    expect(localClock(atMs, offset)).toBe(iso.slice(11, 16))
  })
})

// The clocks go back in the middle of the hold: Europe by an hour, North America by an hour, Lord Howe Island by half
// an hour. Offsets and dates after the tz database, from memory.
describe.each([
  ['central Europe', Date.UTC(2031, 9, 26, 1, 0), 120, 60],
  ['eastern North America', Date.UTC(2031, 10, 2, 6, 0), -240, -300],
  ['Lord Howe Island', Date.UTC(2031, 3, 5, 15, 0), 660, 630]
])('summer time ends in %s', (_, changeMs, before, after) => {
  const bench = Bench.start(moss())
  bench.do({ type: 'MarkDone', path: 'A1' })
  bench.pass(30)
  bench.do({ type: 'ReadTemperature', tempC: 81 })
  bench.do({ type: 'MarkDone', path: 'enter' })
  bench.pass(15)
  bench.do({ type: 'MarkDone', path: 'A2' })
  // The change falls between "all in" (30 min) and acid 2 (45 min).
  const startMs = changeMs - 35 * MIN
  const firstMs = bench.entries[0]?.atMs ?? 0
  const entries = bench.entries.map((entry) => {
    const atMs = entry.atMs - firstMs + startMs
    const tzOffsetMin = atMs >= changeMs ? after : before
    const event = JSON.parse(JSON.stringify(entry.event))
    return { ...entry, atMs, recordedAtMs: entry.recordedAtMs - firstMs + startMs, tzOffsetMin, event }
  })
  const record = recordOf(entries)

  it('moves no lateness and no drift', () => {
    const straight = recordOf(bench.entries)
    const figures = (r: typeof record): unknown => r?.steps.map((s) => [s.path, s.lateMs, s.driftMs, s.overrunMs])
    expect(figures(record)).toEqual(figures(straight))
    expect(record?.steps.find((s) => s.path === 'A2')?.lateMs).toBe(5 * MIN)
  })

  it('shows each time as the clock on the wall did then', () => {
    const at = (path: string): string => record?.steps.find((s) => s.path === path)?.said.at ?? ''
    expect(at('enter').slice(-6)).toBe(localIso(0, before).slice(-6))
    expect(at('A2').slice(-6)).toBe(localIso(0, after).slice(-6))
    expect(Date.parse(at('A2')) - Date.parse(at('enter'))).toBe(15 * MIN)
  })
})

it('a clock that was set in the middle moves the plan along with it', () => {
  const bench = Bench.start(moss())
  bench.do({ type: 'MarkDone', path: 'A1' })
  bench.pass(10)
  bench.nowMs += 60 * MIN
  bench.do({ type: 'ShiftClock', byMs: 60 * MIN })
  bench.pass(20)
  bench.do({ type: 'ReadTemperature', tempC: 81 })
  const steps = recordOf(bench.entries)?.steps ?? []
  const drifts = steps.filter((s) => s.endMs !== null).flatMap((s) => [s.driftMs, s.overrunMs])
  expect(drifts).toHaveLength(4)
  for (const drift of drifts) expect(Math.abs(drift ?? Number.NaN)).toBeLessThanOrEqual(MIN)
})
