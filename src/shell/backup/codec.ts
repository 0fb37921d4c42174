import type { Codec } from '../../core/backup/format.ts'
import { sha256Of } from '../media/sha256.ts'

export const browserCodec: Codec = {
  encode: (text) => new TextEncoder().encode(text),
  // A mark of byte order is a part of what was written.
  decode: (bytes) => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes),
  sha256: (bytes) => sha256Of(bytes as Uint8Array<ArrayBuffer>)
}
