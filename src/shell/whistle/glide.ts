// What of a track is a glide, and whether it is one that a person whistled.
import { BIN_HZ, between, HOP_MS, hzOf } from './peaks.ts'
import type { Point, Track } from './tracks.ts'

export type Glide = {
  kind: 'rise' | 'fall'
  /** Frames, counted from the start of the recogniser. */
  firstFrame: number
  lastFrame: number
  semitones: number
  lengthMs: number
}

/** What is known of a glide, for `isWhistled` to weigh. */
export type Traits = {
  /** Frames in which the tone stood out, of all of the glide's, 0 to 1. */
  heard: number
  /** Mean part of the band's energy. */
  share: number
  contrastDb: number
  /** Way back, as a part of the way. */
  back: number
  /** How far it strays before the glide and after it, semitones. */
  stray: number
  headMs: number
  tailMs: number
  /** The part of the way that is made in the fastest quarter of the time: a quarter for a straight line, all for a step. */
  stepped: number
  /** The loudest tone that goes along with it at a simple ratio, dB under it: voices and strings have them. */
  companyDb: number
}

export type Past = (frame: number) => Float64Array | null

/** Ends of the way left out: they bend, and they are faint. */
const ENDS = 0.1
const ENDS_DB = 12
const BESIDE_DB = 7
const LOW_SHARE = 0.3
const ENOUGH = 50
const LEAST_POINTS = 14
const LEAST_WAY = 2.2
/** Partials of one sound: each is such a ratio from some other. */
const ratios = [1 / 3, 1 / 2, 2 / 3, 3 / 4, 4 / 5, 5 / 6, 6 / 7, 7 / 6, 6 / 5, 5 / 4, 4 / 3, 3 / 2, 2, 3]
const NO_COMPANY_DB = -50
/** Power over what is beside it: 4 dB. */
const STANDS_OUT = 2.5

/** Null: there is no way from one pitch to another in it. `past` gives the sums of power of a frame. */
export function glideOf(track: Track, past: Past): { glide: Glide; traits: Traits } | null {
  if (track.long || track.points.length < LEAST_POINTS) return null
  const points = loudPart(track.points)
  if (points.length < LEAST_POINTS) return null
  const line = smoothed(points.map(({ semitone }) => semitone))
  const way = longestWay(line)
  if (way === null || Math.abs(way.semitones) < LEAST_WAY) return null
  const [from, to] = middleOf(line, way)
  const at = (nth: number): number => (points[nth] as Point).frame
  const span = at(to) - at(from)
  if (span < 4) return null
  const lengthMs = (span * HOP_MS) / (1 - 2 * ENDS)
  const glide: Glide = {
    kind: way.semitones > 0 ? 'rise' : 'fall',
    firstFrame: at(way.from),
    lastFrame: at(way.to),
    semitones: Math.abs(way.semitones),
    lengthMs
  }
  const inside = points.slice(from, to + 1)
  const loudFrom = loudStart(points, from, to)
  const outsideMs = (lengthMs - span * HOP_MS) / 2
  const traits: Traits = {
    heard: inside.length / (span + 1),
    share: mean(inside.map(({ share }) => share)),
    contrastDb: mean(inside.map(({ contrastDb }) => contrastDb)),
    back: wayBack(line.slice(way.from, way.to + 1), Math.sign(way.semitones)) / Math.abs(way.semitones),
    stray: Math.max(reachOf(line.slice(loudFrom, way.from + 1)), reachOf(line.slice(way.to))),
    headMs: Math.max(0, (at(from) - at(loudFrom)) * HOP_MS - outsideMs),
    tailMs: Math.max(0, (at(points.length - 1) - at(to)) * HOP_MS - outsideMs),
    stepped: steppedness(points, line, from, to),
    companyDb: company(inside, past)
  }
  return { glide, traits }
}

/** What no whistle is, whatever else speaks for it. */
function canBeWhistled({ semitones, lengthMs }: Glide, traits: Traits): boolean {
  return (
    semitones >= 2.7 &&
    semitones <= 15 &&
    lengthMs >= 195 &&
    lengthMs <= 1_350 &&
    traits.heard >= 0.7 &&
    traits.share >= 0.15 &&
    traits.contrastDb >= 10 &&
    traits.back <= 0.15 &&
    traits.stray <= Math.max(1.2, 0.25 * semitones) &&
    traits.headMs <= 500 &&
    traits.tailMs <= 700 &&
    traits.stepped <= 0.62
  )
}

/**
 * A start, not a law. The weights are those of a logistic fit, rounded, to 3,100 made-up whistles and to what looked most
 * like one in 22 hours of made-up sound (the tune part of tests/whistle-corpus). The limit is where of 7 hours of talk of
 * a synthesiser nothing got over, and of 7 hours of talk-like sound two squeals: a whistle that is missed is whistled
 * again, an act that is wrongly taken for done is not.
 */
export function isWhistled(glide: Glide, traits: Traits): boolean {
  if (!canBeWhistled(glide, traits)) return false
  const alone = -Math.min(0, Math.max(-30, traits.companyDb))
  const short = Math.max(0, 300 - glide.lengthMs) / 100
  const speaksFor =
    28 * Math.min(0.6, traits.share) + 0.36 * Math.min(20, traits.contrastDb) + 0.59 * alone + 17 * traits.heard
  return speaksFor - 30 * traits.back - 8 * traits.stepped - 6 * short > ENOUGH
}

