// Yesterday's pot again: its form, filled in, with the very text it ran by.
import { isFree } from '../../../core/protocol/free-pot.ts'
import type { BatchRecord } from '../../../core/record/record.ts'
import { recordOf } from '../../../core/record/record-of.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { FREE_ID } from '../../parts/free-pot.ts'
import { onward } from '../../parts/onward.ts'
import { draftFrom, keepDraft, keepOpened, type StartDraft, withOpened } from '../../parts/start-draft.ts'

/** Opens the Start screen filled in; null, or why it can't be. */
export async function sameAgain(kitchen: Kitchen, potId: string): Promise<string | null> {
  const { entries } = await kitchen.entries(potId)
  const record = recordOf(entries)
  if (!record) return 'The start of this pot can’t be read, so it can’t be filled in again.'
  return startAgain(kitchen, record)
}

type Change = (draft: StartDraft) => StartDraft

/** `change`: what is other this time. */
export async function startAgain(
  kitchen: Kitchen,
  record: BatchRecord,
  change: Change = (draft) => draft
): Promise<string | null> {
  const go = onward(kitchen)
  if (isFree(record.programme)) return again(go, FREE_ID, record, change)
  const stored = await storedFor(kitchen, record)
  if (!stored) return 'The protocol of this pot can’t be read by this version. Choose another one.'
  return again(go, stored.id, record, change)
}

function again(go: (to: string) => void, id: string, record: BatchRecord, change: Change): null {
  const { identity, substrate, shelf, programme } = record
  keepDraft(id, change(draftFrom({ ...identity, ...substrate, uses: shelf.uses }, programme)))
  go(`#/start/${encodeURIComponent(id)}`)
  return null
}

async function storedFor(kitchen: Kitchen, { protocol }: BatchRecord): Promise<StoredProtocol | null> {
  const known = withOpened(await kitchen.protocols()).find((each) => each.text === protocol.text)
  if (known) return known
  // The protocol has changed since, or came from a file: the pot's own journal keeps the text.
  const read = await kitchen.protocolAgain(protocol.title, protocol.text)
  if (!read.ok) return null
  keepOpened(read.stored)
  return read.stored
}
