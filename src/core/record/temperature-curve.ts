// What is known of the temperature of a pot: its readings, a straight line between two of them, and nothing before the
// first or after the last. Nobody knows what happened between two readings that lie far apart, so the widest gap is told.
import { stepAt } from '../protocol/tree.ts'
import type { BatchRecord } from './record.ts'

export type CurvePoint = { atMs: number; tempC: number }

/** What was asked for while a step ran: from one temperature to another on a rise, a range or a level on a hold.
 * `lowC`, `highC`: null where that side is open. */
export type SetSpan = {
  path: string
  label: string
  startMs: number
  endMs: number
  fromC: number | null
  lowC: number | null
  highC: number | null
}

export type TemperatureCurve = {
  points: CurvePoint[]
  setPoints: SetSpan[]
  /** Null: fewer than two readings. */
  widestGapMs: number | null
}

/** `nowMs`: how far an open step has come. */
export function temperatureCurve(record: BatchRecord, nowMs: number): TemperatureCurve {
  const points = record.readings
    .flatMap(({ tempC, said }) => (tempC === null ? [] : [{ atMs: said.atMs, tempC }]))
    .sort((a, b) => a.atMs - b.atMs)
  const gaps = points.slice(1).map((point, i) => point.atMs - (points[i] as CurvePoint).atMs)
  return { points, setPoints: setSpans(record, nowMs), widestGapMs: gaps.length === 0 ? null : Math.max(...gaps) }
}

function setSpans({ steps, programme }: BatchRecord, nowMs: number): SetSpan[] {
  return steps.flatMap(({ path, label, startMs, endMs, how }): SetSpan[] => {
    const step = stepAt(programme, path)
    if (!step || how === 'skipped') return []
    const span = { path, label, startMs, endMs: endMs ?? Math.max(startMs, nowMs) }
    const { ramp, setPoint } = step
    if (ramp) return [{ ...span, fromC: ramp.expectedFromC, lowC: ramp.lowC, highC: ramp.highC }]
    return setPoint ? [{ ...span, fromC: null, lowC: setPoint.lowC, highC: setPoint.highC }] : []
  })
}

/** How long the lines between the readings lie at or above a temperature; null: fewer than two readings. */
export function timeAboveMs(points: readonly CurvePoint[], limitC: number): number | null {
  if (points.length < 2) return null
  return points.slice(1).reduce((sum, to, i) => sum + partAbove(points[i] as CurvePoint, to, limitC), 0)
}

function partAbove(from: CurvePoint, to: CurvePoint, limitC: number): number {
  const lengthMs = to.atMs - from.atMs
  const low = Math.min(from.tempC, to.tempC)
  const high = Math.max(from.tempC, to.tempC)
  if (low >= limitC) return lengthMs
  return high < limitC ? 0 : (lengthMs * (high - limitC)) / (high - low)
}