/** The middle of each three, then the mean of each three: single wrong frames go, bends stay. */
function smoothed(line: number[]): number[] {
  const at = (from: number[], nth: number): number => from[Math.min(from.length - 1, Math.max(0, nth))] as number
  const middles = line.map((_, nth) => {
    const [a, b, c] = [at(line, nth - 1), at(line, nth), at(line, nth + 1)]
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c))
  })
  return middles.map((_, nth) => (at(middles, nth - 1) + at(middles, nth) + at(middles, nth + 1)) / 3)
}

type Way = { from: number; to: number; semitones: number }

/** The two points farthest apart in pitch, in their order in time. */
function longestWay(line: number[]): Way | null {
  let best: Way | null = null
  let low = 0
  let high = 0
  line.forEach((here, nth) => {
    if (here < (line[low] as number)) low = nth
    if (here > (line[high] as number)) high = nth
    const up = here - (line[low] as number)
    const down = here - (line[high] as number)
    if (up > Math.abs(best?.semitones ?? 0)) best = { from: low, to: nth, semitones: up }
    if (-down > Math.abs(best?.semitones ?? 0)) best = { from: high, to: nth, semitones: down }
  })
  return best
}

/** From the last point near the start of the way to the first near its end. */
function middleOf(line: number[], way: Way): [number, number] {
  const done = (nth: number): number => ((line[nth] as number) - (line[way.from] as number)) / way.semitones
  let from = way.from
  for (let nth = way.from; nth <= way.to; nth++) if (done(nth) <= ENDS) from = nth
  let to = way.to
  for (let nth = way.to; nth > from; nth--) if (done(nth) >= 1 - ENDS) to = nth
  return [from, to]
}

/** Without what is far fainter at both ends: what the tone was taken for going on from, and the echo. */
function loudPart(points: Point[]): Point[] {
  const levels = points.map(({ power }) => 10 * Math.log10(power))
  const usual = [...levels].sort((a, b) => a - b)[Math.floor(levels.length * 0.7)] as number
  const loud = (level: number): boolean => level > usual - ENDS_DB
  return points.slice(levels.findIndex(loud), levels.findLastIndex(loud) + 1)
}

/** Before the glide, only what is about as loud belongs to it: something else can have sounded there, a lid, a kettle. */
function loudStart(points: Point[], from: number, to: number): number {
  const level = mean(points.slice(from, to + 1).map(({ power }) => 10 * Math.log10(power)))
  let first = from
  while (first > 0 && 10 * Math.log10((points[first - 1] as Point).power) > level - BESIDE_DB) first -= 1
  return first
}

function lowOf(levels: number[]): number {
  levels.sort((a, b) => a - b)
  return levels[Math.floor(levels.length * LOW_SHARE)] ?? -100
}

function wayBack(line: number[], sign: number): number {
  let sum = 0
  for (let nth = 1; nth < line.length; nth++) {
    sum += Math.max(0, sign * ((line[nth - 1] as number) - (line[nth] as number)))
  }
  return sum
}

function reachOf(line: number[]): number {
  return line.length === 0 ? 0 : Math.max(...line) - Math.min(...line)
}

function mean(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length)
}

function steppedness(points: Point[], line: number[], from: number, to: number): number {
  const steps: number[] = []
  for (let nth = from + 1; nth <= to; nth++) {
    const frames = (points[nth] as Point).frame - (points[nth - 1] as Point).frame
    const step = Math.abs((line[nth] as number) - (line[nth - 1] as number)) / frames
    for (let frame = 0; frame < frames; frame++) steps.push(step)
  }
  steps.sort((a, b) => b - a)
  const whole = steps.reduce((sum, step) => sum + step, 0)
  const fastest = steps.slice(0, Math.max(1, Math.round(steps.length / 4)))
  return fastest.reduce((sum, step) => sum + step, 0) / Math.max(1e-9, whole)
}

function company(points: Point[], past: Past): number {
  let loudest = NO_COMPANY_DB
  for (const ratio of ratios) {
    const levels: number[] = []
    for (const { frame, semitone, power } of points) {
      const sums = past(frame)
      const bin = Math.round((hzOf(semitone) * ratio) / BIN_HZ)
      if (sums !== null && bin >= 4 && bin <= sums.length - 12) levels.push(partner(sums, bin, ratio, power))
    }
    // A ratio that leaves the spectrum for most of the way says nothing. Low in the order, not the mean: a partner goes
    // along all the way, what only sounds beside it comes and goes.
    if (levels.length >= points.length / 2) loudest = Math.max(loudest, lowOf(levels))
  }
  return loudest
}

/** The level of a tone at that bin, dB over `power`; where nothing stands out there, none. */
function partner(sums: Float64Array, bin: number, ratio: number, power: number): number {
  // Twice the pitch glides twice as fast and smears as much more.
  const side = ratio > 1.4 ? 2 : 1
  const tone = between(sums, bin - side, bin + side)
  const wide = between(sums, bin - side - 4, bin + side + 4)
  const beside = between(sums, bin - side - 1, bin + side + 1)
  const stands = tone / (2 * side + 1) > (STANDS_OUT * (wide - beside)) / 6
  return stands ? Math.max(NO_COMPANY_DB, 10 * Math.log10(tone / power + 1e-12)) : NO_COMPANY_DB
}
