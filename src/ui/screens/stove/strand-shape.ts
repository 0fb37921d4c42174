// From knots in time to a strand in space. Heights are px from the water upwards; the drawing turns them over.
import type { Knot } from '../../../core/pot/knot.ts'
import type { KnotShape } from '../../../core/protocol/model.ts'
import { heightOf, isCut, TOP_MS } from './scale.ts'

export type DrawnKnot = {
  key: string
  shape: KnotShape
  at: number
  lane: number
  faint: boolean
  label: string
  atMs: number
}
export type Ply = { key: string; from: number; to: number; lane: number }
export type Loop = { key: string; from: number; to: number; lane: number; say: string; short: string }
export type Fork = { lane: number; from: number; to: number }
export type Range = { key: string; from: number; to: number; lane: number }

export type StrandShape = {
  knots: DrawnKnot[]
  plies: Ply[]
  loops: Loop[]
  forks: Fork[]
  ranges: Range[]
  /** The strand is cut past the top ruling: how long the whole still is, ms; null: it is all there. */
  cutMs: number | null
  /** Where the last knot hangs; above it no yarn is needed. */
  top: number
}

/** A mark too small to be told from its neighbour is still a mark. */
const PLY_LEAST_PX = 20
/** A range narrower than this is no news. */
const RANGE_LEAST_PX = 6
const LOOP_TALL_PX = 34

/** `height`: px from the water to the top ruling. */
export function strandShape(knots: Knot[], nowMs: number, height: number): StrandShape {
  const px = (atMs: number): number => heightOf(atMs - nowMs) * height
  const near = knots.filter((k) => !isCut(k.atMs - nowMs))
  const last = knots.reduce((most, k) => Math.max(most, k.atMs), nowMs)
  const drawn = near.map((k) => ({
    key: k.path,
    shape: k.shape,
    at: px(k.atMs),
    lane: k.lane,
    faint: k.faint,
    label: k.label,
    atMs: k.atMs
  }))
  return {
    knots: drawn,
    plies: plies(near, nowMs, px),
    loops: loops(near, px),
    forks: forks(near, px),
    ranges: near
      .filter(isGuessed)
      .map((k) => range(k, nowMs, px))
      .filter((r) => r.to - r.from > RANGE_LEAST_PX),
    cutMs: knots.some((k) => isCut(k.atMs - nowMs)) ? last - nowMs : null,
    top: drawn.reduce((most, k) => Math.max(most, k.at), 0)
  }
}

function plies(knots: Knot[], nowMs: number, px: (atMs: number) => number): Ply[] {
  return knots
    .filter((k) => k.handsMs > 0)
    .map((k) => {
      const from = px(Math.max(k.atMs, nowMs))
      const to = Math.max(from + PLY_LEAST_PX, px(Math.max(k.atMs, nowMs) + k.handsMs))
      return { key: k.path, from, to, lane: k.lane }
    })
}

/** One loop of yarn for each repeat whose length nobody knows, about its knots. */
function loops(knots: Knot[], px: (atMs: number) => number): Loop[] {
  const byPath = new Map<string, Loop>()
  for (const { loop, atMs, lane } of knots) {
    if (!loop) continue
    const at = px(atMs)
    const known = byPath.get(loop.path)
    if (known) {
      known.from = Math.min(known.from, at)
      known.to = Math.max(known.to, at + LOOP_TALL_PX)
    } else {
      const pass = Math.min(loop.round, loop.most)
      byPath.set(loop.path, {
        key: loop.path,
        from: at,
        to: at + LOOP_TALL_PX,
        lane,
        say: `pass ${pass}, up to ${loop.most}`,
        short: `${pass} of ${loop.most}`
      })
    }
  }
  return [...byPath.values()]
}

/** Branches that run alongside leave the trunk at the water and come back after their last knot. */
function forks(knots: Knot[], px: (atMs: number) => number): Fork[] {
  const lanes = [...new Set(knots.map((k) => k.lane))].filter((lane) => lane > 0)
  return lanes.map((lane) => {
    const ats = knots.filter((k) => k.lane === lane).map((k) => px(k.atMs))
    return { lane, from: Math.min(0, ...ats), to: Math.max(...ats) + 26 }
  })
}

/** Its time has a range that is worth a mark: nobody knows what comes before it, or its thermometer says when. */
export function isGuessed({ faint, active, leastMs, mostMs }: Knot): boolean {
  return faint || (active && mostMs > leastMs)
}

function range(knot: Knot, nowMs: number, px: (atMs: number) => number): Range {
  const latest = Math.min(knot.mostMs, nowMs + TOP_MS)
  return { key: knot.path, from: px(knot.leastMs), to: px(latest), lane: knot.lane }
}
