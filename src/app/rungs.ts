// The rungs of the ladder in the order in which they are told.
import type { ReadonlySignal } from '@preact/signals'
import type { Session } from '../session/types.ts'
import { batteryWatch } from '../shell/battery/battery.ts'
import { batteryRung } from '../shell/battery/battery-rung.ts'
import type { AppClock } from '../shell/clock/wall-clock.ts'
import type { ScreenLock } from '../shell/screen-lock/screen-lock.ts'
import { screenRung } from '../shell/screen-lock/screen-rung.ts'
import type { Player } from '../shell/sound/player.ts'
import { soundRung } from '../shell/sound/sound-rung.ts'
import { titleRung } from '../shell/title/title-rung.ts'
import type { Settings } from '../ui/kitchen.ts'
import { alertWords } from './alert-words.ts'
import { type Ladder, ladder } from './ladder.ts'
import { levelOf } from './settings.ts'
import { anyWatched } from './watched.ts'

export type RungParts = {
  player: Player
  lock: ScreenLock
  clock: AppClock
  settings: ReadonlySignal<Settings>
  session: () => Session
  /** Is the device being tried? It is kept awake then as for a watched pot. */
  awake: () => boolean
}

export function rungsOf({ player, lock, clock, settings, session, awake }: RungParts): Ladder {
  const monoMs = (): number => performance.now()
  const sound = soundRung({
    player,
    level: () => levelOf(settings.value),
    monoMs,
    untilMs: clock.untilMs,
    watched: () => awake() || anyWatched(session().pots(), clock.nowMs()),
    listening: () => settings.value.whistle
  })
  const title = titleRung('Strandline', (alert) => alertWords(alert, session().pots()), monoMs)
  return ladder([sound, screenRung(lock), title, batteryRung(batteryWatch())])
}
