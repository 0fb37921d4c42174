// Protocols that are being written, among the small things kept between visits.
import type { Kept } from '../shell/settings/kept.ts'
import type { Sent } from '../ui/kitchen.ts'
import type { DraftLine, DraftStep, KitchenDrafts, ProtocolDraft, WaitingWords } from '../ui/writing.ts'

const PREFIX = 'draft/'

export function keptDrafts(kept: Kept): KitchenDrafts {
  // What is not kept yet, or could not be, must still open: it lives as long as the page.
  const notKept = new Map<string, ProtocolDraft>()
  // A write that is tried again must not bring back what was dropped meanwhile. Ids are never used again.
  const dropped = new Set<string>()
  // The text of each as this page knows it: what stands there else was written by another tab.
  const known = new Map<string, string>()
  return {
    async list() {
      const stored = await kept.startingWith<unknown>(PREFIX)
      const drafts = stored.map(draftIn).filter((draft) => draft !== null)
      const known = new Map([...drafts.map((draft) => [draft.id, draft] as const), ...notKept])
      const lines = [...known.values()].map(lineOf)
      return {
        drafts: lines.sort((a, b) => b.changedAtMs - a.changedAtMs),
        unreadable: stored.length - drafts.length
      }
    },
    async read(id) {
      const draft = notKept.get(id) ?? draftIn(await kept.get(PREFIX + id))
      if (draft && !notKept.has(id)) known.set(id, draft.text)
      return draft
    },
    async keep(draft) {
      if (dropped.has(draft.id)) return { ok: true }
      notKept.set(draft.id, draft)
      try {
        const mine = known.get(draft.id)
        const put = await kept.putOver(PREFIX + draft.id, draft, (was) => {
          const there = draftIn(was)?.text
          return mine === undefined || there === undefined || there === mine || there === draft.text
        })
        if (notKept.get(draft.id) === draft) notKept.delete(draft.id)
        if (!put) return { ok: false, refusal: null, say: 'This draft was changed in another tab.', elsewhere: true }
        known.set(draft.id, draft.text)
        return { ok: true }
      } catch (error) {
        return refused(error)
      }
    },
    async drop(id) {
      try {
        await kept.remove(PREFIX + id)
        dropped.add(id)
        notKept.delete(id)
        return { ok: true }
      } catch (error) {
        return refused(error)
      }
    }
  }
}

function lineOf({ id, title, changedAtMs, cameAs }: ProtocolDraft): DraftLine {
  return { id, title, changedAtMs, ...(cameAs === undefined ? {} : { cameAs }) }
}

function refused(error: unknown): Sent {
  const full = error instanceof Error && error.name === 'QuotaExceededError'
  const say = full
    ? 'There is no room left on this device. Make room, then try again.'
    : 'The browser could not store it. It is here until this page is closed.'
  return { ok: false, refusal: null, say }
}

/** An older version, or a hand, may have left something else. The text is what counts: the rest has a substitute. */
function draftIn(stored: unknown): ProtocolDraft | null {
  if (typeof stored !== 'object' || stored === null) return null
  const { id, title, text, changedAtMs, undo, redo, waiting, cameAs } = stored as {
    [field in keyof ProtocolDraft]?: unknown
  }
  if (typeof id !== 'string' || id === '' || typeof text !== 'string') return null
  const words = Array.isArray(waiting) ? waiting.filter(isWaiting) : []
  return {
    ...(words.length > 0 && { waiting: words }),
    id,
    title: typeof title === 'string' && title !== '' ? title : 'No title',
    text,
    changedAtMs: typeof changedAtMs === 'number' && Number.isFinite(changedAtMs) ? changedAtMs : 0,
    undo: stepsIn(undo),
    redo: stepsIn(redo),
    ...(typeof cameAs === 'string' ? { cameAs } : {})
  }
}

function isWaiting(stored: unknown): stored is WaitingWords {
  const { edit, at, typed } = (stored ?? {}) as { [field in keyof WaitingWords]?: unknown }
  const { type, path } = (edit ?? {}) as { type?: unknown; path?: unknown }
  return (
    (type === 'set' || type === 'name') && Array.isArray(path) && typeof at === 'string' && typeof typed === 'string'
  )
}

function stepsIn(stored: unknown): DraftStep[] {
  if (!Array.isArray(stored) || !stored.every(isStep)) return []
  return stored
}

function isStep(stored: unknown): stored is DraftStep {
  const { at, was, now } = (stored ?? {}) as { [field in keyof DraftStep]?: unknown }
  return Number.isInteger(at) && (at as number) >= 0 && typeof was === 'string' && typeof now === 'string'
}
