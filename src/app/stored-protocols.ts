import type { Kept } from '../shell/settings/kept.ts'
import type { Kitchen, StoredProtocol } from '../ui/kitchen.ts'
import type { BroughtIn } from '../ui/sharing.ts'
import type { Came, KitchenDrafts, KitchenWriting } from '../ui/writing.ts'

type Writing = ReturnType<typeof import('./writing.ts').writingOn>

/** Of what was kept before it had versions: made of a record, or run again by a record's own text. */
export const PROTOCOL_PREFIX = 'protocol/'

export type StoredProtocols = Pick<Kitchen, 'protocols' | 'protocolAgain' | 'versions' | 'drafts'> & {
  bringIn(file: File, freshId: string, nowMs: number): Promise<BroughtIn>
  saveWritten(text: string, nowMs: number, came?: Came): ReturnType<KitchenWriting['saveProtocol']>
  keepMade(entries: Awaited<ReturnType<Kitchen['entries']>>): ReturnType<Kitchen['makeProtocol']>
}

/** Built-in protocols were read when the app was built; the reader is loaded only when a file is opened. */
export function storedProtocols(kept: Kept): StoredProtocols {
  let builtIn: Promise<StoredProtocol[]> | null = null
  let made: Writing | null = null
  // Nothing of writing is wanted before the Stove is drawn.
  const writing = async (): Promise<Writing> => {
    const { writingOn } = await import('./writing.ts')
    made ??= writingOn(kept)
    return made
  }
  const drafts = async (): Promise<KitchenDrafts> => (await writing()).drafts
  return {
    async protocols() {
      builtIn ??= readBuiltIn()
      // A load that failed must not stay the answer.
      builtIn.catch(() => {
        builtIn = null
      })
      const own = await kept.startingWith<StoredProtocol>(PROTOCOL_PREFIX).catch(() => [])
      return [...(await builtIn), ...own, ...(await (await writing()).newest())]
    },
    bringIn: async (file, freshId, nowMs) =>
      (await import('./bring-in.ts')).bringIn(file, await drafts(), freshId, nowMs),
    async protocolAgain(title, text) {
      const { protocolOf } = await import('./protocol-of.ts')
      const opened = protocolOf(`${title}.yaml`, text)
      // Not stored is not lost: it can be started now, and the pot keeps the text in its own journal.
      if (opened.ok) await kept.set(PROTOCOL_PREFIX + opened.stored.id, opened.stored).catch(() => {})
      return opened
    },
    drafts: {
      list: async () => (await drafts()).list(),
      read: async (id) => (await drafts()).read(id),
      keep: async (draft) => (await drafts()).keep(draft),
      drop: async (id) => (await drafts()).drop(id)
    },
    versions: async (protocolId) => (await writing()).versions(protocolId),
    saveWritten: async (text, nowMs, came) =>
      (await import('./written-protocol.ts')).saveWritten(kept, text, nowMs, came),
    async keepMade(read) {
      const { madeProtocol } = await import('./made-protocol.ts')
      const made = madeProtocol(read)
      if (!made.ok) return made
      try {
        await kept.set(PROTOCOL_PREFIX + made.stored.id, made.stored)
        return made
      } catch {
        return { ok: false, say: 'Not kept: the browser could not store it. The record is still here: try again.' }
      }
    }
  }
}

async function readBuiltIn(): Promise<StoredProtocol[]> {
  const { default: protocols } = await import('virtual:protocols')
  return protocols.map(({ file, text, protocol }) => ({
    id: file.replace(/\.yaml$/, ''),
    file,
    text,
    protocol,
    from: 'built-in'
  }))
}
