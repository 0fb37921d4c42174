// Merging: a journal is a set of entries, so two of them are joined by taking all of both. Whoever is asked first, and
// however often, the same entries are there in the end.
import { checksumHolds } from '../pot/read-entry.ts'
import { sorted } from '../pot/sorted.ts'
import type { Aside, RawEntry } from './format.ts'

/** What is to be done to a stream so that it holds the other's entries too. */
export type StreamMerge = {
  /** Entries that were not here. A damaged one stays damaged and is shown so. */
  add: RawEntry[]
  /** Damaged here and whole there: the whole one takes the place. */
  mend: RawEntry[]
  /** What can't stand beside the one that stands under its key: kept, and said. */
  aside: Aside[]
  /** How many are the same here and there. */
  same: number
}

/** The same key with the same bytes is one entry. With other bytes both can't be right: the one that is here stands,
 * unless only the other is whole; the one that does not stand is set aside. */
export function mergeStream(ours: readonly RawEntry[], theirs: readonly RawEntry[]): StreamMerge {
  const merge: StreamMerge = { add: [], mend: [], aside: [], same: 0 }
  const here = new Map(ours.map((entry) => [keyOf(entry), entry]))
  for (const entry of theirs) {
    const key = keyOf(entry)
    const standing = here.get(key)
    if (standing === undefined) {
      here.set(key, entry)
      merge.add.push(entry)
    } else if (wordsOf(standing) === wordsOf(entry)) merge.same += 1
    else if (!isWhole(standing) && isWhole(entry)) {
      here.set(key, entry)
      merge.mend.push(entry)
      merge.aside.push({ why: 'damaged', entry: standing })
    } else merge.aside.push({ why: isWhole(standing) && !isWhole(entry) ? 'damaged' : 'conflict', entry })
  }
  return merge
}

/** The entries of a stream after a merge, in order of their keys. */
export function mergedStream(ours: readonly RawEntry[], { add, mend }: StreamMerge): RawEntry[] {
  const mended = new Map(mend.map((entry) => [keyOf(entry), entry]))
  const all = [...ours.map((entry) => mended.get(keyOf(entry)) ?? entry), ...add]
  return all.sort((a, b) => compare(a.writerId, b.writerId) || a.seq - b.seq)
}

export function keyOf({ streamId, writerId, seq }: RawEntry): string {
  return JSON.stringify([streamId, writerId, seq])
}

/** The same for the same entry whoever wrote its fields down in whatever order. */
export function wordsOf(entry: RawEntry): string {
  return JSON.stringify(sorted(entry))
}

function isWhole(entry: RawEntry): boolean {
  return checksumHolds(entry)
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

/** What of the entries that were set aside elsewhere is to be set aside here too: neither known nor standing. */
export function newAside(known: readonly Aside[], coming: readonly Aside[], standing: readonly RawEntry[]): Aside[] {
  const there = new Set([...known.map(({ entry }) => entry), ...standing].map(wordsOf))
  return coming.filter(({ entry }) => {
    const words = wordsOf(entry)
    if (there.has(words)) return false
    there.add(words)
    return true
  })
}
