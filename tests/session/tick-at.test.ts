import { describe, expect, it } from 'vitest'
import { type HandClock, handClock } from '../../src/shell/clock/hand-clock.ts'
import { MIN, pass, send, shortDye, startCommand, T0, table } from './kitchen-table.ts'

/** A clock that beats once a minute, and once more when it is asked to. */
const slowClock = (): { clock: HandClock; askedAtMs: number[] } => {
  const askedAtMs: number[] = []
  const clock = { ...handClock(T0), tickAt: (atMs: number) => void askedAtMs.push(atMs) }
  return { clock, askedAtMs }
}

describe('a deadline does not wait for the next beat of the clock', () => {
  it('asks for a tick at the very moment when a pot next wants something', async () => {
    const { clock, askedAtMs } = slowClock()
    const at = table({ clock })
    await at.session.open()
    await send(at, startCommand('plum', 'Plum', shortDye))
    expect(at.session.pots()).toHaveLength(1)
    expect(askedAtMs.at(-1)).toBe(T0 + 9 * MIN)
    await pass(at, 9 * MIN)
    expect(askedAtMs.at(-1)).toBe(T0 + 10 * MIN)
    await pass(at, MIN)
    expect(at.alerts.map(({ alert }) => [alert.kind, alert.path])).toEqual([['call', 'acid1']])
  })
})
