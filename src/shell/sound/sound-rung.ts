import type { Rung, RungAlert } from '../rung.ts'
import { cadence, patternOf } from './cadence.ts'
import type { Player } from './player.ts'

/** What is ordered ahead may be off by so much, by the clock of the sound or by that of the pots, before it is ordered
 * anew. */
const OFF_MOST_MS = 50

/** Time to hear a call, take a breath and whistle. Common practice, no source. */
const WHISTLE_MS = 5_000

export type SoundRungOptions = {
  player: Player
  /** Asked at each sound: 0 to 1, or null where the dyer turned sound off. */
  level(): number | null
  /** Real time, monotonic. */
  monoMs(): number
  /** Real time from now until that hour of the pots' clock. */
  untilMs(atMs: number): number
  /** Is any pot watched? Only then the bed lies under it. */
  watched(): boolean
  /** Does somebody answer by whistles? The ear is deaf while we sound: it needs a while in between. */
  listening(): boolean
}

export function soundRung({ player, level, monoMs, untilMs, watched, listening }: SoundRungOptions): Rung {
  const beat = cadence()
  /** When each was ordered to sound, in monotonic time. */
  let ordered = new Map<string, number>()
  player.onState(() => {
    // What was ordered is gone with a context that died.
    ordered = new Map()
  })
  return {
    id: 'sound',
    works: () => level() !== null && player.state() === 'ready',
    lamp() {
      if (level() === null) return { ok: false, say: 'Sound is off: calls show on the screen only', tap: null }
      const state = player.state()
      if (state === 'ready') return { ok: true, say: 'Sound ready', tap: null }
      const say =
        state === 'locked' ? 'No sound yet: tap to let it sound' : 'Sound does not work here: tap to try again'
      return { ok: false, say, tap: () => void player.unlock() }
    },
    onLamp: player.onState,
    raise(alerts) {
      const loud = level()
      // While nothing can sound nothing counts as sounded: the first touch that unlocks it is answered at once.
      if (loud === null || player.state() !== 'ready') return
      for (const one of alerts) {
        if (!ordered.has(nameOf(one)) || !player.began(nameOf(one))) continue
        ordered.delete(nameOf(one))
        beat.sounded(one, monoMs())
      }
      const next = beat.next(alerts, monoMs(), listening() ? WHISTLE_MS : 0)
      if (next !== null) player.play(next.pattern, next.full ? 1 : loud)
    },
    ahead(coming) {
      const loud = level()
      player.bed(loud !== null && watched())
      player.watch()
      if (loud === null || player.state() !== 'ready') return
      const nowMs = monoMs()
      const sounds = coming.map((one) => {
        return { key: nameOf(one), inMs: untilMs(one.alert.atMs), pattern: patternOf(one.alert) }
      })
      const stands = ({ key, inMs }: (typeof sounds)[number]): boolean =>
        Math.abs((ordered.get(key) ?? Infinity) - nowMs - inMs) <= OFF_MOST_MS
      const same = sounds.length === ordered.size && sounds.every(stands)
      if (same && (sounds.length === 0 || Math.abs(player.driftMs()) <= OFF_MOST_MS)) return
      ordered = new Map(sounds.map(({ key, inMs }) => [key, nowMs + inMs]))
      player.schedule(sounds, loud)
    },
    rest() {
      beat.next([], monoMs())
      player.silence()
      ordered = new Map()
    }
  }
}

function nameOf({ potId, alert }: RungAlert): string {
  return `${potId} ${alert.key}`
}
