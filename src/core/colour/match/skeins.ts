// One skein beside another, or beside a colour that was asked for: as a whole, and band by band.
import { type Answer, isRefused, type Problem, refuse } from '../../chemistry/answer.ts'
import {
  added,
  type Covariance,
  carriedVariance,
  covarianceOf,
  labOf,
  meanLab,
  noCovariance,
  scaled,
  tripleOf
} from '../covariance.ts'
import type { Lab } from '../lab.ts'
import { threeSd } from '../verdict/three-sd.ts'
import type { White } from '../white.ts'
import { type Match, matchTo } from './match.ts'

/** `each`: its single readings, none where only the average is known. `counts`: it was under the liquor and can be read. */
export type BandRead = { lab: Lab; each: Lab[]; counts: boolean }

/** Bands in the order of the skein from end A. `together`: the nth readings of all bands are of one photo, so they stray
 * together. */
export type SkeinRead = { white: White; bands: BandRead[]; together: boolean }

export type Pair = Match & {
  /** One standard deviation of ΔE00 by how the readings stray; null: not known of either. */
  sd: number | null
  /** Of whose readings that is. */
  sdOf: 'both' | 'skein' | 'target' | null
  /** No larger than three such standard deviations; null: not known. */
  chance: boolean | null
}

/** `target` and `skein`: the averages that `whole` compares. `bands`: null where the two have not the same bands. */
export type SkeinMatch = {
  white: White
  target: Lab
  skein: Lab
  whole: Pair
  bands: { band: number; pair: Pair | null }[] | null
}

/** Refuses what is told against different whites, and a skein of which no band counts; `field` is 'target' or 'skein'. */
export function matchSkeins(target: SkeinRead, skein: SkeinRead): Answer<SkeinMatch> {
  const empty = [nothingOf('target', target), nothingOf('skein', skein)].filter((problem) => problem !== null)
  if (empty.length > 0) return refuse(...empty)
  const alike = target.bands.length === skein.bands.length && skein.bands.length > 1
  const inBoth = skein.bands.map((band, nth) => band.counts && target.bands[nth]?.counts === true)
  // Bands that only one of the two can show would be a difference of their own.
  const few = (of: SkeinRead): BandRead[] =>
    of.bands.filter((band, nth) => (alike && inBoth.includes(true) ? inBoth[nth] : band.counts))
  const [one, other] = [averageOf(few(target), target.together), averageOf(few(skein), skein.together)]
  const whole = pairOf({ ...one, white: target.white }, { ...other, white: skein.white })
  if (isRefused(whole)) return refuse(...whole.problems.map((problem) => ({ ...problem, field: 'target' })))
  return {
    white: skein.white,
    target: one.lab,
    skein: other.lab,
    whole,
    bands: alike ? bandByBand(target, skein, inBoth) : null
  }
}

function bandByBand(target: SkeinRead, skein: SkeinRead, inBoth: boolean[]): NonNullable<SkeinMatch['bands']> {
  const one = ({ bands, white }: SkeinRead, nth: number) => ({ ...averageOf([bands[nth] as BandRead], false), white })
  return inBoth.map((both, nth) => {
    const pair = both ? pairOf(one(target, nth), one(skein, nth)) : null
    return { band: nth + 1, pair: pair === null || isRefused(pair) ? null : pair }
  })
}

function nothingOf(field: string, { bands }: SkeinRead): Problem | null {
  if (bands.some(({ counts }) => counts)) return null
  const what = 'No band of it can be compared: each was above the liquor, or could not be read.'
  return { code: 'missing', field, what, instead: 'Choose another reading, or read it anew.' }
}

/** A colour and how sure it is; `doubt` null: not known. */
type Sure = { lab: Lab; doubt: Covariance | null; freedom: number }

function averageOf(bands: readonly BandRead[], together: boolean): Sure {
  const lab = meanLab(bands.map((band) => band.lab))
  const often = Math.min(...bands.map(({ each }) => each.length))
  if (often < 2) return { lab, doubt: null, freedom: 0 }
  if (together) {
    const photos = Array.from({ length: often }, (_, nth) => meanLab(bands.map(({ each }) => each[nth] as Lab)))
    return { lab, doubt: scaled(covarianceOf(photos), 1 / often), freedom: often - 1 }
  }
  const doubt = bands.reduce(
    (sum, { each }) => added(sum, scaled(covarianceOf(each), 1 / each.length / bands.length ** 2)),
    noCovariance()
  )
  return { lab, doubt, freedom: bands.reduce((sum, { each }) => sum + each.length - 1, 0) }
}

function pairOf(target: Sure & { white: White }, skein: Sure & { white: White }): Answer<Pair> {
  const match = matchTo(target, skein)
  if (isRefused(match)) return match
  const [ofTarget, ofSkein] = [carried(target, skein, match.de00), carried(skein, target, match.de00)]
  const known = [ofTarget, ofSkein].filter((variance) => variance !== null)
  if (known.length === 0) return { ...match, sd: null, sdOf: null, chance: null }
  const sd = Math.sqrt(known.reduce((sum, variance) => sum + variance, 0))
  const sdOf = known.length === 2 ? 'both' : ofSkein === null ? 'target' : 'skein'
  // Welch and Satterthwaite: a sum of two variances, each known on its own degrees of freedom.
  const share = (variance: number | null, { freedom }: Sure): number => (variance ?? 0) ** 2 / Math.max(1, freedom)
  const shares = share(ofTarget, target) + share(ofSkein, skein)
  const freedom = shares > 0 ? sd ** 4 / shares : 1
  return { ...match, sd, sdOf, chance: match.de00 <= threeSd(freedom) * sd }
}

/** A small step for slopes, in CIELAB units. */
const step = 0.01

/** The variance that one side's doubt makes of ΔE00, by its slopes along the three axes. */
function carried({ lab, doubt }: Sure, other: Sure, de00: number): number | null {
  if (doubt === null) return null
  const slope = (axis: 0 | 1 | 2): number => {
    const moved = tripleOf(lab)
    moved[axis] += step
    const match = matchTo({ lab: other.lab, white: 'D65/2' }, { lab: labOf(moved), white: 'D65/2' })
    return isRefused(match) ? 0 : (match.de00 - de00) / step
  }
  return carriedVariance(doubt, [slope(0), slope(1), slope(2)])
}
