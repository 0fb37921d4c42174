// A device in memory: its journal and small kept things, a session on them, and the backups of the app.
import { createHash } from 'node:crypto'
import { IDBFactory, IDBKeyRange } from 'fake-indexeddb'
import { vi } from 'vitest'
import { kitchenBackup, tidyRestore } from '../../../src/app/backup/kitchen-backup.ts'
import type { BackupParts } from '../../../src/app/backup/parts.ts'
import type { MediaBytes } from '../../../src/core/pot/media.ts'
import { drawsOf } from '../../../src/core/shelf/draws.ts'
import { createSession } from '../../../src/session/create-session.ts'
import type { Session } from '../../../src/session/types.ts'
import { type HandClock, handClock } from '../../../src/shell/clock/hand-clock.ts'
import { type IndexedDbJournal, indexedDbJournal } from '../../../src/shell/journal/indexeddb-journal.ts'
import { type Kept, memoryKept } from '../../../src/shell/settings/kept.ts'
import type { KitchenBackup, RestorePlan } from '../../../src/ui/backup.ts'
import { PERSON } from '../../core/pot/given.ts'
import { startCommand, T0 } from '../../session/kitchen-table.ts'

vi.stubGlobal('IDBKeyRange', IDBKeyRange)
vi.stubGlobal('indexedDB', new IDBFactory())

export type Device = {
  name: string
  clock: HandClock
  journal: IndexedDbJournal
  kept: Kept
  session: Session
  backup: KitchenBackup
  ids: BackupParts['ids']
  parts: BackupParts
  /** Is a pot watched? */
  watched: boolean
  tidy(): Promise<void>
}

let devices = 0

export async function device(): Promise<Device> {
  const name = `device-${++devices}`
  const clock = handClock(T0)
  const journal = indexedDbJournal(`${name}-journal`)
  const kept = memoryKept()
  let count = 0
  const ids = { newId: () => `${name}-id-${++count}`, writerId: `writer-${name}` }
  const session = createSession({ clock, journal, ids, drawsOf: () => drawsOf })
  const made: Partial<Device> = { name, clock, journal, kept, session, ids, watched: false }
  const parts: BackupParts = {
    name,
    kept,
    ids,
    nowMs: clock.nowMs,
    watched: () => made.watched === true,
    owns: () => true,
    merged: async () => void (await session.open()),
    room: async () => ({ usedBytes: 1e6, roomBytes: 1e9 })
  }
  await session.open()
  Object.assign(made, { parts, backup: kitchenBackup(parts), tidy: () => tidyRestore(parts) })
  return made as Device
}

/** The file that a device's backup becomes, written through a picker as a desktop has it. */
export async function backupOf({ backup }: Device): Promise<File> {
  let written = new Blob([])
  const handle = {
    async createWritable() {
      const pieces: Blob[] = []
      return {
        write: async (piece: Blob) => void pieces.push(piece),
        close: async () => {
          written = new Blob(pieces)
        },
        abort: async () => {}
      }
    },
    getFile: async () => written
  }
  vi.stubGlobal('showSaveFilePicker', async () => handle)
  const made = await backup.make(() => {})
  vi.stubGlobal('showSaveFilePicker', undefined)
  if (!made.ok) throw new Error(made.say)
  return new File([written], made.last.name)
}

export async function planOf({ backup }: Device, file: File): Promise<RestorePlan> {
  const looked = await backup.look(file, () => {})
  if (!looked.ok) throw new Error(`${looked.say} ${looked.instead}`)
  return looked.plan
}

export async function restoreInto(to: Device, file: File): Promise<RestorePlan> {
  const plan = await planOf(to, file)
  const restored = await to.backup.restore(file, plan, () => {})
  if (!restored.ok) throw new Error(`${restored.say} ${restored.instead}`)
  return plan
}

/** Everything of a database, store by store. */
export async function everything({ name }: Device, stores = ['entries', 'summaries', 'media', 'aside', 'incoming']) {
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(`${name}-journal`)
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
  const found: Record<string, unknown[]> = {}
  for (const store of stores) {
    found[store] = await new Promise((resolve) => {
      const request = database.transaction(store).objectStore(store).getAll()
      request.onsuccess = () => resolve(request.result)
    })
  }
  database.close()
  return found
}

export function picture(text: string): MediaBytes {
  const bytes = new TextEncoder().encode(text)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  return { sha256, mime: 'image/jpeg', bytes: bytes.buffer }
}

export async function send(
  on: Device,
  potId: string,
  command: Parameters<Device['session']['send']>[1],
  media?: MediaBytes[]
) {
  const sent = await on.session.send(potId, command, { by: PERSON, media })
  if (!sent.ok) throw new Error(JSON.stringify(sent))
}

export async function photo(on: Device, potId: string, media: MediaBytes): Promise<void> {
  const { sha256, mime, bytes } = media
  const named = { sha256, mime, bytes: bytes.byteLength, widthPx: 4, heightPx: 3 }
  await send(on, potId, { type: 'NotePhoto', what: 'the bath', media: named }, [media])
}

export async function potOn(on: Device, potId: string, ended = true): Promise<void> {
  await send(on, potId, startCommand(potId, potId))
  if (ended) await send(on, potId, { type: 'Abort', reason: 'made for the test' })
}

export async function pass(on: Device, ms: number): Promise<void> {
  on.clock.advance(ms)
  await on.session.wake()
}

/** Journals as sets: entries, lines, bytes and what was set aside. */
export async function journalOf(on: Device): Promise<unknown> {
  const { entries, summaries, media, aside } = await everything(on)
  return { entries, summaries, aside, media: (media as { sha256: string }[]).map(({ sha256 }) => sha256) }
}
