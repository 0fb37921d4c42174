// Pictures and sound. A journal entry names them by the SHA-256 of their bytes; the bytes lie in a store of their own.
import type { Refusal } from './commands.ts'
import { refuse } from './tell.ts'

export type PhotoMedia = { sha256: string; mime: string; bytes: number; widthPx: number; heightPx: number }
export type VoiceMedia = { sha256: string; mime: string; bytes: number; lengthMs: number }

/** The bytes themselves, on their way to the store. */
export type MediaBytes = { sha256: string; mime: string; bytes: ArrayBuffer }

/** A photo is scaled to this before it is stored; a voice note ends by itself at that. */
export const PHOTO_PIXELS_MOST = 2_000_000
export const VOICE_LENGTH_MOST_MS = 30_000
/** Two megapixels of JPEG, or half a minute of speech, stay far below this. */
const BYTES_MOST = 10_000_000

/** What is wrong with a photo that is to be noted; null: nothing. */
export function badPhoto(what: string, media: PhotoMedia | null): Refusal | null {
  if (!what.trim()) return refuse('empty', 'Say what the photo shows.').refusal
  if (media === null) return null
  const bad = badMedia(media, 'image/', 'The picture')
  if (bad) return bad
  const { widthPx, heightPx } = media
  const whole = Number.isInteger(widthPx) && Number.isInteger(heightPx) && widthPx > 0 && heightPx > 0
  if (whole && widthPx * heightPx <= PHOTO_PIXELS_MOST) return null
  return refuse('out-of-range', 'A picture is kept with at most 2 megapixels.').refusal
}

/** What is wrong with a voice note; null: nothing. */
export function badVoice(media: VoiceMedia): Refusal | null {
  const bad = badMedia(media, 'audio/', 'The voice note')
  if (bad) return bad
  if (!(media.lengthMs > 0)) return refuse('empty', 'The voice note is empty.').refusal
  if (media.lengthMs <= VOICE_LENGTH_MOST_MS) return null
  return refuse('too-long', 'A voice note lasts at most 30 s.').refusal
}

export function badTrim(sha256: string, why: string): Refusal | null {
  if (!isSha256(sha256)) return refuse('no-such-media', 'No picture or sound has that name.').refusal
  return why.trim() ? null : refuse('needs-reason', 'Say why it is let go.').refusal
}

function badMedia({ sha256, mime, bytes }: Omit<MediaBytes, 'bytes'> & { bytes: number }, kind: string, what: string) {
  if (!isSha256(sha256)) return refuse('no-such-media', `${what} has no name.`).refusal
  if (!mime.startsWith(kind)) return refuse('out-of-range', `${what} is of another kind: ${mime}.`).refusal
  if (!(Number.isInteger(bytes) && bytes > 0)) return refuse('empty', `${what} is empty.`).refusal
  return bytes <= BYTES_MOST ? null : refuse('out-of-range', `${what} is larger than 10 MB.`).refusal
}

function isSha256(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text)
}
