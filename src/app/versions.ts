// Every saved version of the protocols that were written here. Nothing is written over: a version has a key of its own.
import type { Kept } from '../shell/settings/kept.ts'
import type { StoredProtocol } from '../ui/kitchen.ts'

const PREFIX = 'version/'

/** What is stored of one: how many there are is counted when they are read. */
type Version = Omit<StoredProtocol, 'written'> & { savedAtMs: number; cameAs?: string }

export async function keepVersion(kept: Kept, stored: StoredProtocol, savedAtMs: number, mark: string): Promise<void> {
  const { written, ...rest } = stored
  const came = written?.cameAs === undefined ? {} : { cameAs: written.cameAs }
  await kept.set(`${PREFIX}${stored.id}/${savedAtMs}-${mark}`, { ...rest, savedAtMs, ...came } satisfies Version)
}

/** The newest first. */
export async function versionsOf(kept: Kept, protocolId: string): Promise<StoredProtocol[]> {
  return inOrder((await kept.startingWith<unknown>(`${PREFIX}${protocolId}/`)).filter(isVersion))
}

/** Of each protocol its newest version, in the order in which they were saved. */
export async function newestWritten(kept: Kept): Promise<StoredProtocol[]> {
  const all = (await kept.startingWith<unknown>(PREFIX).catch((): unknown[] => [])).filter(isVersion)
  const ids = [...new Set(all.map(({ id }) => id))]
  const newest = ids.flatMap((id) => inOrder(all.filter((version) => version.id === id)).slice(0, 1))
  return newest.sort((a, b) => savedAt(a) - savedAt(b))
}

function inOrder(versions: Version[]): StoredProtocol[] {
  return versions
    .toSorted((a, b) => b.savedAtMs - a.savedAtMs)
    .map(({ savedAtMs, cameAs, ...stored }) => ({
      ...stored,
      written: { savedAtMs, versions: versions.length, ...(cameAs === undefined ? {} : { cameAs }) }
    }))
}

function savedAt({ written }: StoredProtocol): number {
  return written?.savedAtMs ?? 0
}

function isVersion(stored: unknown): stored is Version {
  const { id, text, protocol, savedAtMs } = (stored ?? {}) as { [field in keyof Version]?: unknown }
  const whole = typeof protocol === 'object' && protocol !== null && 'title' in protocol && 'steps' in protocol
  return typeof id === 'string' && typeof text === 'string' && typeof savedAtMs === 'number' && whole
}
