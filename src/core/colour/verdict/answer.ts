// What the verdict answers.
import type { Zone } from '../photo/marks.ts'
import type { TurnWord } from './turn-words.ts'

export type WhyCode =
  // Of 'split' and 'only-lighter'.
  | 'runs-one-way'
  | 'would-have-been-seen'
  // Of 'cannot-tell'.
  | 'wet'
  | 'two-fibres'
  | 'bad-photo'
  | 'no-control'
  | 'flat-series'
  | 'no-repeats'
  | 'too-pale'
  | 'outside-series'
  | 'bad-patch'
  | 'too-few'
  | 'not-one-way'
  | 'too-noisy'
  | 'uneven-light'
  | 'thin-series'

/** `say`: the reason. `settle`: what would settle it, or what to know about it. */
export type Why = { code: WhyCode; say: string; settle: string }

/** Why a position does not count. */
export type LeftOut = 'wicking' | 'too-pale' | 'outside-series' | 'bad-patch'

export type PositionFound = {
  at: number
  band: number
  zone: Zone
  /** L*. */
  depth: number
  /** Null where it can't be told at all: there is no control curve. */
  deltaH: number | null
  /** One standard deviation of it. */
  sd: number | null
  /** Null: it counts. */
  leftOut: LeftOut | null
  /** The control at the same depth, where there is one. */
  control: { hueDeg: number; chroma: number } | null
}

export type SplitVerdict = {
  verdict: 'split' | 'only-lighter' | 'cannot-tell'
  /** Along the skein. */
  deltaH: PositionFound[]
  /** Turn of hue from the first position that counts to the last, at equal depth, in ΔH*; null where there is none. */
  size: { deltaH: number; sd: number } | null
  /** The smallest such turn that would be called a split 95 times of 100; null where nothing could be worked out. */
  smallestVisibleSplit: number | null
  /** How much lighter the skein gets between its positions that count, in L*. */
  lighterBy: number | null
  /** Of 'split': which way, and the band from which it shows. */
  turn: { word: TurnWord; fromBand: number } | null
  why: Why
}
