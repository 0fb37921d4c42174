// One text with two ways in: every change of it goes through here, so that both show the same, it can be undone, and it
// is kept.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { applyEdit, type Edit } from '../../../core/protocol/edit/edit.ts'
import type { Outline } from '../../../core/protocol/edit/rows.ts'
import type { Kitchen } from '../../kitchen.ts'
import type { ProtocolDraft, WaitingWords } from '../../writing.ts'
import { changed, fitting, type History, latest, redone, undone } from './history.ts'
import { type Keeper, keeperOf } from './keeper.ts'
import { useReading } from './reading.ts'
import { waitingAfter } from './waiting.ts'
import { samePath } from './where.ts'

type Path = readonly (string | number)[]

/** Null: it is done. Else why not, in words. `field`: what is typed into; letters typed one after the other into the same
 * one are undone together. */
export type DoEdit = (edit: Edit, field?: string) => string | null

export type Writing = {
  text: string
  outline: Outline
  /** The outline is of another text than the one that stands: what is typed is looked at in a moment. */
  isBehind: boolean
  title: string
  edit: DoEdit
  /** The whole text, as typed. */
  type(text: string): void
  lookNow(): Outline
  undo: (() => void) | null
  redo: (() => void) | null
  /** What was typed into fields while the text had a mistake. */
  waiting: readonly WaitingWords[]
  /** Tries to put it where it was meant for. Null: it is there; else why not. */
  putIn(words: WaitingWords): string | null
  letGo(words: WaitingWords): void
  /** The row whose form is open. */
  open: Path | null
  setOpen(path: Path | null): void
  keeper: Keeper
}

/** Letters that come within this time are one step. */
const ONE_STEP_MS = 1_500

export function useWriting(kitchen: Kitchen, draft: ProtocolDraft): Writing {
  const [history, setHistory] = useState<History>(() => fitting(draft))
  const [open, setOpen] = useState<Path | null>(null)
  const now = useRef(history)
  const lastTyped = useRef({ what: '', atMs: Number.NEGATIVE_INFINITY })
  const title = useRef(draft.title)
  const keeping = useMemo(() => keeperOf(kitchen.drafts, draft.id, () => kitchen.newId()), [kitchen, draft.id])
  const { read, look, readNow } = useReading(history.text)
  title.current = titleIn(read.outline) ?? title.current

  const [waiting, setWaiting] = useState<readonly WaitingWords[]>(draft.waiting ?? [])
  const stillWaiting = useRef(waiting)
  const keepNow = (): void =>
    keeping.keep(draftOf(draft, now.current, title.current, kitchen.now.peek(), stillWaiting.current))
  const wait = (next: readonly WaitingWords[]): void => {
    if (next === stillWaiting.current) return
    stillWaiting.current = next
    setWaiting(next)
    keepNow()
  }
  const take = (next: History, movesRows: boolean): void => {
    if (next === now.current) return
    now.current = next
    setHistory(next)
    if (movesRows) readNow(next.text)
    else look(next.text)
    keepNow()
  }
  const joins = (what: string): boolean => {
    const atMs = performance.now()
    const { what: was, atMs: wasMs } = lastTyped.current
    lastTyped.current = { what, atMs }
    return what !== '' && what === was && atMs - wasMs < ONE_STEP_MS
  }
  useTitleKept(keeping, draft, title.current, now, keepNow)
  const step = (way: typeof undone): void => {
    lastTyped.current = { what: '', atMs: 0 }
    take(way(now.current), true)
  }
  const edit: DoEdit = (edit, field) => {
    const made = applyEdit(now.current.text, edit)
    wait(waitingAfter(stillWaiting.current, edit, field, made.ok, now.current.text, read.outline.rows))
    if (!made.ok) return made.problem
    const what = field === undefined ? '' : JSON.stringify(['path' in edit ? edit.path : '', field])
    take(changed(now.current, made.text, joins(what)), field === undefined)
    if (field === undefined) setOpen(edit.type === 'remove' || edit.type === 'unset' ? null : made.path)
    return null
  }
  return {
    text: history.text,
    outline: read.outline,
    isBehind: read.text !== history.text,
    title: title.current,
    edit,
    // What stands around the open form says it itself.
    waiting: waiting.filter(({ edit: { path } }) => read.outline.rows.length === 0 || !open || !samePath(open, path)),
    putIn: (words) => edit(words.edit),
    letGo: (words) => wait(stillWaiting.current.filter((one) => one !== words)),
    type: (text) => take(changed(now.current, text, joins('text')), false),
    lookNow: () => readNow(now.current.text),
    undo: history.undo.length === 0 ? null : () => step(undone),
    redo: history.redo.length === 0 ? null : () => step(redone),
    open,
    setOpen,
    keeper: keeping
  }
}

function draftOf(
  draft: ProtocolDraft,
  { text, undo, redo }: History,
  title: string,
  nowMs: number,
  waiting: readonly WaitingWords[]
): ProtocolDraft {
  const { waiting: _, ...rest } = draft
  const next = { ...rest, title, text, changedAtMs: nowMs, undo: latest(undo), redo: latest(redo) }
  return waiting.length === 0 ? next : { ...next, waiting: [...waiting] }
}

/** At the opening a draft that could not be kept before is tried again; a new title is known only once it was read. */
function useTitleKept(
  keeping: Keeper,
  draft: ProtocolDraft,
  title: string,
  now: { current: History },
  keepNow: () => void
): void {
  const first = useRef(true)
  useEffect(() => {
    // What is typed before this first look is kept already, and is newer.
    if (first.current && now.current.text === draft.text) keeping.keep({ ...draft, title })
    else keepNow()
    first.current = false
  }, [title])
}

function titleIn({ rows }: Outline): string | null {
  const row = rows.find(({ kind, name }) => kind === 'header' && name === 'title')
  return row === undefined || row.summary === '' ? null : row.summary
}
