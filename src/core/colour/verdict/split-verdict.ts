// Did the mixed dye split into its hues along the skein, or did it only get lighter?
import { chromaOf, hueDegOf, type Lab } from '../lab.ts'
import { type Fault, markName, spoilsOne } from '../photo/faults.ts'
import { type AlongSkein, alongSkein } from './along-skein.ts'
import type { LeftOut, PositionFound, SplitVerdict, Why } from './answer.ts'
import { type AtEqualDepth, atEqualDepth } from './at-equal-depth.ts'
import { at } from './cholesky.ts'
import { type Given, type Point, type Position, usualSmallest } from './given.ts'
import { turnWord } from './turn-words.ts'
import { cannotSee, onlyLighter, settled, splitWhy } from './why.ts'

/** Fewer swatches make no curve. The undyed yarn is one of them. */
const leastSeries = 4
/** And they lie apart by so much L*. */
const leastSeriesReach = 10
/** As five photos of one thing give. */
const leastFreedom = 4
const leastPositions = 3
/** The positions that count reach over so much of the skein. */
const leastReach = 0.5
/** Under so much chroma, and so near to the undyed yarn in a* and b*, the hue says nothing. Trade practice: C* 8 to 10. */
const leastChroma = 8
/** So much L* past the series the curve still holds. */
const pastSeries = 2

/**
 * Judges a skein against its dilution series, *at equal depth*: dilution alone turns some dyes by many degrees, so a
 * turned hue is never a split by itself.
 *
 * `split`: the turn from end to end passes three standard deviations and runs one way. `only-lighter`: it stays within, and
 * a split of `smallestWanted` would have been seen 95 times of 100. `cannot-tell`: anything else, with its reason and what
 * would settle it. Units: ΔH* (CIELAB). What the uncertainty is made of, and the limits: "The verdict" in DEVELOPERS.md.
 */
export function splitVerdict(given: Given): SplitVerdict {
  const { faults = [] } = given
  const spoiled = (of: Fault['of'], nth: number): boolean =>
    faults.some((fault) => spoilsOne(fault) && fault.of === of && fault.nth === nth)
  const unread = new Set(given.skein.positions.filter((_, nth) => spoiled('skein', nth)))
  const positions = [...given.skein.positions].sort((one, other) => one.at - other.at)
  const readable = given.series.filter((_, nth) => !spoiled('series', nth))
  const series = [...readable, ...(given.undyed ? [given.undyed] : [])]
  const first = beforeAll(given, series)
  // Without a curve there is nothing to compare with; pale yarn needs none to be told.
  if (first && !hasCurve(series)) return unknown(positions, null, [], paleFirst(given, positions) ?? first)
  const found = atEqualDepth(series, positions, given.noise)
  const leftOut = positions.map((position) =>
    unread.has(position) ? 'bad-patch' : leftOutFor(position, found.curve, given.undyed?.lab ?? null)
  )
  const why = first ?? tooLittle(positions, leftOut)
  if (why) return unknown(positions, found, leftOut, why)
  const counted = positions.filter((_, nth) => leftOut[nth] === null)
  const judged = atEqualDepth(series, counted, given.noise)
  const places = counted.map((position) => position.at)
  const along = alongSkein(places, judged, given.noise.freedom)
  return decided(given, counted, judged, along, positionsFound(positions, found, leftOut))
}

/** What stands in the way before any colour is compared. */
function beforeAll({ skein, faults = [], noise }: Given, series: Point[]): Why | null {
  if (!skein.dry) return settled('wet')
  if (skein.fibres !== 1) return settled('two-fibres')
  const fault = faults.find((one) => !spoilsOne(one))
  if (fault) return { ...settled('bad-photo'), say: `In the photos, ${markName(fault)}: ${fault.say}` }
  if (series.length < leastSeries) return settled('no-control')
  if (!hasCurve(series)) return settled('flat-series')
  return noise.freedom < leastFreedom ? settled('no-repeats') : null
}

function hasCurve(series: Point[]): boolean {
  const depths = series.map(({ lab }) => lab.l)
  return series.length >= leastSeries && Math.max(...depths) - Math.min(...depths) >= leastSeriesReach
}

/** Where all of the skein is too pale by itself, that is the reason. */
function paleFirst({ skein: { dry, fibres }, undyed, faults = [] }: Given, positions: Position[]): Why | null {
  const dyed = positions.filter(({ zone }) => zone === 'dyed')
  const tellable = dry && fibres === 1 && faults.length === 0 && dyed.length > 0
  return tellable && dyed.every(({ lab }) => isPale(lab, undyed?.lab ?? null)) ? settled('too-pale') : null
}

