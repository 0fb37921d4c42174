// What the kitchen keeps of protocols that are being written.
import type { Edit } from '../core/protocol/edit/change.ts'
import type { Problem } from '../core/protocol/model.ts'
import type { Sent, StoredProtocol } from './kitchen.ts'

/** One change of a text: at an offset (UTF-16 units) `was` gave way to `now`. */
export type DraftStep = { at: number; was: string; now: string }

/** Typed into a field while the text had a mistake, so that it could not be put there. `at`: where, in words. */
export type WaitingWords = { edit: Extract<Edit, { type: 'set' | 'name' }>; at: string; typed: string }

export type ProtocolDraft = {
  id: string
  title: string
  text: string
  changedAtMs: number
  /** The latest steps, oldest first: the last of `undo` is the next to be undone, that of `redo` the next to be redone. */
  undo: DraftStep[]
  redo: DraftStep[]
  /** Left out: nothing waits. */
  waiting?: WaitingWords[]
  /** It was brought in: the name of the file it came as. */
  cameAs?: string
}

export type DraftLine = Pick<ProtocolDraft, 'id' | 'title' | 'changedAtMs' | 'cameAs'>

/** Of a protocol that was brought in: the name of its file, and the id of the one it is the next version of, where that
 * was kept from a file and has no versions yet. */
export type Came = { cameAs: string; joins?: string | null }

/** `elsewhere`: it was changed in another tab since this one read it, and what is there was left. */
export type DraftKept = Sent & { elsewhere?: true }

export type KitchenDrafts = {
  /** The one changed last comes first. `unreadable`: how many are there that nothing can be made of. */
  list(): Promise<{ drafts: DraftLine[]; unreadable: number }>
  /** Null: it is not here. */
  read(id: string): Promise<ProtocolDraft | null>
  /** What could not be kept is there until the page is closed. */
  keep(draft: ProtocolDraft): Promise<DraftKept>
  drop(id: string): Promise<Sent>
}

export type KitchenWriting = {
  drafts: KitchenDrafts
  /** Stores the text under its title, as the newest version of it. */
  saveProtocol(
    text: string,
    came?: Came
  ): Promise<{ ok: true; stored: StoredProtocol } | { ok: false; problems: Problem[]; say: string }>
  /** All versions that were saved of a protocol written here, the newest first; none of any other. */
  versions(protocolId: string): Promise<StoredProtocol[]>
}
