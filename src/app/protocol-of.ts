// The reader and all it needs, in one piece that is loaded when a file is opened.
import { crc32 } from '../core/pot/crc.ts'
import type { Problem } from '../core/protocol/model.ts'
import { readProtocol } from '../core/protocol/read.ts'
import type { StoredProtocol } from '../ui/kitchen.ts'

/** The same text is the same protocol, whatever its file is called. */
export function protocolOf(
  file: string,
  text: string
): { ok: true; stored: StoredProtocol } | { ok: false; problems: Problem[] } {
  const read = readProtocol(text)
  if (!read.ok) return { ok: false, problems: read.problems }
  return { ok: true, stored: { id: `file-${crc32(text)}`, file, text, protocol: read.protocol, from: 'file' } }
}
