/** A coming step on the strand: where it stands in time, and how sure that is. */
export type Knot = {
  path: string
  label: string
  shape: import('../protocol/model.ts').KnotShape
  /** Likely, earliest and latest due time. Equal where nothing is open before it. */
  atMs: number
  leastMs: number
  mostMs: number
  /** How long it lasts and how long it wants hands, likely, ms. */
  clockMs: number
  handsMs: number
  /** Follows a loop whose length is not known: drawn faint, with its range. */
  faint: boolean
  /** The loop it belongs to: "pass 1, up to 3". */
  loop: { path: string; round: number; most: number } | null
  /** 0 for the trunk; alongside branches fork to 1, 2, … */
  lane: number
  bench: boolean
  active: boolean
}
