// Which item of one list is which of another: a longest common subsequence, weighed by likeness; then what moved.
import type { Path } from './data.ts'

export type Matched = { left: Path | null; right: Path | null; moved: boolean }

/** Under this two items are two things. */
const likeEnough = 0.25
/** What left its place must be this alike to be the same thing elsewhere. */
const movedEnough = 0.85

/** In the order of the right list; what is only in the left stands where it stood. */
export function matched(left: Path[], right: Path[], likeness: (a: Path, b: Path) => number): Matched[] {
  const alike = left.map((a) => right.map((b) => likeness(a, b)))
  const pairs = bestPairs(alike)
  const moved = movedPairs(alike, pairs)
  const rows: Matched[] = []
  let next = 0
  const before = (until: number): void => {
    for (; next < until; next++) {
      if (!pairs.has(next) && !moved.has(next)) rows.push({ left: left[next] ?? null, right: null, moved: false })
    }
  }
  const partner = new Map([...pairs].map(([a, b]) => [b, a]))
  const mover = new Map([...moved].map(([a, b]) => [b, a]))
  for (const [b, path] of right.entries()) {
    const a = partner.get(b)
    if (a !== undefined) {
      before(a)
      next = Math.max(next, a + 1)
      rows.push({ left: left[a] ?? null, right: path, moved: false })
      continue
    }
    const from = mover.get(b)
    rows.push({ left: from === undefined ? null : (left[from] ?? null), right: path, moved: from !== undefined })
  }
  before(left.length)
  return rows
}

/** Pairs in their order whose likeness together is the greatest. Left index to right index. */
function bestPairs(alike: number[][]): Map<number, number> {
  const rows = alike.length
  const columns = alike[0]?.length ?? 0
  const best = Array.from({ length: rows + 1 }, () => new Float64Array(columns + 1))
  const at = (i: number, j: number): number => best[i]?.[j] ?? 0
  const like = (i: number, j: number): number => alike[i]?.[j] ?? 0
  for (let i = rows - 1; i >= 0; i--) {
    for (let j = columns - 1; j >= 0; j--) {
      const paired = like(i, j) >= likeEnough ? at(i + 1, j + 1) + like(i, j) : 0
      const row = best[i]
      if (row) row[j] = Math.max(paired, at(i + 1, j), at(i, j + 1))
    }
  }
  const pairs = new Map<number, number>()
  let [i, j] = [0, 0]
  while (i < rows && j < columns) {
    if (like(i, j) >= likeEnough && at(i, j) === at(i + 1, j + 1) + like(i, j)) pairs.set(i++, j++)
    else if (at(i + 1, j) >= at(i, j + 1)) i++
    else j++
  }
  return pairs
}

/** Of what is left over on both sides, the pairs that are so alike that they can only have moved. */
function movedPairs(alike: number[][], pairs: Map<number, number>): Map<number, number> {
  const taken = new Set(pairs.values())
  const moved = new Map<number, number>()
  for (const [i, row] of alike.entries()) {
    if (pairs.has(i)) continue
    let found = -1
    for (const [j, like] of row.entries()) {
      if (!taken.has(j) && like >= movedEnough && like > (row[found] ?? 0)) found = j
    }
    if (found < 0) continue
    taken.add(found)
    moved.set(i, found)
  }
  return moved
}
