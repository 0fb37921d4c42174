// The word that was probably meant.

/** The nearest of some words within two slips of the finger (one in a short word); null: none is near. */
export function nearest(found: string, known: Iterable<string>): string | null {
  const written = found.slice(0, 40).toLowerCase()
  let best: string | null = null
  let bestSlips = written.length < 5 ? 2 : 3
  for (const word of known) {
    const slips = slipsBetween(written, word.toLowerCase(), bestSlips)
    if (slips < bestSlips) {
      best = word
      bestSlips = slips
    }
  }
  return best
}

/** Letters to change, drop, add or swap with their neighbour; stops counting at `most`. */
function slipsBetween(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) >= most) return most
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, i) => i)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let slips = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1))
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (swapped) slips = Math.min(slips, (before[j - 2] ?? 0) + 1)
      row.push(slips)
    }
    before = last
    last = row
  }
  return last[b.length] ?? most
}

/** "Did you mean lower?" or, where nothing is near, what there is. */
export function suggest(found: string, known: readonly string[], what: string): string {
  const near = nearest(found, known)
  if (near !== null) return `write ${near}`
  if (known.length === 0) return `there is no ${what} to name here`
  return `${what}: ${known.slice(0, 30).join(', ')}`
}
