import { type Bed, bedIn } from './bed.ts'
import { type LivingContext, livingContext, type SoundState } from './living-context.ts'
import { lengthMs, type Pattern } from './patterns.ts'
import { type Sounding, soundAt } from './sounding.ts'

export type { SoundState } from './living-context.ts'

/** A sound to come: `inMs` from now. */
export type ComingSound = { key: string; inMs: number; pattern: Pattern }

export type Player = {
  state(): SoundState
  /** Call inside a tap: browsers let sound begin only there. True: sound runs. */
  unlock(): Promise<boolean>
  /** `level` 0 to 1. False: it could not be sounded. */
  play(pattern: Pattern, level: number): boolean
  /** Sounds these at their time, without anybody looking at a clock then; what was ordered before is let go. */
  schedule(coming: readonly ComingSound[], level: number): void
  /** Has this one of the last `schedule` begun to sound? */
  began(key: string): boolean
  /** How far the clock of the sound went beside monotonic time since the last `schedule`, ms: it stands while a page is
   * frozen. */
  driftMs(): number
  /** The faint bed under everything: a page that sounds is not frozen when it is hidden. */
  bed(on: boolean): void
  /** Asked about once a second: finds a sound that died without a word, and builds it anew. */
  watch(): void
  silence(): void
  /** Told whenever something begins to sound, and for how long. */
  onSounding(listener: (forMs: number) => void): () => void
  onState(changed: () => void): () => void
}

export function audioPlayer(
  makeContext: () => AudioContext = () => new AudioContext(),
  monoMs: () => number = () => performance.now()
): Player {
  const living = livingContext(makeContext, monoMs)
  let bed: Bed | null = null
  let bedWanted = false
  const now = new Set<Sounding>()
  const ahead = orderedAhead(living, monoMs)
  const sounding = new Set<(forMs: number) => void>()
  const lay = (): void => {
    const running = living.running()
    if (bedWanted && running !== null) bed ??= bedIn(running)
    if (!bedWanted) bed?.stop()
    if (!bedWanted || running === null) bed = null
  }
  living.onState(lay)
  living.onDropped(() => {
    bed = null
    now.clear()
    ahead.forget()
  })
  return {
    state: living.state,
    unlock: living.unlock,
    watch: living.watch,
    onState: living.onState,
    onSounding(listener) {
      sounding.add(listener)
      return () => sounding.delete(listener)
    },
    play(pattern, level) {
      const running = living.running()
      if (running === null) return false
      try {
        const one = soundAt(running, { pattern, level, inMs: 0 }, () => now.delete(one))
        now.add(one)
        for (const listener of sounding) listener(lengthMs(pattern))
        return true
      } catch {
        living.broke()
        return false
      }
    },
    schedule: ahead.schedule,
    began: ahead.began,
    driftMs: ahead.driftMs,
    bed(on) {
      bedWanted = on
      lay()
    },
    silence() {
      for (const one of now) one.stop()
      now.clear()
      ahead.stop()
    }
  }
}

type Ahead = Pick<Player, 'schedule' | 'began' | 'driftMs'> & { stop(): void; forget(): void }

/** The sounds that are ordered before their time. */
function orderedAhead(living: LivingContext, monoMs: () => number): Ahead {
  let anchor = { audioMs: 0, monoMs: 0 }
  const ordered = new Map<string, Sounding>()
  return {
    schedule(coming, level) {
      for (const one of ordered.values()) if (!one.began()) one.stop()
      ordered.clear()
      const running = living.running()
      if (running === null) return
      anchor = { audioMs: running.currentTime * 1_000, monoMs: monoMs() }
      for (const { key, inMs, pattern } of coming)
        ordered.set(
          key,
          soundAt(running, { pattern, level, inMs }, () => {})
        )
    },
    began: (key) => ordered.get(key)?.began() ?? false,
    driftMs() {
      const running = living.running()
      return running === null ? 0 : running.currentTime * 1_000 - anchor.audioMs - (monoMs() - anchor.monoMs)
    },
    stop() {
      for (const one of ordered.values()) one.stop()
      ordered.clear()
    },
    forget: () => ordered.clear()
  }
}
