// Where pictures and sound take room: the oldest batches first, for those are looked at least. What was kept of a batch's
// skein stands with its batch.
import type { RawEntry } from '../../core/backup/format.ts'
import { namedMedia } from '../../core/backup/named-media.ts'
import { swatchIdOf, swatchStream } from '../../session/swatches.ts'
import { mediaBySize, readStream, readSummary, streamIds, summariesFrom } from '../../shell/backup/journal-source.ts'
import type { LastBackup, Trimmable } from '../../ui/backup.ts'
import { LAST, type Opened } from './parts.ts'

/** Batches are read in goes of so many, and no more than so many goes: most hold no pictures. */
const GO = 50
const GOES_MOST = 20

type Sizes = Awaited<ReturnType<typeof mediaBySize>>
type Around = { connection: Opened['connection']; sizes: Sizes; backedUpMs: number }

export async function trimmable({ connection, kept }: Opened, most: number): Promise<Trimmable[]> {
  const sizes = await mediaBySize(connection)
  if (sizes.size === 0) return []
  const last = await kept.get<LastBackup>(LAST)
  const around = { connection, sizes, backedUpMs: last?.atMs ?? Number.NEGATIVE_INFINITY }
  const found = [...(await ofBatches(around, most)), ...(await ofNoBatch(around))]
  return found.sort((one, other) => one.startedAtMs - other.startedAtMs).slice(0, most)
}

async function ofBatches(around: Around, most: number): Promise<Trimmable[]> {
  const { connection } = around
  const found: Trimmable[] = []
  let fromMs = -1
  for (let go = 0; go < GOES_MOST; go++) {
    const lines = await summariesFrom(connection, fromMs, GO)
    for (const { potId, streamId, colourway, startedAtMs, status } of lines) {
      // Of a pot that is on, here or elsewhere, nothing is let go.
      if (status === 'running' || status === 'held') continue
      const pot = await readStream(connection, streamId)
      const held = heldIn(around, pot, await readStream(connection, swatchStream(potId)))
      if (held !== null) found.push({ potId, colourway, startedAtMs, ...held })
      if (found.length === most) return found
    }
    if (lines.length < GO) break
    fromMs = lines.at(-1)?.startedAtMs ?? 0
  }
  return found
}

/** Skeins that were judged by themselves. */
async function ofNoBatch(around: Around): Promise<Trimmable[]> {
  const { connection } = around
  const found: Trimmable[] = []
  for (const streamId of await streamIds(connection)) {
    const id = swatchIdOf(streamId)
    if (id === null || (await readSummary(connection, `pot/${id}`)) !== undefined) continue
    const entries = await readStream(connection, streamId)
    const held = heldIn(around, [], entries)
    const startedAtMs = Math.min(...entries.map(recordedAtMs))
    if (held !== null) found.push({ potId: id, colourway: 'Skein of no batch', startedAtMs, ...held })
  }
  return found
}

type Held = Omit<Trimmable, 'potId' | 'colourway' | 'startedAtMs'>

/** What these streams hold and may let go; null: nothing. */
function heldIn({ sizes, backedUpMs }: Around, pot: readonly RawEntry[], swatch: readonly RawEntry[]): Held | null {
  const standing = (entries: readonly RawEntry[]): string[] =>
    [...namedMedia(entries).standing].filter((sha256) => sizes.has(sha256))
  const [hashes, swatchHashes] = [standing(pot), standing(swatch)]
  const all = [...new Set([...hashes, ...swatchHashes])]
  if (all.length === 0) return null
  const photos = all.filter((sha256) => sizes.get(sha256)?.mime.startsWith('image/')).length
  const bytes = all.reduce((sum, sha256) => sum + (sizes.get(sha256)?.size ?? 0), 0)
  // A skein is photographed days after its pot: the start of the batch says nothing of it.
  const newestMs = Math.max(...[...pot, ...swatch].filter(namesMedia).map(recordedAtMs))
  return { photos, sounds: all.length - photos, bytes, backedUp: newestMs < backedUpMs, hashes, swatchHashes }
}

const namesMedia = (entry: RawEntry): boolean => Boolean((entry as { event?: { media?: unknown } }).event?.media)
const recordedAtMs = (entry: RawEntry): number => (entry as unknown as { recordedAtMs: number }).recordedAtMs
