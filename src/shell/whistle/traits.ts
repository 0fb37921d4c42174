// What is known of a glide, for whistled.ts to weigh.
import type { Way } from './glide.ts'
import { BAND_FIRST, BAND_LAST, BIN_HZ, between, dbOf, HOP_MS, hzOf, loudestBeside } from './peaks.ts'
import type { Point } from './tracks.ts'

/** Gives the sums of power of a frame; null for one that is too long ago. */
export type Past = (frame: number) => Float64Array | null

export type Traits = {
  /** Frames in which the tone stood out, of all of the glide's, 0 to 1. */
  heard: number
  /** Mean part of the band's energy, and that of its weaker frames. */
  share: number
  shareLow: number
  contrastDb: number
  /** Way back, as a part of the way. */
  back: number
  /** How far it strays before the glide and after it, semitones. */
  stray: number
  headMs: number
  tailMs: number
  /** The part of the way that is made in the fastest quarter of the time: a quarter for a straight line, all for a step. */
  stepped: number
  /** Away from the straight line that fits best, and from the cubic, root of the mean square, semitones. */
  bent: number
  rough: number
  /** From frame to frame, semitones. */
  jitter: number
  /** How much its loudness goes up and down, dB. */
  unsteadyDb: number
  /** Louder at its end than at its start, along the straight line that fits best, dB; and how far from that line. */
  tiltDb: number
  flutterDb: number
  /** The two loudest tones that go along with it at a simple ratio, dB over it. */
  companyDb: number
  secondDb: number
  /** What sounded at its first pitch right before it, dB over it. */
  groundDb: number
  /** What sounded before it at all the pitches it takes, dB over it. */
  pathDb: number
  /** The loudest of the band in the half second before it, dB over it. */
  beforeDb: number
  /** What sounds below the band of whistles and above it, dB over it. */
  underDb: number
  overDb: number
  /** The loudest other tone of the band, mean and in its quieter frames, dB over it. */
  besideDb: number
  besideLowDb: number
}

const BESIDE_DB = 7
const LOW_SHARE = 0.3
const QUARTER = 0.25
/** Partials of one sound: each is such a ratio from some other. */
const ratios = [1 / 3, 1 / 2, 2 / 3, 3 / 4, 4 / 5, 5 / 6, 6 / 7, 7 / 6, 6 / 5, 5 / 4, 4 / 3, 3 / 2, 2, 3]
const NO_COMPANY_DB = -50
const SILENT_DB = -40
/** Power over what is beside it: 4 dB. */
const STANDS_OUT = 2.5

export type Found = { points: Point[]; line: number[]; way: Way; from: number; to: number; lengthMs: number }

export function traitsOf({ points, line, way, from, to, lengthMs }: Found, past: Past): Traits {
  const at = (nth: number): number => (points[nth] as Point).frame
  const span = at(to) - at(from)
  const inside = points.slice(from, to + 1)
  const outsideMs = (lengthMs - span * HOP_MS) / 2
  const loudFrom = loudStart(points, from, to)
  const levels = inside.map(({ power }) => dbOf(power))
  const pitches = inside.map(({ semitone }) => semitone)
  const times = inside.map(({ frame }) => (frame - at(from)) / span)
  const company = companyOf(inside, past)
  return {
    heard: inside.length / (span + 1),
    share: mean(inside.map(({ share }) => share)),
    shareLow: lowOf(
      inside.map(({ share }) => share),
      QUARTER
    ),
    contrastDb: mean(inside.map(({ contrastDb }) => contrastDb)),
    back: wayBack(line.slice(way.from, way.to + 1), Math.sign(way.semitones)) / Math.abs(way.semitones),
    stray: Math.max(reachOf(line.slice(loudFrom, way.from + 1)), reachOf(line.slice(way.to))),
    headMs: Math.max(0, (at(from) - at(loudFrom)) * HOP_MS - outsideMs),
    tailMs: Math.max(0, (at(points.length - 1) - at(to)) * HOP_MS - outsideMs),
    stepped: steppedness(points, line, from, to),
    bent: awayFrom(times, pitches, 1),
    rough: awayFrom(times, pitches, 3),
    jitter: mean(pitches.slice(2).map((pitch, nth) => Math.abs(pitch - 2 * num(pitches[nth + 1]) + num(pitches[nth])))),
    unsteadyDb: awayFrom(times, levels, 0),
    tiltDb: tiltOf(times, levels),
    flutterDb: awayFrom(times, levels, 1),
    companyDb: company[0] ?? NO_COMPANY_DB,
    secondDb: company[1] ?? NO_COMPANY_DB,
    ...around(points[0] as Point, inside, mean(levels), past)
  }
}

type Around = Pick<Traits, 'groundDb' | 'pathDb' | 'beforeDb' | 'underDb' | 'overDb' | 'besideDb' | 'besideLowDb'>

