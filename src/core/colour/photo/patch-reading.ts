// One reading: the average light of a patch, without what does not belong to the yarn.
import { type Linear, lightOfCode } from '../linear.ts'
import type { Patch, Photo } from './patch.ts'

/** The patch is divided into so many pieces each way: how much they differ says how sure its average is. Single pixels
 * would say far too little, for neighbours in a strand are alike. */
const piecesEachWay = 4
/** More pixels make no better average, only a slower one. */
const mostPixels = 4_000
/** Further than so many standard deviations from the middle is a tie, a shadow or lint. */
const farSd = 3
/** The standard deviation of a normal spread over the median distance from its middle (a property of the normal curve). */
const sdOverMedian = 1.4826

export type PatchReading = {
  mean: Linear
  /** The average of each piece of the patch that has enough pixels left. */
  pieces: Linear[]
  /** Pixels looked at. */
  count: number
  /** Share of them left out as not of the yarn. */
  leftOut: number
  /** Share of them with a channel at the top, and at the bottom, of what the picture can tell. */
  clippedHigh: number
  clippedLow: number
}

/** Null where the patch lies outside the picture or holds no pixel. Touches the pixels of the patch only. */
export function readPatch(photo: Photo, patch: Patch): PatchReading | null {
  const { places, piece } = pixelsOf(photo, patch)
  const count = places.length
  if (count === 0) return null
  const keep = kept(photo.data, places)
  const sums = new Float64Array(4 * piecesEachWay ** 2)
  let [high, low, left] = [0, 0, 0]
  for (let nth = 0; nth < count; nth++) {
    const at = places[nth] as number
    const [r, g, b] = [photo.data[at] as number, photo.data[at + 1] as number, photo.data[at + 2] as number]
    if (Math.max(r, g, b) >= 254) high++
    if (Math.min(r, g, b) <= 1) low++
    if (!keep(r, g, b)) {
      left++
      continue
    }
    const sum = 4 * (piece[nth] as number)
    sums[sum] = (sums[sum] as number) + (lightOfCode[r] as number)
    sums[sum + 1] = (sums[sum + 1] as number) + (lightOfCode[g] as number)
    sums[sum + 2] = (sums[sum + 2] as number) + (lightOfCode[b] as number)
    sums[sum + 3] = (sums[sum + 3] as number) + 1
  }
  return { ...averages(sums), count, leftOut: left / count, clippedHigh: high / count, clippedLow: low / count }
}

function averages(sums: Float64Array): { mean: Linear; pieces: Linear[] } {
  const all: Linear[] = []
  const total = [0, 0, 0, 0]
  for (let sum = 0; sum < sums.length; sum += 4) {
    for (let part = 0; part < 4; part++) total[part] = (total[part] as number) + (sums[sum + part] as number)
  }
  const of = (r: number, g: number, b: number, n: number): Linear => ({ r: r / n, g: g / n, b: b / n })
  const usual = (total[3] as number) / (sums.length / 4)
  for (let sum = 0; sum < sums.length; sum += 4) {
    const [r, g, b, n] = sums.subarray(sum, sum + 4) as unknown as [number, number, number, number]
    // A piece that is mostly tie says nothing of the yarn.
    if (n >= usual / 4) all.push(of(r, g, b, n))
  }
  const [r, g, b, n] = total as [number, number, number, number]
  return { mean: of(r, g, b, n), pieces: all }
}

type Pixels = { places: Int32Array; piece: Uint8Array }

function pixelsOf({ width, height }: Photo, patch: Patch): Pixels {
  const { x, y, halfLong, halfWide, turnRad } = patch
  const step = Math.max(1, Math.sqrt((4 * halfLong * halfWide) / mostPixels))
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)]
  const [long, wide] = [Math.max(1, Math.floor((2 * halfLong) / step)), Math.max(1, Math.floor((2 * halfWide) / step))]
  const places = new Int32Array(long * wide)
  const piece = new Uint8Array(long * wide)
  let count = 0
  for (let i = 0; i < long; i++) {
    const u = (i + 0.5 - long / 2) * step
    for (let j = 0; j < wide; j++) {
      const v = (j + 0.5 - wide / 2) * step
      const [column, row] = [Math.floor(x + u * cos - v * sin), Math.floor(y + u * sin + v * cos)]
      // A place that is no number lies nowhere.
      if (!(column >= 0 && row >= 0 && column < width && row < height)) continue
      places[count] = 4 * (row * width + column)
      piece[count] = Math.floor((i * piecesEachWay) / long) * piecesEachWay + Math.floor((j * piecesEachWay) / wide)
      count++
    }
  }
  return { places: places.subarray(0, count), piece: piece.subarray(0, count) }
}

/** What belongs to the yarn: within `farSd` of the middle in every channel. The middle is the median and the spread the
 * median distance from it, which up to half of a patch that is something else does not move far. */
function kept(data: Uint8ClampedArray, places: Int32Array): (r: number, g: number, b: number) => boolean {
  const limits = [0, 1, 2].map((channel) => {
    const codes = new Uint32Array(256)
    for (const at of places) codes[data[at + channel] as number] = (codes[data[at + channel] as number] as number) + 1
    const middle = middleOf(codes, places.length)
    const away = new Uint32Array(256)
    for (let code = 0; code < 256; code++) {
      const distance = Math.abs(code - middle)
      away[distance] = (away[distance] as number) + (codes[code] as number)
    }
    const far = farSd * sdOverMedian * Math.max(1, middleOf(away, places.length))
    return [middle - far, middle + far] as const
  }) as [readonly [number, number], readonly [number, number], readonly [number, number]]
  const [[r0, r1], [g0, g1], [b0, b1]] = limits
  return (r, g, b) => r >= r0 && r <= r1 && g >= g0 && g <= g1 && b >= b0 && b <= b1
}

function middleOf(codes: Uint32Array, count: number): number {
  let seen = 0
  for (let code = 0; code < 256; code++) {
    seen += codes[code] as number
    if (2 * seen >= count) return code
  }
  return 255
}
