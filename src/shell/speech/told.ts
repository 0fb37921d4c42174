// What was said already, and when.
import type { RungAlert } from '../rung.ts'
import { cueName, nameOf, type PotCue, type Told } from './turns.ts'

/** A count that has called an act stands for the first sentence of its call when that comes within this. */
const COUNTED_MS = 10_000

export type Memory = {
  told: ReadonlyMap<string, Told>
  cuesSaid: ReadonlySet<string>
  /** Forgets what stands no more: the same call again, after it was answered, is new. */
  keep(alerts: readonly RungAlert[], cues: readonly PotCue[]): void
  /** Was it said in full, as now or as late? */
  knows(alert: RungAlert): boolean
  said(alert: RungAlert): void
  /** It was broken off. */
  unsaid(alert: RungAlert): void
  cueSaid(cue: PotCue): void
  counted(cue: PotCue): void
}

export function memoryOf(nowMs: () => number): Memory {
  const told = new Map<string, Told>()
  const inFull = new Set<string>()
  const cuesSaid = new Set<string>()
  const countedMs = new Map<string, number>()
  const said = (alert: RungAlert, saidMs: number): void => {
    told.set(nameOf(alert), { seenMs: told.get(nameOf(alert))?.seenMs ?? saidMs, saidMs })
    inFull.add(keyOf(alert))
  }
  const see = (alert: RungAlert): void => {
    if (told.has(nameOf(alert))) return
    told.set(nameOf(alert), { seenMs: nowMs(), saidMs: null })
  }
  const heedCount = (alert: RungAlert): void => {
    const calledMs = countedMs.get(actOf(alert.potId, alert.alert.path))
    if (alert.alert.kind !== 'call' || calledMs === undefined || nowMs() - calledMs > COUNTED_MS) return
    if (told.get(nameOf(alert))?.saidMs === null) said(alert, calledMs)
  }
  return {
    told,
    cuesSaid,
    keep(alerts, cues) {
      forget(told, alerts.map(nameOf))
      forget(inFull, alerts.map(keyOf))
      forget(cuesSaid, cues.map(cueName))
      for (const alert of alerts) {
        see(alert)
        heedCount(alert)
      }
    },
    knows: (alert) => inFull.has(keyOf(alert)),
    said: (alert) => said(alert, nowMs()),
    unsaid(alert) {
      told.set(nameOf(alert), { seenMs: 0, saidMs: null })
      inFull.delete(keyOf(alert))
    },
    cueSaid: (cue) => cuesSaid.add(cueName(cue)),
    counted(cue) {
      if (cue.calls !== null) countedMs.set(actOf(cue.potId, cue.calls), nowMs())
    }
  }
}

function forget(known: { keys(): Iterable<string>; delete(name: string): boolean }, kept: readonly string[]): void {
  for (const name of [...known.keys()]) if (!kept.includes(name)) known.delete(name)
}

function keyOf({ potId, alert }: RungAlert): string {
  return `${potId} ${alert.key}`
}

function actOf(potId: string, path: string | null): string {
  return `${potId} ${path}`
}
