// When a pot will be at a temperature, or was, from the readings of its thermometer so far.
import { type CannotTell, type CannotTellCode, cannotTell, shown, type TimeToTemperature } from './answer.ts'
import { crossing } from './curve.ts'
import { type Fit, mayBeSteady, plausibleTimes, within95Percent, within999PerMille } from './fit.ts'
import { differentTimes, fitOf, fromMin, type Log, spanMin } from './log.ts'
import { followsOneCurve, notOneCurve } from './one-curve.ts'
import { type Asked, type Reading, wrongIn } from './readings.ts'

/** The boil at sea level, where nobody says where the pot stands. */
const seaLevelBoilC = 100
/** What is not reached within a day of the first reading is not reached on this heat. */
const dayMin = 24 * 60
/** Bubbling begins, and Newton's law ends, a little under the boil. Common practice, no source. */
const nearBoilC = 0.5
/** A thermometer is never exact; this keeps made-up readings without noise within what numbers can hold. */
const leastSdC = 0.001

/**
 * The minute at which a pot is at `targetC`, by Newton's law with start, end and rate all free, and its 95 %
 * profile-likelihood interval; for heating and for cooling alike.
 *
 * Units: minutes on the clock of the readings, °C. Ranges: see `Asked`. Give the readings since the heat was last
 * changed. Rounding to `resolutionC` counts as a further variance of resolution²/12 (W. F. Sheppard; from memory).
 *
 * Never: the target lies over the boil (`boilC`, or 100 °C); or every curve within 99.9 % levels off on this side of it
 * or takes more than a day; or the readings go the other way than `towards`. Readings at the boil are left out: they say
 * nothing of the curve.
 *
 * Refuses, with `cannot-tell`: bad input; fewer than three different times; readings that no one curve fits; readings
 * that may be steady; a best curve that levels off before the target while others that are plausible do not; readings that
 * move away from the target while `towards` is not given.
 *
 * Not in it: an open pot loses more by steam above some 70 °C than Newton's law says, so that what is foretold from
 * colder readings is early. Give it the later readings alone when it matters.
 */
export function timeToTemperature(asked: Asked): TimeToTemperature {
  const wrong = wrongIn(asked)
  if (wrong) return cannotTell('bad-input', wrong)
  const { targetC, sdC, resolutionC, boilC = seaLevelBoilC } = asked
  if (targetC > boilC) return { kind: 'never' }
  const sorted = [...asked.readings].sort((a, b) => a.atMin - b.atMin)
  const wholeSdC = Math.max(leastSdC, Math.sqrt(sdC ** 2 + resolutionC ** 2 / 12))
  const readings = belowBoil(sorted, boilC - Math.max(nearBoilC, 2 * wholeSdC))
  const log = { readings, targetC, sdC: wholeSdC }
  if (differentTimes(log) < 3) return tooFew(readings.length < sorted.length)
  const curve = fitOf(log)
  return followsOneCurve(curve) ? judged(log, curve, asked.towards) : notOneCurve(log)
}

/** A pot that came to the boil, without its readings there. One that cools from the boil keeps its first. */
function belowBoil(readings: Reading[], nearC: number): Reading[] {
  const rises = (readings[0]?.tempC ?? 0) < nearC
  return rises ? readings.filter(({ tempC }) => tempC < nearC) : readings
}

function tooFew(boiled: boolean): CannotTell {
  const under = boiled ? ' below the boil' : ''
  return cannotTell('too-few', `Three readings${under} at different times are needed.`)
}

function judged(log: Log, curve: Fit, towards: Asked['towards']): TimeToTemperature {
  const minOf = (time: number): number => fromMin(log) + time * spanMin(log)
  const day = dayMin / spanMin(log)
  const { earliest, latest } = plausibleTimes(curve, within95Percent)
  const at = crossing(curve.best)
  if (mayBeSteady(curve)) return notReached(log, curve, 'steady', 'The readings do not rise or fall beyond doubt')
  if (latest < 0) return movedAway(log, curve, towards)
  if (earliest > day || at > day) {
    return notReached(log, curve, 'may-level-off', `It may level off before ${shown(log.targetC)} °C`)
  }
  const lowMin = minOf(earliest)
  return { kind: 'reached-at', min: minOf(Math.max(0, at)), lowMin, highMin: latest > day ? null : minOf(latest) }
}

/** The best curve does not get there. "Never" sends a person to the knob, and is asked for again at every reading: it
 * takes more certainty than an interval. */
function notReached(log: Log, curve: Fit, code: CannotTellCode, why: string): TimeToTemperature {
  const { earliest } = plausibleTimes(curve, within999PerMille)
  const lowMin = fromMin(log) + earliest * spanMin(log)
  if (lowMin - fromMin(log) > dayMin) return { kind: 'never' }
  return { ...cannotTell(code, `${why}: not before minute ${shown(lowMin)}, if at all.`), lowMin }
}

/** Every plausible curve was at the target before the first reading. */
function movedAway(log: Log, { best }: Fit, towards: Asked['towards']): TimeToTemperature {
  const moves = best.slope > 0 ? 'up' : 'down'
  const first = fromMin(log)
  if (towards === moves) return { kind: 'reached-at', min: first, lowMin: first, highMin: first }
  if (towards) return { kind: 'never' }
  const way = moves === 'up' ? 'over it and rise' : 'under it and fall'
  return cannotTell('moves-away', `The readings are ${way}: ${shown(log.targetC)} °C lies before the first of them.`)
}
