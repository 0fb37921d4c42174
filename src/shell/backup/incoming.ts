// What a restore has read waits in a store of its own, out of sight. One transaction merges all of it into the journal:
// before it the journal is as it was, after it whole. A page that dies between leaves a mark, so that the next one
// knows what to drop or to finish.
import type { Aside, BackedUpMedia, KeptThing, RawEntry } from '../../core/backup/format.ts'
import type { Connection } from '../journal/connection.ts'
import type { StoredMedia } from '../journal/media-store.ts'
import { INCOMING, MEDIA } from '../journal/stores.ts'
import { requested } from './requested.ts'

/** `media`: bytes are invisible until an entry names them, so they go to their place at once; here stands which came. */
export type Incoming =
  | { kind: 'entries'; streamId: string; entries: RawEntry[]; summary?: unknown }
  | { kind: 'aside'; aside: Aside }
  | { kind: 'kept'; kept: KeptThing }
  | { kind: 'media'; sha256: string; streamIds: string[]; added: boolean }

/** `staging`: nothing of it counts yet. `merged`: the journal has it all, small kept things may still be to do. */
export type RestoreMark<Result = unknown> = { state: 'staging' | 'merged'; atMs: number; result: Result | null }

const MARK = 'mark'

/** All that waits: counted by numbers, so that the mark, a text, is not among it. */
export function waiting(): IDBKeyRange {
  return IDBKeyRange.upperBound(Number.POSITIVE_INFINITY)
}

export function readMark<Result>(connection: Connection): Promise<RestoreMark<Result> | undefined> {
  return connection.run('readonly', [INCOMING], (transaction) => {
    const request = transaction.objectStore(INCOMING).get(MARK)
    return () => request.result
  })
}

export function putMark(transaction: IDBTransaction, mark: RestoreMark): void {
  transaction.objectStore(INCOMING).put(mark, MARK)
}

export function beginStaging(connection: Connection, atMs: number): Promise<void> {
  return connection.run('readwrite', [INCOMING], (transaction) => {
    putMark(transaction, { state: 'staging', atMs, result: null })
    return () => undefined
  })
}

/** Puts what was read where it waits. Bytes that are here already are not written again. */
export function stage(connection: Connection, parts: readonly (Incoming | BackedUpMedia)[]): Promise<void> {
  return connection.run('readwrite', [INCOMING, MEDIA], (transaction) => {
    const incoming = transaction.objectStore(INCOMING)
    for (const part of parts) {
      if ('kind' in part) incoming.add(part)
      else stageMedia(transaction, part)
    }
    return () => undefined
  })
}

function stageMedia(transaction: IDBTransaction, { bytes, ...named }: BackedUpMedia): void {
  const store = transaction.objectStore(MEDIA)
  const request = store.getKey(named.sha256)
  request.onsuccess = () => {
    const added = request.result === undefined
    // A piece of a larger buffer would be stored with all of it.
    if (added) store.add({ ...named, bytes: bytes.slice().buffer } satisfies StoredMedia)
    const { sha256, streamIds } = named
    transaction.objectStore(INCOMING).add({ kind: 'media', sha256, streamIds, added } satisfies Incoming)
  }
}

/** Takes back all that waits: the journal is as if nobody had begun. */
export function dropStaged(connection: Connection): Promise<void> {
  return connection.run('readwrite', [INCOMING, MEDIA], (transaction) => {
    const incoming = transaction.objectStore(INCOMING)
    const request = incoming.openCursor(waiting())
    request.onsuccess = () => {
      const cursor = request.result
      if (cursor === null) {
        incoming.clear()
        return
      }
      const part = cursor.value as Incoming
      if (part.kind === 'media' && part.added) takeBack(transaction.objectStore(MEDIA), part)
      cursor.continue()
    }
    return () => undefined
  })
}

/** Unless a pot of this device took the same picture meanwhile. */
function takeBack(media: IDBObjectStore, { sha256, streamIds }: { sha256: string; streamIds: string[] }): void {
  const request = media.get(sha256)
  request.onsuccess = () => {
    const stored = request.result as StoredMedia | undefined
    if (stored?.streamIds.every((streamId) => streamIds.includes(streamId))) media.delete(sha256)
  }
}

export async function keptWaiting(connection: Connection): Promise<KeptThing[]> {
  return connection.run('readonly', [INCOMING], (transaction) => {
    const request = transaction.objectStore(INCOMING).getAll(waiting())
    return () => (request.result as Incoming[]).flatMap((part) => (part.kind === 'kept' ? [part.kept] : []))
  })
}

export function clearStaged(connection: Connection): Promise<void> {
  return connection.run('readwrite', [INCOMING], (transaction) => {
    void requested(transaction.objectStore(INCOMING).clear())
    return () => undefined
  })
}
