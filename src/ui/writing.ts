// What the kitchen keeps of protocols that are being written.
import type { Problem } from '../core/protocol/model.ts'
import type { Sent, StoredProtocol } from './kitchen.ts'

/** One change of a text: at an offset (UTF-16 units) `was` gave way to `now`. */
export type DraftStep = { at: number; was: string; now: string }

export type ProtocolDraft = {
  id: string
  title: string
  text: string
  changedAtMs: number
  /** The latest steps, oldest first: the last of `undo` is the next to be undone, that of `redo` the next to be redone. */
  undo: DraftStep[]
  redo: DraftStep[]
}

export type DraftLine = Pick<ProtocolDraft, 'id' | 'title' | 'changedAtMs'>

export type KitchenDrafts = {
  /** The one changed last comes first. `unreadable`: how many are there that nothing can be made of. */
  list(): Promise<{ drafts: DraftLine[]; unreadable: number }>
  /** Null: it is not here. */
  read(id: string): Promise<ProtocolDraft | null>
  /** What could not be kept is there until the page is closed. */
  keep(draft: ProtocolDraft): Promise<Sent>
  drop(id: string): Promise<Sent>
}

export type KitchenWriting = {
  drafts: KitchenDrafts
  /** Stores the text under its title, as the newest version of it. */
  saveProtocol(
    text: string
  ): Promise<{ ok: true; stored: StoredProtocol } | { ok: false; problems: Problem[]; say: string }>
  /** All versions that were saved of a protocol written here, the newest first; none of any other. */
  versions(protocolId: string): Promise<StoredProtocol[]>
}
