import type { Rung } from '../rung.ts'
import type { ScreenLock } from './screen-lock.ts'

/** The screen as a rung. The call on it is drawn by the Stove; the lock that keeps it on is wanted from outside while a
 * pot is watched. */
export function screenRung(lock: ScreenLock, page: { visibilityState: string } = document): Rung {
  return {
    id: 'screen',
    works: () => page.visibilityState === 'visible',
    lamp() {
      const state = lock.state()
      if (state === 'not-wanted') return null
      if (state === 'kept-on') return { ok: true, say: 'Screen stays on', tap: null }
      return { ok: false, say: 'The screen may sleep: tap to keep it on', tap: () => void lock.retry() }
    },
    onLamp: lock.onState,
    raise() {},
    rest() {}
  }
}
