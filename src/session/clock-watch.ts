// Two clocks tell whether the wall clock was set: monotonic time stops in sleep on most devices, the wall clock jumps
// when it is set. Neither alone is enough, and only within one boot can they be compared.
import type { ClockPort } from './ports.ts'

/** Less than this is the drift and the rounding of two clocks. */
const JUMP_LEAST_MS = 2_000

export type ClockWatch = {
  /** How far the wall clock jumped against monotonic time since the last look, ms; 0 for no jump. Negative: it was set
   * back. Positive: it was set forward, or the device slept; nobody can tell which. */
  look(): number
}

export function clockWatch(clock: ClockPort): ClockWatch {
  let wallMs = clock.nowMs()
  let monoMs = clock.monoMs()
  return {
    look() {
      const wallNowMs = clock.nowMs()
      const monoNowMs = clock.monoMs()
      const byMs = wallNowMs - wallMs - (monoNowMs - monoMs)
      // Compared with the last look only: over days the two drift apart by seconds without anybody having set a clock.
      wallMs = wallNowMs
      monoMs = monoNowMs
      return Math.abs(byMs) > JUMP_LEAST_MS ? Math.round(byMs) : 0
    }
  }
}
