import { readTextFile } from '../shell/files/files.ts'
import type { Kept } from '../shell/settings/kept.ts'
import type { Kitchen, StoredProtocol } from '../ui/kitchen.ts'
import type { KitchenDrafts, KitchenWriting } from '../ui/writing.ts'

type Writing = ReturnType<typeof import('./writing.ts').writingOn>

const PREFIX = 'protocol/'

export type StoredProtocols = Pick<Kitchen, 'protocols' | 'openProtocolFile' | 'versions' | 'drafts'> & {
  saveWritten(text: string, nowMs: number): ReturnType<KitchenWriting['saveProtocol']>
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
      const own = await kept.startingWith<StoredProtocol>(PREFIX).catch(() => [])
      return [...(await builtIn), ...own, ...(await (await writing()).newest())]
    },
    async openProtocolFile(file) {
      const read = await readTextFile(file)
      if (!read.ok) return { ok: false, problems: [fileProblem(read.why, read.say)] }
      const { protocolOf } = await import('./protocol-of.ts')
      const opened = protocolOf(file.name, read.text)
      // Not stored is not lost: it can be started now, and the pot keeps the text in its own journal.
      if (opened.ok) await kept.set(PREFIX + opened.stored.id, opened.stored).catch(() => {})
      return opened
    },
    drafts: {
      list: async () => (await drafts()).list(),
      read: async (id) => (await drafts()).read(id),
      keep: async (draft) => (await drafts()).keep(draft),
      drop: async (id) => (await drafts()).drop(id)
    },
    versions: async (protocolId) => (await writing()).versions(protocolId),
    saveWritten: async (text, nowMs) => (await import('./written-protocol.ts')).saveWritten(kept, text, nowMs),
    async keepMade(read) {
      const { madeProtocol } = await import('./made-protocol.ts')
      const made = madeProtocol(read)
      if (!made.ok) return made
      try {
        await kept.set(PREFIX + made.stored.id, made.stored)
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

function fileProblem(code: string, say: string): import('../core/protocol/model.ts').Problem {
  return {
    code: `file-${code}`,
    line: 1,
    column: 1,
    where: 'the file',
    what: say,
    instead: 'Choose a protocol file (.yaml).'
  }
}
