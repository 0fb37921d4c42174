import type { Entry } from '../pot/entry.ts'
import type { By, PotEvent } from '../pot/events.ts'
import { localIso } from './local-time.ts'
import type { Said } from './record.ts'

/** What a person writes later than this after it happened is marked as written late. Common practice, no source. */
const LATE_ENTRY_MS = 60_000

export function saidOf(entry: Entry<PotEvent>, dyer: string | null): Said {
  const { atMs, recordedAtMs, tzOffsetMin, by, writerId, seq } = entry
  const behindMs = recordedAtMs - atMs
  return {
    entry: { writerId, seq },
    atMs,
    at: localIso(atMs, tzOffsetMin),
    recordedAtMs,
    tzOffsetMin,
    who: whoOf(by, dyer),
    by: by.kind,
    writtenLateMs: by.kind === 'person' && behindMs > LATE_ENTRY_MS ? behindMs : null,
    ...(by.kind === 'person' && by.timed === 'cue' ? { atCue: true } : {})
  }
}

function whoOf(by: By, dyer: string | null): string {
  switch (by.kind) {
    case 'person':
      return `${by.name ?? dyer ?? 'the dyer'}, by ${by.via}`
    case 'clock':
      return 'the clock'
    case 'reading':
      return `reading: ${by.from}`
  }
}
