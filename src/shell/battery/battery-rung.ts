import type { Rung, RungLamp } from '../rung.ts'
import type { BatteryState, BatteryWatch } from './battery.ts'

/** Half a battery lasts an afternoon with the screen on, on most phones. Common practice, no source. */
const ENOUGH = 0.5

/** Tells nobody of a call; without it no other rung does for long. */
export function batteryRung(watch: BatteryWatch): Rung {
  return {
    id: 'battery',
    works: () => false,
    lamp() {
      const state = watch.state()
      return state === null ? null : { ...batteryWords(state), tap: null }
    },
    onLamp: watch.onState,
    raise() {},
    rest() {}
  }
}

export function batteryWords({ charging, level }: BatteryState): Omit<RungLamp, 'tap'> {
  const percent = `${Math.round(level * 100)} %`
  if (charging) return { ok: true, say: `Charging, ${percent}` }
  const ok = level >= ENOUGH
  return { ok, say: ok ? `Battery ${percent}` : `Battery ${percent}: put the charger in` }
}
