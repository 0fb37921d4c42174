// Which pictures and sounds a stream still wants. Said by pairs of entries, so that it is the same in whatever order
// entries came: a deed of letting go counts for what was noted before it.
import type { RawEntry } from './format.ts'

type Noted = RawEntry & { recordedAtMs: number }

/** `standing`: named and not let go since. `gone`: named, and let go. Reads whatever of an entry is there: a damaged one
 * names its bytes too. */
export function namedMedia(entries: readonly RawEntry[]): { standing: Set<string>; gone: Set<string> } {
  const notes: { sha256: string; at: Noted }[] = []
  const trims: { sha256: string; at: Noted }[] = []
  for (const entry of entries) {
    const event = (entry as { event?: { type?: unknown; sha256?: unknown; media?: { sha256?: unknown } | null } }).event
    const at = entry as Noted
    const named = event?.media?.sha256
    if (typeof named === 'string') notes.push({ sha256: named, at })
    if (event?.type === 'MediaTrimmed' && typeof event.sha256 === 'string') trims.push({ sha256: event.sha256, at })
  }
  const standing = new Set<string>()
  for (const { sha256, at } of notes) {
    if (!trims.some((trim) => trim.sha256 === sha256 && isBefore(at, trim.at))) standing.add(sha256)
  }
  const gone = new Set(notes.map(({ sha256 }) => sha256).filter((sha256) => !standing.has(sha256)))
  return { standing, gone }
}

function isBefore(note: Noted, trim: Noted): boolean {
  return note.writerId === trim.writerId ? note.seq < trim.seq : note.recordedAtMs <= trim.recordedAtMs
}
