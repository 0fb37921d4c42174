// One time axis for what was planned and what was done: long waits are cut, the rest keeps its proportions.

/** A place where the axis leaves time out: where it lies, and how long it was. */
export type Cut = { at: number; lengthMs: number }
export type TimeAxis = { place: (atMs: number) => number; cuts: Cut[]; length: number }

/** A cut stretch takes this much room, in the unit of `length`. */
const CUT_ROOM = 44

/** Lays `timesMs` out on 0 to `length`. A stretch without any of them longer than a quarter of the whole, and than half
 * an hour, is cut to a fixed room. What is nearly at the same time still gets `leastRoom` (half of the length in all at
 * most), so that it can be told apart. Order is always kept: a later time never stands before an earlier one. */
export function timeAxis(timesMs: readonly number[], length: number, leastRoom = 0): TimeAxis {
  const times = [...new Set(timesMs)].sort((a, b) => a - b)
  const gaps = times.slice(1).map((t, i) => t - (times[i] as number))
  const whole = gaps.reduce((sum, gap) => sum + gap, 0)
  const longest = Math.max(30 * 60_000, whole / 4)
  const cut = gaps.map((gap) => gap > longest)
  const cutCount = cut.filter(Boolean).length
  const plainCount = gaps.length - cutCount
  const plainMs = gaps.reduce((sum, gap, i) => sum + (cut[i] ? 0 : gap), 0)
  const cutRoom = Math.min(CUT_ROOM, length / (2 * Math.max(1, cutCount)))
  const least = plainCount > 0 ? Math.min(leastRoom, length / 2 / plainCount) : 0
  const room = Math.max(0, length - cutCount * cutRoom - plainCount * least)
  const places = [0]
  const cuts: Cut[] = []
  gaps.forEach((gap, i) => {
    const from = places[i] as number
    const step = cut[i] ? cutRoom : least + (plainMs > 0 ? (gap / plainMs) * room : 0)
    if (cut[i]) cuts.push({ at: from + step / 2, lengthMs: gap })
    places.push(from + step)
  })
  return { place: (atMs) => between(times, places, atMs), cuts, length: places.at(-1) ?? 0 }
}

function between(times: number[], places: number[], atMs: number): number {
  const after = times.findIndex((t) => t >= atMs)
  if (after <= 0) return after === 0 ? (places[0] ?? 0) : (places.at(-1) ?? 0)
  const [t0, t1] = [times[after - 1] as number, times[after] as number]
  const [p0, p1] = [places[after - 1] as number, places[after] as number]
  return p0 + ((atMs - t0) / (t1 - t0)) * (p1 - p0)
}

/** Slides labels apart along a line so that none covers another: each gets `room`, in order, as near to its own place
 * as can be, within 0 to `length` where there is room at all. */
export function slide(places: readonly number[], rooms: readonly number[], length: number): number[] {
  const at: number[] = []
  places.forEach((place, i) => {
    const half = (rooms[i] as number) / 2
    const least = i === 0 ? half : (at[i - 1] as number) + (rooms[i - 1] as number) / 2 + half
    at.push(Math.max(place, least))
  })
  // What ran over the end is pushed back from there.
  for (let i = at.length - 1; i >= 0; i--) {
    const half = (rooms[i] as number) / 2
    const most = i === at.length - 1 ? length - half : (at[i + 1] as number) - (rooms[i + 1] as number) / 2 - half
    at[i] = Math.max(Math.min(at[i] as number, most), half)
  }
  return at
}
