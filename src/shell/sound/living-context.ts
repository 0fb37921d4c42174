// The one audio context, kept alive: unlocked by a gesture, taken up again after an interruption, built anew when dead.
import { deathWatch } from './death-watch.ts'

/** 'locked': no gesture yet. 'broken': the clock of the sound does not move, or there is no sound at all. */
export type SoundState = 'locked' | 'ready' | 'broken'

export type LivingContext = {
  /** The context while it sounds; null: nothing can sound now. */
  running(): AudioContext | null
  state(): SoundState
  unlock(): Promise<boolean>
  watch(): void
  broke(): void
  onState(changed: () => void): () => void
  /** The old context is gone with all that was ordered of it. */
  onDropped(gone: () => void): void
}

/** A dead sound is built anew this often at most: each try makes a context. */
const REBUILD_EVERY_MS = 5_000

export function livingContext(makeContext: () => AudioContext, monoMs: () => number): LivingContext {
  let context: AudioContext | null = null
  let state: SoundState = 'locked'
  let unlocking: Promise<boolean> | null = null
  let rebuiltAtMs = Number.NEGATIVE_INFINITY
  let gone = (): void => {}
  const death = deathWatch()
  const listeners = new Set<() => void>()
  const become = (next: SoundState): void => {
    if (state === next) return
    state = next
    for (const listener of listeners) listener()
  }
  const opened = (): AudioContext => {
    if (context !== null) return context
    askForPlayback()
    const fresh = makeContext()
    fresh.onstatechange = () => {
      if (fresh === context) become(fresh.state === 'running' ? 'ready' : 'locked')
    }
    context = fresh
    return fresh
  }
  const drop = (): void => {
    const old = context
    context = null
    gone()
    if (old !== null && old.state !== 'closed') void old.close().catch(() => {})
  }
  const tryTwice = async (): Promise<boolean> => {
    if (await runs(opened())) return true
    // A context that was interrupted can come back with a clock that stands: only a new one helps.
    drop()
    return runs(opened())
  }
  const unlock = (): Promise<boolean> => {
    unlocking ??= tryTwice()
      .catch(() => false)
      .then((ok) => {
        unlocking = null
        become(ok ? 'ready' : 'broken')
        return ok
      })
    return unlocking
  }
  return {
    running: () => (context !== null && context.state === 'running' ? context : null),
    state: () => state,
    unlock,
    watch() {
      if (context === null || unlocking !== null) return
      const nowMs = monoMs()
      if (!death.isDead(context, nowMs) || nowMs - rebuiltAtMs < REBUILD_EVERY_MS) return
      rebuiltAtMs = nowMs
      drop()
      become('locked')
      void unlock()
    },
    broke: () => become('broken'),
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    onDropped(listener) {
      gone = listener
    }
  }
}

/** `resume` can hang or lie: what counts is that the clock of the sound moves. */
async function runs(context: AudioContext): Promise<boolean> {
  await Promise.race([context.resume().catch(() => {}), pause(500)])
  for (let look = 0; look < 10; look++) {
    const before = context.currentTime
    await pause(50)
    if (context.currentTime > before) return true
  }
  return false
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}

/** Where iOS knows it, this beats the mute switch and goes on when the screen locks. */
function askForPlayback(): void {
  const session = (navigator as Navigator & { audioSession?: { type: string } }).audioSession
  if (session !== undefined) session.type = 'playback'
}
