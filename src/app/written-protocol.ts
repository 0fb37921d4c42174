// Saving what was written as a protocol: with the reader, so loaded only when something is saved.
import { crc32 } from '../core/pot/crc.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { KitchenWriting } from '../ui/writing.ts'
import { protocolOf } from './protocol-of.ts'
import { keepVersion, versionsOf } from './versions.ts'

/** What has the same title is the same protocol, in another version. The same text twice is one version. */
export async function saveWritten(kept: Kept, text: string, nowMs: number): ReturnType<KitchenWriting['saveProtocol']> {
  const read = protocolOf('', text)
  if (!read.ok) return { ok: false, problems: read.problems, say: 'It can’t be run yet: mend the problems first.' }
  const { title } = read.stored.protocol
  const stored = { ...read.stored, id: `own-${crc32(title.trim().toLowerCase())}`, file: `${title}.yaml` }
  try {
    const before = await versionsOf(kept, stored.id)
    const [newest] = before
    if (newest?.text === text) return { ok: true, stored: newest }
    // A clock that was set back must not make an old version the newest.
    const savedAtMs = Math.max(nowMs, (newest?.written?.savedAtMs ?? 0) + 1)
    await keepVersion(kept, stored, savedAtMs, String(crc32(text)))
    return { ok: true, stored: { ...stored, written: { savedAtMs, versions: before.length + 1 } } }
  } catch {
    return { ok: false, problems: [], say: 'Not saved: the browser could not store it. The draft is still here.' }
  }
}