function around(first: Point, inside: Point[], levelDb: number, past: Past): Around {
  const bin = Math.round(hzOf(first.semitone) / BIN_HZ)
  const ground = [5, 6, 7, 8].map((ago) => levelIn(past(first.frame - ago), bin - 2, bin + 2))
  let before = SILENT_DB
  for (let ago = 6; ago <= 48; ago += 2) {
    const sums = past(first.frame - ago)
    if (sums !== null) before = Math.max(before, levelIn(sums, BAND_FIRST, BAND_LAST) - levelDb)
  }
  const over = (low: number, high: number): number =>
    mean(inside.map(({ frame, power }) => levelIn(past(frame), low, high) - dbOf(power)))
  const beside = inside.flatMap(({ frame, semitone, power }) => {
    const sums = past(frame)
    return sums === null ? [] : [dbOf(loudestBeside(sums, semitone) / power)]
  })
  return {
    groundDb: Math.max(SILENT_DB, mean(ground) - levelDb),
    pathDb: Math.max(SILENT_DB, pathBefore(first.frame, inside, past) - levelDb),
    beforeDb: before,
    underDb: over(3, BAND_FIRST - 1),
    overDb: over(BAND_LAST + 1, 250),
    besideDb: beside.length === 0 ? SILENT_DB : mean(beside),
    besideLowDb: beside.length === 0 ? SILENT_DB : lowOf(beside, QUARTER)
  }
}

/** Mean level at the pitches of a glide before it began. */
function pathBefore(firstFrame: number, inside: Point[], past: Past): number {
  const before = [6, 10, 14, 18].map((ago) => past(firstFrame - ago))
  return mean(
    inside.flatMap(({ semitone }) => {
      const bin = Math.round(hzOf(semitone) / BIN_HZ)
      return before.map((sums) => levelIn(sums, bin - 2, bin + 2))
    })
  )
}

function levelIn(sums: Float64Array | null, first: number, last: number): number {
  return sums === null ? SILENT_DB : dbOf(between(sums, first, last))
}

/** Away from the polynomial that fits best, root of the mean square. */
function awayFrom(times: number[], values: number[], degree: number): number {
  let rest = values
  const basis: number[][] = []
  for (let power = 0; power <= degree; power++) {
    let next = times.map((time) => time ** power)
    for (const known of basis) next = without(next, known)
    const size = Math.sqrt(dot(next, next)) + 1e-12
    next = next.map((value) => value / size)
    rest = without(rest, next)
    basis.push(next)
  }
  return Math.sqrt(dot(rest, rest) / rest.length)
}

/** How much is gained from start to end, along the straight line that fits best. */
function tiltOf(times: number[], values: number[]): number {
  const middle = mean(times)
  const [away, over] = times.reduce(
    ([sum, squares], time, nth) => [sum + (time - middle) * num(values[nth]), squares + (time - middle) ** 2],
    [0, 0] as [number, number]
  )
  return away / (over + 1e-12)
}

function without(values: number[], unit: number[]): number[] {
  const along = dot(values, unit)
  return values.map((value, nth) => value - along * num(unit[nth]))
}

function dot(a: number[], b: number[]): number {
  return a.reduce((sum, value, nth) => sum + value * num(b[nth]), 0)
}

function num(value: number | undefined): number {
  return value as number
}

/** Before the glide, only what is about as loud belongs to it: something else can have sounded there, a lid, a kettle. */
function loudStart(points: Point[], from: number, to: number): number {
  const level = mean(points.slice(from, to + 1).map(({ power }) => dbOf(power)))
  let first = from
  while (first > 0 && dbOf((points[first - 1] as Point).power) > level - BESIDE_DB) first -= 1
  return first
}

function lowOf(levels: number[], share: number): number {
  const sorted = [...levels].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length * share)] ?? -100
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

/** The tones that go along with it at a simple ratio, loudest first, dB under it: voices and strings have them. */
function companyOf(points: Point[], past: Past): number[] {
  const all: number[] = []
  for (const ratio of ratios) {
    const levels: number[] = []
    for (const { frame, semitone, power } of points) {
      const sums = past(frame)
      const bin = Math.round((hzOf(semitone) * ratio) / BIN_HZ)
      if (sums !== null && bin >= 4 && bin <= sums.length - 12) levels.push(partner(sums, bin, ratio, power))
    }
    // A ratio that leaves the spectrum for most of the way says nothing. Low in the order, not the mean: a partner goes
    // along all the way, what only sounds beside it comes and goes.
    if (levels.length >= points.length / 2) all.push(lowOf(levels, LOW_SHARE))
  }
  return all.sort((a, b) => b - a)
}

/** The level of a tone at that bin, dB over `power`; where nothing stands out there, none. */
function partner(sums: Float64Array, bin: number, ratio: number, power: number): number {
  // Twice the pitch glides twice as fast and smears as much more.
  const side = ratio > 1.4 ? 2 : 1
  const tone = between(sums, bin - side, bin + side)
  const wide = between(sums, bin - side - 4, bin + side + 4)
  const beside = between(sums, bin - side - 1, bin + side + 1)
  const stands = tone / (2 * side + 1) > (STANDS_OUT * (wide - beside)) / 6
  return stands ? Math.max(NO_COMPANY_DB, dbOf(tone / power)) : NO_COMPANY_DB
}
