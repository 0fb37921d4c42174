// What of a track is a glide: a way from one pitch to another. Whether a person whistled it: whistled.ts.
import { dbOf, HOP_MS } from './peaks.ts'
import type { Point, Track } from './tracks.ts'
import { type Past, type Traits, traitsOf } from './traits.ts'

export type Glide = {
  kind: 'rise' | 'fall'
  /** Frames, counted from the start of the recogniser. */
  firstFrame: number
  lastFrame: number
  semitones: number
  lengthMs: number
}

/** Ends of the way left out: they bend, and they are faint. */
const ENDS = 0.1
const ENDS_DB = 12
const LEAST_POINTS = 14
const LEAST_WAY = 2.2

/** Null: there is no way from one pitch to another in it. `past` gives the sums of power of a frame. */
export function glideOf(track: Track, past: Past): { glide: Glide; traits: Traits } | null {
  if (track.long || track.points.length < LEAST_POINTS) return null
  const points = loudPart(track.points)
  if (points.length < LEAST_POINTS) return null
  const line = smoothed(points.map(({ semitone }) => semitone))
  const way = longestWay(line)
  if (way === null || Math.abs(way.semitones) < LEAST_WAY) return null
  const [from, to] = middleOf(line, way)
  const span = (points[to] as Point).frame - (points[from] as Point).frame
  if (span < 4) return null
  const glide: Glide = {
    kind: way.semitones > 0 ? 'rise' : 'fall',
    firstFrame: (points[way.from] as Point).frame,
    lastFrame: (points[way.to] as Point).frame,
    semitones: Math.abs(way.semitones),
    lengthMs: (span * HOP_MS) / (1 - 2 * ENDS)
  }
  return { glide, traits: traitsOf({ points, line, way, from, to, lengthMs: glide.lengthMs }, past) }
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

/** Places in the line, and how far apart in pitch they are. */
export type Way = { from: number; to: number; semitones: number }

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
  const levels = points.map(({ power }) => dbOf(power))
  const usual = [...levels].sort((a, b) => a - b)[Math.floor(levels.length * 0.7)] as number
  const loud = (level: number): boolean => level > usual - ENDS_DB
  return points.slice(levels.findIndex(loud), levels.findLastIndex(loud) + 1)
}
