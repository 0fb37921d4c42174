// A patch's light made a colour, with how sure it is.
import { type Covariance, covarianceOf, scaled } from '../covariance.ts'
import type { Lab } from '../lab.ts'
import type { Linear } from '../linear.ts'
import { labByCard } from '../of-card.ts'
import type { PatchReading } from './patch-reading.ts'

export type Reading = {
  /** Against `photoWhite`. */
  lab: Lab
  /** How the pieces of the patch stray about it. */
  spread: Covariance
  /** How sure the average is, from that: `spread` over the number of pieces. */
  doubt: Covariance
  /** Pixels looked at, and the share of them left out as not of the yarn. */
  count: number
  leftOut: number
}

export function readingOf(patch: PatchReading, card: Linear, cardShare: number): Reading {
  const spread = covarianceOf(patch.pieces.map((piece) => labByCard(piece, card, cardShare)))
  return {
    lab: labByCard(patch.mean, card, cardShare),
    spread,
    doubt: scaled(spread, 1 / Math.max(1, patch.pieces.length)),
    count: patch.count,
    leftOut: patch.leftOut
  }
}
