// A printed record has room for three pages; what does not go in is said to be left out, never silently dropped.

/** How much goes in: the longest list, in lines, the longest text, in letters, and how many photos. */
export type Room = { lines: number; letters: number; photos: number }

/** From all there is down to what fits three pages whatever the batch was. */
export const rooms: readonly Room[] = [
  { lines: Number.POSITIVE_INFINITY, letters: Number.POSITIVE_INFINITY, photos: 24 },
  { lines: 90, letters: 2_000, photos: 24 },
  { lines: 60, letters: 1_200, photos: 16 },
  { lines: 40, letters: 800, photos: 12 },
  { lines: 30, letters: 500, photos: 8 },
  { lines: 24, letters: 400, photos: 8 },
  { lines: 20, letters: 350, photos: 8 },
  { lines: 16, letters: 300, photos: 8 },
  { lines: 12, letters: 250, photos: 4 },
  { lines: 9, letters: 200, photos: 4 },
  { lines: 6, letters: 140, photos: 4 },
  { lines: 4, letters: 100, photos: 4 },
  { lines: 2, letters: 60, photos: 0 }
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

/** The first and the last of the photos, in rows that are full, and how many were left out. */
export function photosIn<T>(
  all: readonly T[],
  { photos }: Pick<Room, 'photos'>
): { shown: readonly T[]; left: number } {
  if (all.length <= photos) return { shown: all, left: 0 }
  const first = Math.ceil(photos / 2)
  const last = all.slice(all.length - (photos - first))
  return { shown: [...all.slice(0, first), ...last], left: all.length - photos }
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
