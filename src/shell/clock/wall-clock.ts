import type { ClockPort } from '../../session/ports.ts'
import type { Ticks } from './ticks.ts'

/** `untilMs`: real time from now until that hour of this clock. */
export type AppClock = ClockPort & { untilMs(atMs: number): number }

/** The device's own clocks. */
export function wallClock(ticks: Ticks, bootId: string): AppClock {
  return {
    bootId,
    nowMs: () => Date.now(),
    monoMs: () => performance.now(),
    // The zone of that day, not of today: summer time is another offset.
    tzOffsetMin: (atMs) => -new Date(atMs).getTimezoneOffset(),
    onTick: ticks.onTick,
    tickAt: ticks.tickAt,
    untilMs: (atMs) => atMs - Date.now()
  }
}
