// How a batch went up and down in temperature, from its journal: what the next one in the same pot begins with.
import { fitOf } from '../chemistry/heating/log.ts'
import { followsOneCurve } from '../chemistry/heating/one-curve.ts'
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import { evolve } from '../pot/evolve.ts'
import { type EarlierHeat, type HeatRun, potNamed } from '../pot/expected/earlier.ts'
import { readingDoubt } from '../pot/expected/expect.ts'
import type { PotState, TempReading } from '../pot/state.ts'
import { keyOf, withCorrections } from './corrected.ts'

type PotEntry = Entry<PotEvent>
type Heated = Pick<HeatRun, 'level' | 'burner'> & { heatOn: boolean; roomC: number; readings: TempReading[] }

const MINUTE_MS = 60_000
/** Less of a way tells no rate to a thermometer in whole degrees. Common practice, no source. */
const LEAST_C = 10
const LEAST_MS = 5 * MINUTE_MS

/** Of a settled batch; null: it is not settled, or nothing was read that tells how it heats or cools. */
export function heatOf(entries: readonly PotEntry[]): EarlierHeat | null {
  const state = { status: 'idle' } as PotState
  const { end, heated } = followed(standing(entries), state)
  if (end.status !== 'complete' && end.status !== 'aborted') return null
  const runs = heated.flatMap((one) => runOf(one) ?? [])
  if (runs.length === 0) return null
  const { pot, programme, endedAtMs } = end
  return { potId: pot.potId, pot: potNamed(pot), liquorML: programme.liquorML, endedAtMs, runs }
}

/** Corrected, and without what was taken back. */
function standing(entries: readonly PotEntry[]): PotEntry[] {
  const withdrawn = new Set<string>()
  for (const { event } of entries)
    if (event.type === 'Withdrawn') for (const ref of event.entries) withdrawn.add(keyOf(ref))
  return withCorrections(entries).entries.filter(
    (entry) => !withdrawn.has(keyOf(entry)) && entry.event.type !== 'Withdrawn'
  )
}

/** The readings of each stretch between two changes of heat, liquor or goods. */
function followed(entries: readonly PotEntry[], from: PotState): { end: PotState; heated: Heated[] } {
  const heated: Heated[] = []
  let state = from
  for (const { event, atMs, commandId, by, writerId, seq } of entries) {
    const next = evolve(state, event, { atMs, commandId, by, ref: { writerId, seq } })
    const over = next.status !== 'idle' && (event.type === 'Finished' || event.type === 'Aborted')
    if (state.status !== 'idle' && next.status !== 'idle') {
      const fewer = next.tempReadings.length < state.tempReadings.length
      if (fewer || over) heated.push(stretchOf(state))
    }
    state = next
  }
  return { end: state, heated }
}

function stretchOf({ heatOn, heatLevel, pot, programme, tempReadings }: Exclude<PotState, { status: 'idle' }>): Heated {
  const readings = [...tempReadings].sort((a, b) => a.atMs - b.atMs)
  return { heatOn, level: heatLevel, burner: pot.burner, roomC: programme.roomC, readings }
}

function runOf({ heatOn, level, burner, roomC, readings }: Heated): HeatRun | null {
  const way = heatOn ? rising(readings) : readings
  const [first, last] = [way[0], way.at(-1)]
  if (!first || !last || last.atMs - first.atMs < LEAST_MS || Math.abs(last.tempC - first.tempC) < LEAST_C) return null
  const ends = { level, burner, fromC: first.tempC, toC: last.tempC }
  if (heatOn) return last.tempC > first.tempC ? { going: 'up', ...ends, ...lawOf(way) } : null
  if (last.tempC >= first.tempC || last.tempC <= roomC) return null
  const min = (last.atMs - first.atMs) / MINUTE_MS
  const perMin = Math.log((first.tempC - roomC) / (last.tempC - roomC)) / min
  return { going: 'down', ...ends, startCPerMin: (first.tempC - roomC) * perMin, perMin }
}

/** Up to the highest: a hold with a turned-down flame after it is another way. */
function rising(readings: TempReading[]): TempReading[] {
  const top = Math.max(...readings.map(({ tempC }) => tempC))
  return readings.slice(0, readings.findIndex(({ tempC }) => tempC === top) + 1)
}

/** By the best curve where there are readings for one; by a straight line between the ends of fewer. */
function lawOf(way: readonly TempReading[]): Pick<HeatRun, 'startCPerMin' | 'perMin'> {
  const [first, last] = [way[0] as TempReading, way.at(-1) as TempReading]
  const min = (last.atMs - first.atMs) / MINUTE_MS
  const straight = { startCPerMin: (last.tempC - first.tempC) / min, perMin: 0 }
  const readings = way.map(({ atMs, tempC }) => ({ atMin: (atMs - first.atMs) / MINUTE_MS, tempC }))
  const sdC = Math.sqrt(readingDoubt.sdC ** 2 + readingDoubt.resolutionC ** 2 / 12)
  if (way.length < 4) return straight
  const fit = fitOf({ readings, targetC: first.tempC, sdC })
  const { rate, slope, meanG } = fit.best
  const startCPerMin = slope / min
  if (!followsOneCurve(fit) || !(startCPerMin > 0) || !Number.isFinite(meanG)) return straight
  return { startCPerMin, perMin: rate / min }
}
