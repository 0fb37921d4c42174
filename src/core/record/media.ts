// Pictures and sound, each at its step and time. The record names them by the SHA-256 of their bytes.
import type { Entry } from '../pot/entry.ts'
import type { PotEvent } from '../pot/events.ts'
import type { Programme } from '../protocol/model.ts'
import { labelOf } from './event-words.ts'
import type { MediaRecord } from './record.ts'
import { saidOf } from './said.ts'

type PotEntry = Entry<PotEvent>

/** `entries`: all of them, in the order of writing. What was undone is named too: its bytes are still there to be let
 * go. A picture that was let go and later noted anew stands. */
export function mediaOf(
  entries: readonly PotEntry[],
  isWithdrawn: (entry: PotEntry) => boolean,
  programme: Programme,
  dyer: string | null
): MediaRecord[] {
  const found: MediaRecord[] = []
  for (const entry of entries) {
    const { event } = entry
    if (event.type === 'MediaTrimmed') {
      const trimmed = { why: event.why, said: saidOf(entry, dyer) }
      for (const media of found) if (media.sha256 === event.sha256) media.trimmed ??= trimmed
    }
    const named = namedBy(event)
    if (named === null || !('path' in event)) continue
    const { path } = event
    const withdrawn = isWithdrawn(entry)
    found.push({ ...named, path, label: labelOf(programme, path), trimmed: null, withdrawn, said: saidOf(entry, dyer) })
  }
  return found
}

type Named = Omit<MediaRecord, 'path' | 'label' | 'trimmed' | 'withdrawn' | 'said'>

function namedBy(event: PotEvent): Named | null {
  if (event.type === 'VoiceNoted') return { kind: 'voice', what: 'Voice note', ...event.media, ...noPixels }
  // Before pictures were kept a photo was only named: such an entry has no `media`.
  if (event.type !== 'PhotoNoted' || !event.media) return null
  return { kind: 'photo', what: event.what, ...event.media, lengthMs: null }
}

const noPixels = { widthPx: null, heightPx: null }
