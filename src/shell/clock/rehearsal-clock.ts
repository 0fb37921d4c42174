import type { Ticks } from './ticks.ts'
import type { AppClock } from './wall-clock.ts'

export type RehearsalClock = AppClock & {
  /** From now on so many times as fast, for as long as the page stands. */
  runAt(speed: number): void
}

/** A clock that runs `speed` times as fast, for rehearsals only. `anchorMs`: the wall time at which both agreed; kept
 * over a reload, so that the rehearsal goes on where it would be by then. */
export function rehearsalClock(ticks: Ticks, bootId: string, speed: number, anchorMs: number): RehearsalClock {
  // Both clocks run off one reading of one source: at a thousandfold speed the millisecond between two readings would
  // look like a clock that was set. The monotonic clock tells the moment of the last look at the wall clock.
  const startMs = anchorMs + (Date.now() - anchorMs) * speed
  let lookedMs = performance.now()
  let since = { realMs: lookedMs, passedMs: 0, speed }
  let asked: number | null = null
  const passedMs = (): number => since.passedMs + (lookedMs - since.realMs) * since.speed
  const nowMs = (): number => {
    lookedMs = performance.now()
    return Math.round(startMs + passedMs())
  }
  const untilMs = (atMs: number): number => (atMs - nowMs()) / since.speed
  const tickAt = (atMs: number): void => {
    asked = atMs
    ticks.tickAt(Date.now() + untilMs(atMs))
  }
  return {
    bootId,
    nowMs,
    monoMs: passedMs,
    tzOffsetMin: (atMs) => -new Date(atMs).getTimezoneOffset(),
    onTick: ticks.onTick,
    tickAt,
    untilMs,
    runAt(next) {
      lookedMs = performance.now()
      since = { realMs: lookedMs, passedMs: passedMs(), speed: next }
      if (asked !== null) tickAt(asked)
    }
  }
}
