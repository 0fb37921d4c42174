// Whether a whistle could be heard at all over what sounds now.
export type Loudness = {
  /** The band's level of one frame, dB under full scale, and how many of its samples were at the end of the scale. */
  hear(levelDb: number, clipped: number): void
  tooLoud(): boolean
  levelDb(): number
}

/** How loud a whistle is taken to be where nobody tried: from memory of phones held a step away, no source. */
export const USUAL_WHISTLE_DB = -24
/** From here on only few are heard; npm run bench:whistle prints how many where it is said and where it is not. */
const OVER_DB = 0
/** Said when it is sure, taken back when it is sure: a verdict that flickers is none. */
const BACK_DB = 3
/** The level follows in about a second, so that one clank is not taken for a loud room. */
const SHARE = 0.01
const MOST_CLIPPED = 0.02

export function createLoudness(whistleDb: number, samplesPerFrame: number): Loudness {
  let level = -100
  let clipped = 0
  let loud = false
  return {
    hear(levelDb, samples) {
      // In dB, so that it is the usual level that counts and not the loudest moments.
      level += (Math.max(-100, levelDb) - level) * SHARE
      clipped += (samples / samplesPerFrame - clipped) * SHARE
      const limit = whistleDb + OVER_DB - (loud ? BACK_DB : 0)
      loud = level > limit || clipped > (loud ? MOST_CLIPPED / 2 : MOST_CLIPPED)
    },
    tooLoud: () => loud,
    levelDb: () => level
  }
}
