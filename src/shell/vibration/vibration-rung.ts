import type { Rung } from '../rung.ts'
import { cadence } from '../sound/cadence.ts'
import type { Pattern } from '../sound/patterns.ts'

/** On and off, ms: the three patterns of the sound as they are felt in an apron pocket. */
export const shakes: Record<Pattern, number[]> = {
  soon: [150],
  now: [250, 150, 250, 150, 250],
  late: [400, 150, 400, 150, 400, 600, 400, 150, 400]
}

/** The browser's vibration, or null where there is none or where it would be refused with a complaint: before the first
 * touch of the page. */
function shakeOfBrowser(pattern: number[]): void {
  const { vibrate, userActivation } = navigator as {
    vibrate?: (pattern: number[]) => boolean
    userActivation?: { hasBeenActive: boolean }
  }
  if (vibrate === undefined || userActivation?.hasBeenActive === false) return
  vibrate.call(navigator, pattern)
}

/** Shakes with the same beat as the sound, but whether sound is on or not. No lamp: where nothing can shake, nothing is
 * promised. */
export function vibrationRung(nowMs: () => number, shake: (pattern: number[]) => void = shakeOfBrowser): Rung {
  const beat = cadence()
  return {
    id: 'vibration',
    // A browser takes the order also where nothing can shake: nothing is promised.
    works: () => false,
    lamp: () => null,
    onLamp: () => () => {},
    raise(alerts) {
      const next = beat.next(alerts, nowMs())
      if (next !== null) shake(shakes[next.pattern])
    },
    rest() {
      beat.next([], nowMs())
      shake([])
    }
  }
}
