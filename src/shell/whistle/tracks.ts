// Tones that go on from frame to frame.
import type { Peak } from './peaks.ts'

export type Point = Peak & { frame: number }
export type Track = {
  points: Point[]
  /** Semitones a frame, smoothed: where it is going. */
  slope: number
  loudest: number
  /** Too long for a whistle: followed on, so that no end of it is taken for a start, and never judged. */
  long: boolean
}

export type Tracks = {
  /** Takes the peaks of the next frame; gives the tracks that ended. */
  follow(frame: number, peaks: readonly Peak[]): Track[]
  clear(): void
}

/** Frames that a tone may be drowned for. */
const MOST_GAP = 4
/** Semitones beside the place where a tone was going. */
const REACH = 0.7
const REACH_PER_GAP = 0.12
/** A tone so much under its loudest (power) is its echo, or something else: 24 dB. */
const LEAST_OF_LOUDEST = 0.004
const START_CONTRAST_DB = 9
const MOST_TRACKS = 14
/** 2.4 s: the longest whistle, with what is held and what the room gives back. */
const MOST_POINTS = 240
/** Frames in which a whistle comes up, and those before them that show what was there. */
const COMING_UP = 9
const BEFORE = 24
/** 8 dB. */
const LOUDER = 6.3
/** Frames for which a tone must stay where it is, how still (semitones), and how much fainter than the glide: 5 dB. */
const STAYS = 20
const STILL = 0.8
const FAINTER = 3
/** Points of the glide before them that tell how loud it was; and how far it must have moved, semitones. */
const GONE_BEFORE = 12
const MOVED = 2
/** Points of the first half of a broken glide, and of the second when the first is given up. */
const LEAST_HALF = 6
const LEAST_MORE = 3
/** Semitones between where the first half was going and where the second begins. */
const HALF_REACH = 1.2
/** 12 dB. */
const ALIKE = 16
/** How fast the slope follows. */
const SLOPE_SHARE = 0.3

export function createTracks(): Tracks {
  let tracks: Track[] = []
  return {
    follow(frame, peaks) {
      const free = new Set(peaks)
      const begin: Track[] = []
      const cut = new Set<Track>()
      // What has gone on longest chooses first.
      tracks.sort((a, b) => b.points.length - a.points.length)
      for (const track of tracks) {
        const next = nearest(track, frame, free)
        if (next === null) continue
        free.delete(next)
        extend(track, { ...next, frame })
        const fresh = louderPart(track) ?? fainterPart(track)
        if (fresh === null) continue
        begin.push(fresh)
        cut.add(track)
      }
      const ended = tracks.filter((track) => cut.has(track) || frame - lastOf(track).frame > MOST_GAP)
      if (ended.length > 0) tracks = tracks.filter((track) => !ended.includes(track))
      const over = ended.filter((track) => cut.has(track) || !goesOn(track, tracks))
      tracks.push(...begin)
      for (const peak of free) {
        if (peak.contrastDb >= START_CONTRAST_DB) tracks.push(begun({ ...peak, frame }))
      }
      if (tracks.length > MOST_TRACKS) tracks.length = MOST_TRACKS
      return over
    },
    clear() {
      tracks = []
    }
  }
}

function begun(point: Point): Track {
  return { points: [point], slope: 0, loudest: point.power, long: false }
}

/** In a room that echoes a glide breaks: what began where this one was going is its other half, and takes it in. */
function goesOn(track: Track, others: readonly Track[]): boolean {
  const last = lastOf(track)
  if (track.points.length < LEAST_HALF) return false
  const half = others.find(({ points, loudest }) => {
    const first = points[0] as Point
    const gap = first.frame - last.frame
    const away = Math.abs(first.semitone - last.semitone - track.slope * gap)
    const alike = loudest < track.loudest * ALIKE && loudest > track.loudest / ALIKE
    return points.length >= LEAST_MORE && gap >= 1 && away <= HALF_REACH && alike
  })
  if (half === undefined) return false
  half.points.unshift(...track.points)
  half.loudest = Math.max(half.loudest, track.loudest)
  half.long = half.long || track.long || half.points.length > MOST_POINTS
  return true
}

/**
 * Something louder has begun where a faint tone went on, a whistle over a lid that still rings: its points are taken off
 * the end of the track, which ends there. Null: nothing of the kind.
 */
function louderPart(track: Track): Track | null {
  const count = track.points.length
  if (count < BEFORE || lastOf(track).power < track.loudest) return null
  let sum = 0
  for (let nth = count - BEFORE; nth < count - COMING_UP; nth++) sum += (track.points[nth] as Point).power
  const before = sum / (BEFORE - COMING_UP)
  if (lastOf(track).power < before * LOUDER) return null
  const from = track.points.findIndex(({ power }, nth) => nth >= count - COMING_UP && power > (before * LOUDER) / 2)
  return { ...cutOff(track, from), long: false }
}

/**
 * A glide has run into a fainter tone that was there all along, as of a kettle, and its track goes on as that: what stays
 * is taken off the end of the track, which ends there. Null: nothing of the kind.
 */
function fainterPart(track: Track): Track | null {
  const from = track.points.length - STAYS
  if (from < GONE_BEFORE || lastOf(track).power * FAINTER > track.loudest) return null
  const end = track.points.slice(from)
  if (spanOf(end) > STILL) return null
  const before = meanPower(track.points.slice(from - GONE_BEFORE, from))
  if (meanPower(end) * FAINTER > before || spanOf(track.points) < MOVED) return null
  return { ...cutOff(track, from), long: track.long }
}

/** The points from there on, as a track of their own. */
function cutOff(track: Track, from: number): Omit<Track, 'long'> {
  const points = track.points.splice(from)
  const first = points[0] as Point
  const last = points[points.length - 1] as Point
  const slope = points.length < 2 ? 0 : (last.semitone - first.semitone) / (last.frame - first.frame)
  return { points, slope, loudest: Math.max(...points.map(({ power }) => power)) }
}

function spanOf(points: readonly Point[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const { semitone } of points) {
    low = Math.min(low, semitone)
    high = Math.max(high, semitone)
  }
  return high - low
}

function meanPower(points: readonly Point[]): number {
  return points.reduce((sum, { power }) => sum + power, 0) / points.length
}

function lastOf(track: Track): Point {
  return track.points[track.points.length - 1] as Point
}

function nearest(track: Track, frame: number, free: Set<Peak>): Peak | null {
  const last = lastOf(track)
  const gap = frame - last.frame
  const expected = last.semitone + track.slope * gap
  const reach = REACH + REACH_PER_GAP * (gap - 1) + (track.points.length < 4 ? 0.3 : 0)
  let best: Peak | null = null
  let bestCost = Number.POSITIVE_INFINITY
  for (const peak of free) {
    const away = Math.abs(peak.semitone - expected)
    if (away > reach || peak.power < track.loudest * LEAST_OF_LOUDEST) continue
    // A louder tone a little off is likelier than a faint one on the spot.
    const cost = away - peak.contrastDb / 40
    if (cost >= bestCost) continue
    best = peak
    bestCost = cost
  }
  return best
}

function extend(track: Track, point: Point): void {
  const last = lastOf(track)
  const slope = (point.semitone - last.semitone) / (point.frame - last.frame)
  track.slope += (slope - track.slope) * SLOPE_SHARE
  track.loudest = Math.max(track.loudest, point.power)
  track.points.push(point)
  if (track.points.length <= MOST_POINTS) return
  track.long = true
  track.points.shift()
}
