// A context can die without a word: closed from outside, interrupted for good, or with a clock that stands though it is
// called running.
type Clock = { state: string; currentTime: number }

/** A clock that has not moved over so long is dead. */
const STILL_MS = 1_500
/** Looks further apart than this say nothing: the page was away in between. */
const APART_MOST_MS = 5_000

export type DeathWatch = { isDead(clock: Clock, monoMs: number): boolean }

export function deathWatch(): DeathWatch {
  let seen: { clock: Clock; time: number; movedAtMs: number; lookedAtMs: number } | null = null
  return {
    isDead(clock, monoMs) {
      if (clock.state === 'closed') return true
      const { currentTime } = clock
      const away = seen !== null && monoMs - seen.lookedAtMs > APART_MOST_MS
      if (seen === null || seen.clock !== clock || away || currentTime !== seen.time || clock.state !== 'running') {
        seen = { clock, time: currentTime, movedAtMs: monoMs, lookedAtMs: monoMs }
        return false
      }
      seen.lookedAtMs = monoMs
      return monoMs - seen.movedAtMs >= STILL_MS
    }
  }
}
