// The one way in for protocols from outside: opened, pasted, dropped or launched, everything is read here, as hostile.
import { nameWithoutEnding, shownName } from '../core/protocol/file-name.ts'
import { readProtocol } from '../core/protocol/read.ts'
import { readTextFile } from '../shell/files/text-file.ts'
import type { BroughtIn } from '../ui/sharing.ts'
import type { KitchenDrafts, ProtocolDraft } from '../ui/writing.ts'

/** What is text is kept as a draft before anything is shown of it, so that neither a reload nor a mistake loses it. */
export async function bringIn(file: File, drafts: KitchenDrafts, freshId: string, nowMs: number): Promise<BroughtIn> {
  const name = shownName(file.name)
  const came = await readTextFile(file)
  if (!came.ok) return refused(name, came.why, came.line, came.say, came.instead)
  const { text } = came
  if (text.trim() === '') {
    return refused(name, 'empty', 1, `${name} is empty.`, 'Choose a protocol: it begins with strandline: 1.')
  }
  const read = readProtocol(text)
  const title = read.ok ? read.protocol.title : nameWithoutEnding(name)
  const draftId = (await sameDraft(drafts, name, text)) ?? freshId
  // What could not be kept lives as long as the page; the workshop tells so.
  if (draftId === freshId) {
    const draft: ProtocolDraft = { id: draftId, title, text, changedAtMs: nowMs, undo: [], redo: [], cameAs: name }
    await drafts.keep(draft)
  }
  return { ok: true, name, title, draftId, runs: read.ok }
}

/** The same file brought in twice, and nothing decided between, is one draft. */
async function sameDraft(drafts: KitchenDrafts, name: string, text: string): Promise<string | null> {
  try {
    const { drafts: lines } = await drafts.list()
    for (const { id, cameAs } of lines) {
      if (cameAs === name && (await drafts.read(id))?.text === text) return id
    }
  } catch {
    // Drafts that can't be read are no reason to refuse a file.
  }
  return null
}

function refused(name: string, why: string, line: number, what: string, instead: string): BroughtIn {
  return { ok: false, name, problem: { code: `file-${why}`, line, column: 1, where: 'the file', what, instead } }
}
