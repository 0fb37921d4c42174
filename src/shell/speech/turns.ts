// Whose turn it is to be spoken of: what has the right to be said now, most urgent first. Nothing is kept in a row: each
// turn is chosen from what stands at that moment, so that a call that was answered meanwhile is never said.
import type { Alert } from '../../core/pot/due.ts'
import type { Cue } from '../../core/spoken/cues.ts'
import type { RungAlert } from '../rung.ts'

/** The same cadence as the sound's. */
const NOW_EVERY_MS = 20_000
const URGENT_EVERY_MS = 8_000
/** A cue later than this after its time would mislead. */
export const CUE_LATE_MOST_MS = 1_500

export type PotCue = Cue & { potId: string }

export type Turn =
  | { kind: 'alert'; alert: RungAlert; first: boolean; rank: number; sinceMs: number }
  | { kind: 'cue'; cue: PotCue; first: true; rank: number; sinceMs: number }

/** When each alert was first seen and last said, by its name. */
export type Told = { seenMs: number; saidMs: number | null }

/** The same alert grown late is new to the ear. */
export function nameOf({ potId, alert }: RungAlert): string {
  return `${potId} ${alert.key} ${alert.urgency}`
}

export function isUrgent({ alert }: RungAlert): boolean {
  return alert.urgency === 'late' && !alert.soft
}

/** Late before now before soon; a count before a call of its own urgency, because it can't wait. */
const ranks = { lateAtStake: 0, late: 1, count: 2, now: 3, soft: 4, ahead: 5, soon: 6 }

function rankOf({ potId: _, alert }: RungAlert): number {
  if (alert.soft) return ranks.soft
  if (alert.urgency === 'late') return alert.escalates ? ranks.lateAtStake : ranks.late
  return alert.urgency === 'now' ? ranks.now : ranks.soon
}

/** Alerts that may be said at `atMs`: new ones once their sound is over, said ones at the sound's cadence. */
export function alertTurns(
  alerts: readonly RungAlert[],
  told: ReadonlyMap<string, Told>,
  atMs: number,
  toneMs: (alert: RungAlert) => number
): Turn[] {
  return alerts.flatMap((alert): Turn[] => {
    const { seenMs, saidMs } = told.get(nameOf(alert)) ?? { seenMs: atMs, saidMs: null }
    const first = saidMs === null
    const due = first ? atMs - seenMs >= toneMs(alert) : repeats(alert.alert) && atMs - saidMs >= everyMs(alert)
    return due ? [{ kind: 'alert', alert, first, rank: rankOf(alert), sinceMs: saidMs ?? seenMs }] : []
  })
}

function repeats(alert: Alert): boolean {
  return alert.urgency !== 'soon' && !alert.soft
}

function everyMs(alert: RungAlert): number {
  return alert.alert.escalates || isUrgent(alert) ? URGENT_EVERY_MS : NOW_EVERY_MS
}

/** Cues whose time is now, by the pots' clock. */
export function cueTurns(cues: readonly PotCue[], said: ReadonlySet<string>, potNowMs: number): Turn[] {
  return cues
    .filter((cue) => !said.has(cueName(cue)) && potNowMs >= cue.atMs && potNowMs - cue.atMs <= CUE_LATE_MOST_MS)
    .map((cue) => {
      const rank = cue.urgency === 'now' ? ranks.count : ranks.ahead
      return { kind: 'cue', cue, first: true, rank, sinceMs: cue.atMs }
    })
}

export function cueName({ potId, key }: PotCue): string {
  return `${potId} ${key}`
}

/** What was said before waits for all that was not. */
export function mostUrgent(turns: readonly Turn[]): Turn | null {
  const [next] = [...turns].sort(
    (a, b) => Number(b.first) - Number(a.first) || a.rank - b.rank || a.sinceMs - b.sinceMs
  )
  return next ?? null
}
