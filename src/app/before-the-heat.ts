import type { Check } from '../core/pot/events.ts'
import { batteryNow } from '../shell/battery/battery.ts'
import { batteryWords } from '../shell/battery/battery-rung.ts'
import type { ScreenLock } from '../shell/screen-lock/screen-lock.ts'
import type { Player } from '../shell/sound/player.ts'
import { askToKeep } from '../shell/storage-persistence/persistence.ts'

/** The checks made when a pot is started, each in words. Runs inside the Start tap: sound begins only there. `level`: as
 * loud as was tried at the stove; null: sound is off. */
export async function beforeTheHeat(player: Player, lock: ScreenLock, level: number | null): Promise<Check[]> {
  const soundOn = level !== null
  // Asked for at once, before anything is awaited: the gesture does not last.
  const unlocking = soundOn ? player.unlock() : Promise.resolve(false)
  lock.want(true)
  const locking = lock.retry()
  const [sounds, keptOn, storage, battery] = await Promise.all([unlocking, locking, askToKeep(), batteryCheck()])
  if (sounds && soundOn) player.play('now', level)
  return [
    { what: 'sound', ok: sounds, say: soundWords(soundOn, sounds) },
    { what: 'screen', ok: keptOn, say: keptOn ? 'The screen stays on' : 'The screen may sleep: set it to stay on' },
    { what: 'storage', ok: storage.kept, say: storage.say },
    noticesCheck(),
    battery
  ]
}

function soundWords(on: boolean, sounds: boolean): string {
  if (!on) return 'Sound is off: calls show on the screen only'
  return sounds ? 'Sound ready. Try it with the fan on' : 'No sound: keep the screen in sight'
}

/** Told, not asked: the lamp on the Stove asks, when there is a hand free for it. */
function noticesCheck(): Check {
  const permission = typeof Notification === 'undefined' ? 'none' : Notification.permission
  return { what: 'notices', ok: permission === 'granted', say: noticesWords[permission] }
}

const noticesWords = {
  granted: 'Notices come while the app is hidden',
  default: 'No notices yet: allow them by their lamp on the Stove',
  denied: "Notices are refused in the browser's settings",
  none: 'This browser shows no notices'
} as const

async function batteryCheck(): Promise<Check> {
  const battery = await batteryNow()
  if (battery !== null) return { what: 'battery', ...batteryWords(battery) }
  return { what: 'battery', ok: false, say: 'This browser does not tell the battery: put the charger in' }
}
