import type { MediaBytes } from '../../core/pot/media.ts'

/** Pictures and sound as lines of JSON, for the file that rescues what could not be stored. */
export function mediaLines(media: readonly MediaBytes[]): string[] {
  return media.map(({ sha256, mime, bytes }) =>
    JSON.stringify({ sha256, mime, base64: base64Of(new Uint8Array(bytes)) })
  )
}

function base64Of(bytes: Uint8Array): string {
  let text = ''
  // In pieces: a function takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8_192) text += String.fromCharCode(...bytes.subarray(at, at + 8_192))
  return btoa(text)
}
