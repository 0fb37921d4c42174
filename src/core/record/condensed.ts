// A printed record has room for three pages; what does not go in is said to be left out, never silently dropped.

/** How much goes in: the longest list, in lines, and the longest text, in letters. */
export type Room = { lines: number; letters: number }

/** From all there is down to what fits three pages whatever the batch was. */
export const rooms: readonly Room[] = [
  { lines: Number.POSITIVE_INFINITY, letters: Number.POSITIVE_INFINITY },
  { lines: 90, letters: 2_000 },
  { lines: 60, letters: 1_200 },
  { lines: 40, letters: 800 },
  { lines: 30, letters: 500 },
  { lines: 24, letters: 400 },
  { lines: 20, letters: 350 },
  { lines: 16, letters: 300 },
  { lines: 12, letters: 250 },
  { lines: 9, letters: 200 },
  { lines: 6, letters: 140 },
  { lines: 4, letters: 100 },
  { lines: 2, letters: 60 }
]

export type Condensed<T> = { head: readonly T[]; left: number; tail: readonly T[] }

/** The first and the last of a long list, and how many lie between: how a batch ended counts as much as how it began. */
export function condensed<T>(all: readonly T[], { lines }: Pick<Room, 'lines'>): Condensed<T> {
  // One line left out would save nothing: the line that says so takes its place.
  if (all.length <= lines + 1) return { head: all, left: 0, tail: [] }
  const first = Math.ceil(lines / 2)
  const last = lines - first
  return { head: all.slice(0, first), left: all.length - lines, tail: all.slice(all.length - last) }
}

/** "and 14 more readings: see the file" */
export function leftWords(left: number, what: string): string {
  return `and ${left} more ${what}: see the file`
}

/** A text of so many letters at most; one that is cut says so, and is cut between words where it has any. Letters are
 * whole signs, not halves of them. */
export function cutWords(text: string, { letters }: Pick<Room, 'letters'>): string {
  const signs = [...text]
  if (signs.length <= letters) return text
  const kept = signs.slice(0, letters + 1).join('')
  const whole = kept.replace(/\s+\S{0,30}$/u, '')
  return `${whole === kept ? signs.slice(0, letters).join('') : whole} … (cut: see the file)`
}
