// The tones that stand out of one frame, 32 ms of sound.
import { RATE_HZ } from './resample.ts'

export const FRAME = 512
export const HOP = 160
export const HOP_MS = (HOP / RATE_HZ) * 1000
export const BIN_HZ = RATE_HZ / FRAME

/** 700 to 3600 Hz, where people whistle. */
const FIRST_BIN = 22
const LAST_BIN = 116
/** The band against which a tone's share is measured: a little more to each side. */
export const BAND_FIRST = 16
export const BAND_LAST = 130
/** A fast glide smears over several bins: a tone is the peak and two bins to each side. */
const SIDE = 2
/** The surroundings of a tone: from four bins away to sixteen. */
const NEAR = 4
const FAR = 16
const MOST_PEAKS = 6
/** A tone this much (power) over its surroundings is worth a look: 6 dB. */
const LEAST_CONTRAST = 4

export type Peak = {
  /** Pitch in semitones over 1 Hz. */
  semitone: number
  power: number
  /** Power over that of the surroundings, bin by bin, dB. */
  contrastDb: number
  /** The part of the band's energy that it holds, 0 to 1. */
  share: number
}

/** Sums of power up to each bin, so that any stretch of bins costs one subtraction. */
export function sumsOf(power: Float64Array, sums: Float64Array): void {
  let sum = 0
  for (let bin = 0; bin < power.length; bin++) {
    sum += power[bin] as number
    sums[bin + 1] = sum
  }
}

export function between(sums: Float64Array, first: number, last: number): number {
  const from = Math.max(0, first)
  const to = Math.min(sums.length - 2, last)
  return to < from ? 0 : (sums[to + 1] as number) - (sums[from] as number)
}

export function dbOf(power: number): number {
  return 10 * Math.log10(power + 1e-12)
}

/** The loudest tone of the band that is not the one at that pitch. */
export function loudestBeside(sums: Float64Array, semitone: number): number {
  const own = Math.round(hzOf(semitone) / BIN_HZ)
  let loudest = 0
  for (let bin = BAND_FIRST; bin <= BAND_LAST; bin++) {
    if (Math.abs(bin - own) > 2 * SIDE + 1) loudest = Math.max(loudest, between(sums, bin - SIDE, bin + SIDE))
  }
  return loudest
}

/** The energy of the band of whistles. */
export function bandOf(sums: Float64Array): number {
  return between(sums, BAND_FIRST, BAND_LAST)
}

/** The strongest tones of a frame, loudest first. `sums` are those of its power. */
export function peaksOf(power: Float64Array, sums: Float64Array): Peak[] {
  const band = bandOf(sums)
  const found: Peak[] = []
  if (band <= 0) return found
  for (let bin = FIRST_BIN; bin <= LAST_BIN; bin++) {
    const here = power[bin] as number
    if (here < (power[bin - 1] as number) || here <= (power[bin + 1] as number)) continue
    const tone = between(sums, bin - SIDE, bin + SIDE)
    const contrast = tone / (2 * SIDE + 1) / surroundings(sums, bin)
    if (contrast < LEAST_CONTRAST) continue
    const peak = { semitone: semitoneAt(power, bin), power: tone, contrastDb: 10 * Math.log10(contrast) }
    found.push({ ...peak, share: tone / band })
  }
  found.sort((a, b) => b.power - a.power)
  return apart(found)
}

/** Geometric mean of both sides: a loud neighbour on one side alone does not drown a tone. */
function surroundings(sums: Float64Array, bin: number): number {
  const below = between(sums, bin - FAR, bin - NEAR) / (FAR - NEAR + 1)
  const above = between(sums, bin + NEAR, bin + FAR) / (FAR - NEAR + 1)
  return Math.sqrt(below * above) + 1e-12
}

/** The centre of gravity of the peak, finer than a bin. */
function semitoneAt(power: Float64Array, bin: number): number {
  let whole = 0
  let moment = 0
  for (let away = -SIDE; away <= SIDE; away++) {
    const here = power[bin + away] as number
    whole += here
    moment += here * away
  }
  return semitoneOf((bin + moment / whole) * BIN_HZ)
}

export function semitoneOf(hz: number): number {
  return 12 * Math.log2(hz)
}

export function hzOf(semitone: number): number {
  return 2 ** (semitone / 12)
}

/** Two tops of one smeared tone count once. */
function apart(found: Peak[]): Peak[] {
  const kept: Peak[] = []
  for (const peak of found) {
    if (kept.length === MOST_PEAKS) break
    const hz = hzOf(peak.semitone)
    if (kept.every((other) => Math.abs(hzOf(other.semitone) - hz) > (SIDE + 0.5) * BIN_HZ)) kept.push(peak)
  }
  return kept
}
