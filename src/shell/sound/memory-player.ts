import type { Pattern } from './patterns.ts'
import type { ComingSound, Player, SoundState } from './player.ts'

export type MemoryPlayer = Player & {
  played: { pattern: Pattern; level: number }[]
  scheduled: readonly ComingSound[][]
  beds: boolean[]
  /** Says that this one of the schedule has begun. */
  begin(key: string): void
  drift(ms: number): void
}

/** A player that only writes down what it would have sounded. */
export function memoryPlayer(gives: SoundState = 'ready'): MemoryPlayer {
  const played: { pattern: Pattern; level: number }[] = []
  const scheduled: ComingSound[][] = []
  const beds: boolean[] = []
  const begun = new Set<string>()
  let driftMs = 0
  let state: SoundState = 'locked'
  const listeners = new Set<() => void>()
  return {
    played,
    scheduled,
    beds,
    begin: (key) => begun.add(key),
    drift(ms) {
      driftMs = ms
    },
    state: () => state,
    async unlock() {
      state = gives
      for (const listener of listeners) listener()
      return state === 'ready'
    },
    play(pattern, level) {
      if (state !== 'ready') return false
      played.push({ pattern, level })
      return true
    },
    schedule(coming) {
      scheduled.push([...coming])
      driftMs = 0
    },
    began: (key) => begun.has(key),
    driftMs: () => driftMs,
    bed(on) {
      if (beds.at(-1) !== on) beds.push(on)
    },
    watch() {},
    silence() {},
    onSounding: () => () => {},
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  }
}
