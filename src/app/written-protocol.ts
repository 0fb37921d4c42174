// Saving a text as a protocol: with the reader, so loaded only when something is saved.
import { crc32 } from '../core/pot/crc.ts'
import { titleKey } from '../core/protocol/title-key.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { StoredProtocol } from '../ui/kitchen.ts'
import type { Came, KitchenWriting } from '../ui/writing.ts'
import { protocolOf } from './protocol-of.ts'
import { PROTOCOL_PREFIX } from './stored-protocols.ts'
import { keepVersion, versionsOf } from './versions.ts'

/** What has the same title is the same protocol, in another version. The same text twice is one version. */
export async function saveWritten(
  kept: Kept,
  text: string,
  nowMs: number,
  came?: Came
): ReturnType<KitchenWriting['saveProtocol']> {
  const read = protocolOf('', text)
  if (!read.ok) return { ok: false, problems: read.problems, say: 'It can’t be run yet: mend the problems first.' }
  const { title } = read.stored.protocol
  const stored = { ...read.stored, id: `own-${crc32(titleKey(title))}`, file: `${title}.yaml` }
  try {
    const older = await joined(kept, came, title)
    const before = [...(await versionsOf(kept, stored.id)), ...(older ? [older] : [])]
    const [newest] = before
    if (newest?.text === text && newest.written) return { ok: true, stored: newest }
    // A clock that was set back must not make an old version the newest.
    const savedAtMs = Math.max(nowMs, (newest?.written?.savedAtMs ?? 0) + 1)
    const written = { savedAtMs, versions: before.length + 1, ...(came ? { cameAs: came.cameAs } : {}) }
    if (older) await keepVersion(kept, { ...older, id: stored.id }, savedAtMs - 1, String(crc32(older.text)))
    await keepVersion(kept, { ...stored, written }, savedAtMs, String(crc32(text)))
    // It is a version now. Left where it was, it would only be listed twice.
    if (older) await kept.remove(PROTOCOL_PREFIX + older.id).catch(() => {})
    return { ok: true, stored: { ...stored, written } }
  } catch {
    return { ok: false, problems: [], say: 'Not saved: the browser could not store it. The draft is still here.' }
  }
}

/** The protocol without versions that becomes the first of them. */
async function joined(kept: Kept, came: Came | undefined, title: string): Promise<StoredProtocol | null> {
  const older = came?.joins ? await kept.get<StoredProtocol>(PROTOCOL_PREFIX + came.joins) : undefined
  return older && titleKey(older.protocol.title) === titleKey(title) ? older : null
}
