// Pictures and sound on their way to the store, beside the entries that name them.
import type { Refusal } from '../core/pot/commands.ts'
import type { MediaBytes } from '../core/pot/media.ts'
import { refuse } from '../core/pot/tell.ts'
import type { Part, Pending, Room } from './room.ts'

/** A command that names bytes must bring them: an entry about a picture that nobody has would be a loss in silence. */
export function notCarried(parts: readonly Part[], media: readonly MediaBytes[]): Refusal | null {
  for (const { command } of parts) {
    const named = command.type === 'NotePhoto' || command.type === 'NoteVoice' ? command.media : null
    if (!named) continue
    const carried = media.find(({ sha256 }) => sha256 === named.sha256)
    if (carried?.bytes.byteLength === named.bytes && carried.mime === named.mime) continue
    return refuse('no-such-media', 'The picture or the sound did not come with its note. Take it again.').refusal
  }
  return null
}

/** The storage is full: what waits with pictures or sound gives way, so that the small entries of an act still find room.
 * Null: nothing was so large. The pots are to be read again, for the count of their entries has changed; where they
 * can't be, what is given back takes its place again, or the count would have a gap. */
export function giveWay(room: Room): (() => void) | null {
  const before = room.pending
  const large = before.filter(({ media }) => media.length > 0)
  if (large.length === 0) return null
  for (const pending of large) pending.refusal = noRoom
  room.pending = before.filter((pending) => !large.includes(pending))
  return () => {
    for (const pending of large) pending.refusal = null
    room.pending = before
  }
}

const noRoom: Refusal = {
  code: 'no-room',
  say: 'The storage of this device is full: this picture or voice note is not kept. All else is written down.'
}

export function mediaOf(pending: readonly Pending[]): MediaBytes[] {
  return pending.flatMap(({ media }) => media)
}
