// Where a reading is taken in a picture.

/** A picture as a canvas gives it: four bytes a pixel, sRGB and opacity. */
export type Photo = { data: Uint8ClampedArray; width: number; height: number }

export type Spot = { x: number; y: number }

/** A rectangle of pixels about `x`, `y`, reaching `halfLong` along and `halfWide` across the direction `turnRad`. */
export type Patch = Spot & { halfLong: number; halfWide: number; turnRad: number }

/** A square spot, `half` pixels to each side. */
export function spot(x: number, y: number, half: number): Patch {
  return { x, y, halfLong: half, halfWide: half, turnRad: 0 }
}

/** How much of its stretch a patch on a line takes: the rest keeps neighbours apart. */
const shareOfStretch = 0.7

/** `count` patches along a line of `widePx` pixels, one in the middle of each of as many equal stretches. */
export function patchesAlong(from: Spot, to: Spot, widePx: number, count: number): Patch[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const stretch = Math.hypot(dx, dy) / count
  return Array.from({ length: count }, (_, nth) => {
    const at = (nth + 0.5) / count
    return {
      x: from.x + at * dx,
      y: from.y + at * dy,
      halfLong: (stretch * shareOfStretch) / 2,
      halfWide: widePx / 2,
      turnRad: Math.atan2(dy, dx)
    }
  })
}
