import type { Alert } from '../../core/pot/due.ts'
import type { RungAlert } from '../rung.ts'
import { lengthMs, type Pattern } from './patterns.ts'

const NOW_EVERY_MS = 20_000
const URGENT_EVERY_MS = 8_000
/** What is at stake and late for so long is called as loud as it goes, more often still. Common practice, no source. */
const DESPERATE_AFTER_MS = 2 * 60_000
const DESPERATE_EVERY_MS = 6_000

/** `full`: as loud as the device is set to, whatever level was tried at the stove. */
export type Beat = { pattern: Pattern; full: boolean }

/** Says what is to sound, asked many times a second; null: silence. A new alert sounds at once. One that stands sounds
 * again every 20 s, a late one and one that escalates every 8 s, one that escalates and is 2 min late every 6 s and as
 * loud as it goes. A soft tick and a heads-up sound once. What follows at once on an answer is a beat: the hands are
 * there, one pulse will do. */
export type Cadence = {
  /** `quietMs`: so long it must be quiet between two sounds, for an ear that is deaf meanwhile. */
  next(alerts: readonly RungAlert[], atMs: number, quietMs?: number): Beat | null
  /** This one sounded already, ordered ahead. */
  sounded(alert: RungAlert, atMs: number): void
}

export function cadence(): Cadence {
  const soundedAtMs = new Map<string, number>()
  const row = inARow()
  return {
    next(alerts, atMs, quietMs = 0) {
      row.look(alerts, atMs)
      const names = alerts.map(nameOf)
      for (const name of soundedAtMs.keys()) if (!names.includes(name)) soundedAtMs.delete(name)
      const due = alerts.filter((alert, index) =>
        isDue(alert.alert, soundedAtMs.get(names[index] ?? ''), atMs, quietMs)
      )
      if (due.length === 0) return null
      // One sound speaks for all that stand: two pots calling must not double the noise.
      for (const name of names) soundedAtMs.set(name, atMs)
      const full = due.some(({ alert }) => isDesperate(alert))
      const patternFor = (one: RungAlert): Pattern => (row.follows(one) ? 'soon' : patternOf(one.alert))
      const [pattern] = due.map(patternFor).sort((a, b) => loudest.indexOf(a) - loudest.indexOf(b))
      return { pattern: pattern ?? 'now', full }
    },
    sounded(alert, atMs) {
      soundedAtMs.set(nameOf(alert), atMs)
    }
  }
}

/** Between an answer and the call that follows on it lies a write, no more. */
const AT_ONCE_MS = 2_000

/** Which alerts followed at once on an answer in the same pot, with nothing else of that pot left standing. */
function inARow(): { look(alerts: readonly RungAlert[], atMs: number): void; follows(one: RungAlert): boolean } {
  let before = new Map<string, string[]>()
  const answeredAtMs = new Map<string, number>()
  const following = new Set<string>()
  return {
    look(alerts, atMs) {
      const now = new Map<string, string[]>()
      for (const { potId, alert } of alerts) now.set(potId, [...(now.get(potId) ?? []), alert.key])
      for (const [potId, keys] of before) {
        if (keys.every((key) => !now.get(potId)?.includes(key))) answeredAtMs.set(potId, atMs)
      }
      for (const [potId, keys] of now) {
        const atOnce = atMs - (answeredAtMs.get(potId) ?? Number.NEGATIVE_INFINITY) <= AT_ONCE_MS
        const fresh = keys.filter((key) => !before.get(potId)?.includes(key))
        if (atOnce && fresh.length === keys.length) for (const key of fresh) following.add(`${potId} ${key}`)
        else if (fresh.length === 0) for (const key of keys) following.delete(`${potId} ${key}`)
      }
      before = now
    },
    follows: ({ potId, alert }) => alert.urgency === 'now' && following.has(`${potId} ${alert.key}`)
  }
}

const loudest: readonly Pattern[] = ['late', 'now', 'soon']

export function patternOf(alert: Alert): Pattern {
  return isUrgent(alert) ? 'late' : isCall(alert) ? 'now' : 'soon'
}

/** The same alert grown late is new to the ear. */
function nameOf({ potId, alert }: RungAlert): string {
  return `${potId} ${alert.key} ${alert.urgency}`
}

function isDue(alert: Alert, lastMs: number | undefined, atMs: number, quietMs: number): boolean {
  if (lastMs === undefined) return true
  return isCall(alert) && atMs - lastMs >= Math.max(everyMs(alert), lengthMs(patternOf(alert)) + quietMs)
}

function everyMs(alert: Alert): number {
  if (isDesperate(alert)) return DESPERATE_EVERY_MS
  return alert.escalates || isUrgent(alert) ? URGENT_EVERY_MS : NOW_EVERY_MS
}

function isDesperate(alert: Alert): boolean {
  return alert.escalates && alert.lateMs >= DESPERATE_AFTER_MS
}

function isUrgent(alert: Alert): boolean {
  return alert.urgency === 'late' && !alert.soft
}

function isCall(alert: Alert): boolean {
  return alert.urgency !== 'soon' && !alert.soft
}
