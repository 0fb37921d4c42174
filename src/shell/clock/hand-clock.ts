import type { ClockPort } from '../../session/ports.ts'

/** A clock moved by hand, for tests and the simulation. */
export type HandClock = ClockPort & {
  /** Time passes: both clocks go on, and those who listen are told once at the end. */
  advance(ms: number): void
  /** The device slept: the wall clock went on, monotonic time did not. */
  sleep(ms: number): void
  /** Somebody set the wall clock by so much. */
  set(byMs: number): void
  /** Time passes between two ticks: nobody is told. */
  creep(ms: number): void
  tick(): void
}

export function handClock(startMs: number, options: { bootId?: string; tzOffsetMin?: number } = {}): HandClock {
  let wallMs = startMs
  let monoMs = 0
  const listeners = new Set<() => void>()
  const tick = (): void => {
    for (const listener of [...listeners]) listener()
  }
  return {
    bootId: options.bootId ?? 'boot-1',
    nowMs: () => wallMs,
    monoMs: () => monoMs,
    tzOffsetMin: () => options.tzOffsetMin ?? 0,
    onTick(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    advance(ms) {
      wallMs += ms
      monoMs += ms
      tick()
    },
    sleep(ms) {
      wallMs += ms
      tick()
    },
    set(byMs) {
      wallMs += byMs
      tick()
    },
    creep(ms) {
      wallMs += ms
      monoMs += ms
    },
    tick
  }
}
