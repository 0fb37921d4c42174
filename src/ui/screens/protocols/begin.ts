// A new draft: blank, or a copy of a protocol. Loaded when somebody begins one, for it needs to write in the language.
import { blankProtocol } from '../../../core/protocol/edit/blank.ts'
import type { Kitchen, StoredProtocol } from '../../kitchen.ts'
import { onward } from '../../parts/onward.ts'
import { TITLE_MOST } from './meeting.ts'
import { retitled } from './retitled.ts'

const MARK = ', changed'

/** Opens the draft; what could not be kept is told there. */
async function open(kitchen: Kitchen, title: string, text: string): Promise<void> {
  const go = onward(kitchen)
  const id = kitchen.newId()
  await kitchen.drafts.keep({ id, title, text, changedAtMs: kitchen.now.peek(), undo: [], redo: [] })
  go(`#/protocols/write/${encodeURIComponent(id)}`)
}

export function beginBlank(kitchen: Kitchen): Promise<void> {
  const title = 'New protocol'
  return open(kitchen, title, blankProtocol(title))
}

/** What was written here keeps its title, and so becomes a new version of it; a copy of any other is one of its own. */
export function beginCopy(kitchen: Kitchen, { text, protocol, written }: StoredProtocol): Promise<void> {
  if (written) return open(kitchen, protocol.title, text)
  const title = `${protocol.title.slice(0, TITLE_MOST - MARK.length)}${MARK}`
  const copied = retitled(text, title)
  return copied === null ? open(kitchen, protocol.title, text) : open(kitchen, title, copied)
}
