// How many sounds a protocol makes. Ears stop hearing what sounds too often: what follows at once on an answer is a beat
// for hands that are there already, and is not counted.
import type { By, PotEvent } from './events.ts'

const HOUR_MS = 3_600_000
/** More sounds than this in an hour and a dyer no longer comes to each. Common practice, no source; alarm-fatigue
 * studies in hospitals speak of far more and warn all the same. */
export const SOUNDS_AN_HOUR_MOST = 20

export type AlarmBudget = { sounds: number; mostAnHour: number }

type Told = { atMs: number; by: By; event: PotEvent }

/** `told`: the entries of one pot in order. Alerts of one moment are one sound. */
export function alarmBudget(told: readonly Told[]): AlarmBudget {
  const sounds: number[] = []
  let answeredAtMs = Number.NEGATIVE_INFINITY
  for (const { atMs, by, event } of told) {
    if (event.type === 'StepClosed' && by.kind !== 'clock') answeredAtMs = atMs
    if (event.type !== 'AlertRaised' || atMs === answeredAtMs || atMs === sounds.at(-1)) continue
    sounds.push(atMs)
  }
  let mostAnHour = 0
  let first = 0
  sounds.forEach((atMs, at) => {
    while (atMs - (sounds[first] as number) >= HOUR_MS) first += 1
    mostAnHour = Math.max(mostAnHour, at - first + 1)
  })
  return { sounds: sounds.length, mostAnHour }
}
