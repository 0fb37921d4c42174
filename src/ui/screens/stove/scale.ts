// The one scale of the Stove: how high above the water a moment hangs. Compressed, so that the next two minutes are
// told apart and two hours still fit: each ruled stretch takes about a quarter of the strand.

const MINUTE_MS = 60_000

/** Where the strand is cut. */
export const TOP_MS = 120 * MINUTE_MS

/** With 40 s the first ruling (2 min) stands at a quarter of the height. */
const BEND_MS = 40_000
/** How far what is overdue may sink, as a part of the height above the water. */
const DEEPEST = 0.25

export const rulings: readonly { atMs: number; say: string }[] = [
  { atMs: 2 * MINUTE_MS, say: '2 min' },
  { atMs: 10 * MINUTE_MS, say: '10' },
  { atMs: 30 * MINUTE_MS, say: '30' },
  { atMs: TOP_MS, say: '2 h' }
]

const whole = Math.log1p(TOP_MS / BEND_MS)

/** Height of a moment `leftMs` from now: 0 at the water, 1 at the top ruling, below 0 when overdue (not deeper than
 * -1/4). Later is never lower, whatever pot it belongs to. */
export function heightOf(leftMs: number): number {
  if (leftMs < 0) return Math.max(-DEEPEST, -Math.log1p(-leftMs / BEND_MS) / whole)
  return Math.log1p(leftMs / BEND_MS) / whole
}

/** Is it past the top ruling, where the strand is cut? */
export function isCut(leftMs: number): boolean {
  return leftMs > TOP_MS
}