function isPale(lab: Lab, undyed: Lab | null): boolean {
  const fromUndyed = undyed ? Math.hypot(lab.a - undyed.a, lab.b - undyed.b) : Number.POSITIVE_INFINITY
  return Math.min(chromaOf(lab), fromUndyed) < leastChroma
}

function leftOutFor({ zone, lab }: Position, curve: AtEqualDepth['curve'], undyed: Lab | null): LeftOut | null {
  if (zone === 'wicking') return 'wicking'
  if (isPale(lab, undyed) || chromaOf(curve.at(lab.l)) < leastChroma) return 'too-pale'
  if (lab.l < curve.deepest - pastSeries || lab.l > curve.palest + pastSeries) return 'outside-series'
  return null
}

function tooLittle(positions: Position[], leftOut: (LeftOut | null)[]): Why | null {
  const counted = positions.filter((_, nth) => leftOut[nth] === null).map((position) => position.at)
  const dyed = positions.filter(({ zone }) => zone === 'dyed').map((position) => position.at)
  const reach = (places: number[]): number => (places.at(-1) ?? 0) - (places[0] ?? 0)
  if (counted.length >= leastPositions && reach(counted) >= leastReach * reach(dyed) && reach(counted) > 0) return null
  const many = (kind: LeftOut): number => leftOut.filter((why) => why === kind).length
  const codes = ['too-pale', 'outside-series', 'bad-patch'] as const
  const most = codes.reduce((best, code) => (many(code) > many(best) ? code : best))
  return settled(many(most) === 0 ? 'too-few' : most)
}

function decided(
  { smallestWanted = usualSmallest, noise }: Given,
  counted: Position[],
  judged: AtEqualDepth,
  along: AlongSkein,
  deltaH: PositionFound[]
): SplitVerdict {
  const { size, sd, limit, smallestVisible, oneWay, turnsAt } = along
  const depths = counted.map(({ lab }) => lab.l)
  const lighterBy = Math.max(...depths) - Math.min(...depths)
  const numbers = {
    deltaH,
    size: { deltaH: size, sd },
    smallestVisibleSplit: smallestVisible,
    lighterBy,
    turn: null
  }
  if (!oneWay) return { verdict: 'cannot-tell', ...numbers, why: settled('not-one-way') }
  if (Math.abs(size) > limit * sd) {
    const band = (counted[turnsAt ?? 0] as Position).band
    const turn = { word: turnWord(hueDegOf(judged.curve.at(depths.at(-1) ?? 0)), size), fromBand: band }
    return { verdict: 'split', ...numbers, turn, why: splitWhy(along, turn) }
  }
  if (smallestVisible <= smallestWanted) {
    return { verdict: 'only-lighter', ...numbers, why: onlyLighter(along, lighterBy, offSeries(judged)) }
  }
  return { verdict: 'cannot-tell', ...numbers, why: cannotSee(along, smallestWanted, noise) }
}

/** How far the whole skein lies off its series, ΔH*; null where that is no more than chance. */
function offSeries({ deltaH, whole }: AtEqualDepth): number | null {
  const share = 1 / deltaH.length
  const mean = deltaH.reduce((sum, value) => sum + value * share, 0)
  const variance = whole.flat().reduce((sum, value) => sum + value * share ** 2, 0)
  return Math.abs(mean) > 4 * Math.sqrt(variance + 0.25) ? mean : null
}

function unknown(
  positions: Position[],
  found: AtEqualDepth | null,
  leftOut: (LeftOut | null)[],
  why: Why
): SplitVerdict {
  const deltaH = positionsFound(positions, found, leftOut)
  const none = { size: null, smallestVisibleSplit: null, lighterBy: null, turn: null }
  return { verdict: 'cannot-tell', deltaH, ...none, why }
}

function positionsFound(
  positions: Position[],
  found: AtEqualDepth | null,
  leftOut: (LeftOut | null)[]
): PositionFound[] {
  return positions.map(({ at: place, band, zone, lab }, nth) => {
    const control = found ? found.curve.at(lab.l) : null
    return {
      at: place,
      band,
      zone,
      depth: lab.l,
      deltaH: found?.deltaH[nth] ?? null,
      sd: found ? Math.sqrt(at(found.whole, nth, nth)) : null,
      leftOut: leftOut[nth] ?? null,
      control: control && { hueDeg: hueDegOf(control), chroma: chromaOf(control) }
    }
  })
}
