// Hears rising and falling whistles in a stream of sound. Pure: what it says follows from the samples alone.
import { type Glide, glideOf } from './glide.ts'
import { createLoudness, USUAL_WHISTLE_DB } from './loudness.ts'
import { bandOf, FRAME, HOP, HOP_MS, peaksOf, sumsOf } from './peaks.ts'
import { createResampler, RATE_HZ } from './resample.ts'
import { createSpectrum } from './spectrum.ts'
import { createTracks } from './tracks.ts'
import type { Traits } from './traits.ts'
import { isWhistled } from './whistled.ts'

export type Heard = {
  kind: 'rise' | 'fall'
  /** When the glide was over, ms of sound since the recogniser's first sample. */
  atMs: number
  semitones: number
  lengthMs: number
}

export type Recogniser = {
  push(samples: Float32Array): Heard[]
  /** Nothing that sounds from now on for so long is heard, nor a glide that was under way. */
  deafFor(ms: number): void
  /** The room is so loud that a whistle would not be heard. */
  tooLoud(): boolean
  /** What sounds in the band of whistles, dB under full scale, over about a second. */
  levelDb(): number
  /** Ms of sound taken so far. */
  nowMs(): number
}

export type RecogniserOptions = {
  /** Rate of what is pushed, 16 kHz or more. */
  sampleRateHz: number
  /** How loud this person's whistle comes in, dB under full scale, if it was tried. */
  whistleDb?: number
  /** Is shown every glide that was weighed, for tuning. */
  weigh?: (glide: Glide, traits: Traits) => boolean
}

/** Frames kept to look back into: as long as a track can be. */
const KEPT = 320
/** Frames between the end of one whistle and the start of the next: 0.15 s. */
const APART = 15
/** Frames at the start of hearing in which no whistle begins: 0.05 s. */
const UNHEARD = 5
const FULL_SCALE = 0.985
/** The spectrum's power of a tone of full scale under a Hann window: (FRAME / 4)^2, times 1.5 for the window's width. */
const FULL_POWER = 1.5 * (FRAME / 4) ** 2

export function createRecogniser(options: RecogniserOptions): Recogniser {
  const { sampleRateHz, whistleDb = USUAL_WHISTLE_DB, weigh = isWhistled } = options
  const resample = createResampler(sampleRateHz)
  const spectrum = createSpectrum(FRAME)
  const tracks = createTracks()
  const loudness = createLoudness(whistleDb, HOP)
  const kept = Array.from({ length: KEPT }, () => new Float64Array(FRAME / 2 + 2))
  const window = new Float32Array(FRAME)
  let filled = FRAME - HOP
  let frame = 0
  let hearsFrom = 0
  let lastHeard = -APART

  const past = (asked: number): Float64Array | null =>
    asked >= 0 && asked > frame - KEPT && asked <= frame ? (kept[asked % KEPT] as Float64Array) : null

  const hearFrame = (): Heard[] => {
    const sums = kept[frame % KEPT] as Float64Array
    const power = spectrum.powerOf(window)
    sumsOf(power, sums)
    // What is no number comes from a broken driver; one such sample must not deafen for good.
    if (frame < hearsFrom || !Number.isFinite(bandOf(sums))) return []
    loudness.hear(10 * Math.log10(bandOf(sums) / FULL_POWER + 1e-12), clippedIn(window))
    return tracks.follow(frame, peaksOf(power, sums)).flatMap((track) => {
      const found = glideOf(track, past)
      if (found === null || !weigh(found.glide, found.traits)) return []
      const { kind, firstFrame, lastFrame, semitones, lengthMs } = found.glide
      // A glide that was under way when hearing began: nobody knows how long already.
      if (firstFrame < hearsFrom + UNHEARD) return []
      // The echo of a whistle, or its second harmonic, must not answer a second call.
      if (firstFrame < lastHeard + APART) return []
      lastHeard = Math.max(lastHeard, lastFrame)
      return [{ kind, atMs: lastFrame * HOP_MS, semitones, lengthMs }]
    })
  }

  return {
    push(samples) {
      const heard: Heard[] = []
      const fresh = resample(samples)
      let taken = 0
      while (taken < fresh.length) {
        const piece = fresh.subarray(taken, taken + FRAME - filled)
        window.set(piece, filled)
        filled += piece.length
        taken += piece.length
        if (filled < FRAME) break
        heard.push(...hearFrame())
        frame += 1
        window.copyWithin(0, HOP)
        filled = FRAME - HOP
      }
      return heard
    },
    deafFor(ms) {
      tracks.clear()
      // The window reaches back over what sounded while it was deaf.
      hearsFrom = Math.max(hearsFrom, frame + Math.ceil((ms / 1000) * (RATE_HZ / HOP)) + Math.ceil(FRAME / HOP))
    },
    tooLoud: loudness.tooLoud,
    levelDb: loudness.levelDb,
    nowMs: () => frame * HOP_MS
  }
}

function clippedIn(window: Float32Array): number {
  let count = 0
  for (let nth = FRAME - HOP; nth < FRAME; nth++) if (Math.abs(window[nth] as number) >= FULL_SCALE) count += 1
  return count
}
