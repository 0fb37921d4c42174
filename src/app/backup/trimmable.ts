// Where pictures and sound take room: the oldest batches first, for those are looked at least.
import { namedMedia } from '../../core/backup/named-media.ts'
import { mediaBySize, readStream, summariesFrom } from '../../shell/backup/journal-source.ts'
import type { LastBackup, Trimmable } from '../../ui/backup.ts'
import { LAST, type Opened } from './parts.ts'

/** Batches are read in goes of so many, and no more than so many goes: most hold no pictures. */
const GO = 50
const GOES_MOST = 20

export async function trimmable({ connection, kept }: Opened, most: number): Promise<Trimmable[]> {
  const sizes = await mediaBySize(connection)
  const last = await kept.get<LastBackup>(LAST)
  const found: Trimmable[] = []
  let fromMs = -1
  for (let go = 0; go < GOES_MOST && sizes.size > 0; go++) {
    const lines = await summariesFrom(connection, fromMs, GO)
    for (const { potId, streamId, colourway, startedAtMs, status } of lines) {
      // Of a pot that is on, here or elsewhere, nothing is let go.
      if (status === 'running' || status === 'held') continue
      const { standing } = namedMedia(await readStream(connection, streamId))
      const held = [...standing].flatMap((sha256) => ({ sha256, ...sizes.get(sha256) })).filter(isThere)
      if (held.length === 0) continue
      const photos = held.filter(({ mime }) => mime.startsWith('image/')).length
      const bytes = held.reduce((sum, { size }) => sum + size, 0)
      const hashes = held.map(({ sha256 }) => sha256)
      const backedUp = last !== undefined && last.atMs > startedAtMs
      found.push({ potId, colourway, startedAtMs, photos, sounds: held.length - photos, bytes, backedUp, hashes })
      if (found.length === most) return found
    }
    if (lines.length < GO) break
    fromMs = lines.at(-1)?.startedAtMs ?? 0
  }
  return found
}

function isThere(one: {
  sha256: string
  mime?: string
  size?: number
}): one is { sha256: string; mime: string; size: number } {
  return one.mime !== undefined
}
