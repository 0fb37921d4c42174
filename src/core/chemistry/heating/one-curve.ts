// Whether readings follow one curve of Newton's law, and if not, from when on they do.
import { type CannotTell, cannotTell, shown } from './answer.ts'
import { chiSquare, type Fit } from './fit.ts'
import { differentTimes, fitOf, type Log } from './log.ts'

/** The three that every curve takes to be drawn. */
const parameters = 3

/** False where chance alone would miss by so much once in a thousand times: chi-square's 99.9 % point, by E. B. Wilson &
 * M. M. Hilferty, PNAS 17, 1931 (from memory). */
export function followsOneCurve(curve: Fit): boolean {
  const free = Math.max(1, curve.levels.times.length - parameters)
  const part = 2 / (9 * free)
  return chiSquare(curve) <= free * (1 - part + 3.09 * Math.sqrt(part)) ** 3
}

/** The refusal, with the longest run of late readings that one curve fits: what fits from a reading on also fits from a
 * later one. */
export function notOneCurve(log: Log): CannotTell {
  const { readings } = log
  let bad = 0
  let good = readings.length - parameters
  while (good - bad > 1) {
    const middle = Math.floor((bad + good) / 2)
    if (fitsFrom(log, middle)) good = middle
    else bad = middle
  }
  const why = 'The readings do not follow one curve: a lid, cold water, the heat or the thermometer changed something.'
  const fitsFromMin = readings[good]?.atMin
  // Nearly any three lie on some curve.
  if (good >= readings.length - parameters || fitsFromMin === undefined) return cannotTell('not-one-curve', why)
  return { ...cannotTell('not-one-curve', `${why} Those from minute ${shown(fitsFromMin)} on do.`), fitsFromMin }
}

function fitsFrom(log: Log, index: number): boolean {
  const late = { ...log, readings: log.readings.slice(index) }
  return differentTimes(late) < parameters || followsOneCurve(fitOf(late))
}
