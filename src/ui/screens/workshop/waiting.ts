// What was typed into a field while the text had a mistake: it could not be put there, and must not be lost with the field.
import type { Edit } from '../../../core/protocol/edit/edit.ts'
import type { Row } from '../../../core/protocol/edit/rows.ts'
import { words } from '../../../core/protocol/edit/summary.ts'
import { parse } from '../../../core/protocol/edit/tree.ts'
import type { WaitingWords } from '../../writing.ts'
import { samePath } from './where.ts'

/** The list after an edit by form. `text`: as it stands after it. */
export function waitingAfter(
  list: readonly WaitingWords[],
  edit: Edit,
  field: string | undefined,
  done: boolean,
  text: string,
  rows: readonly Row[]
): readonly WaitingWords[] {
  if (edit.type !== 'set' && edit.type !== 'unset' && edit.type !== 'name') return list
  const others = list.filter((one) => !isSamePlace(one.edit, edit))
  const lost = !done && field !== undefined && edit.type !== 'unset' && parse(text).problems.length > 0
  if (!lost) return done || edit.type === 'unset' ? (others.length === list.length ? list : others) : list
  const row = rows.find(({ path }) => samePath(path, edit.path))
  const typed = edit.type === 'name' ? edit.to : words(edit.value)
  return [...others, { edit, at: `${row?.summary ?? 'the header'}, ${field}`, typed }]
}

function isSamePlace(a: Edit, b: Edit): boolean {
  return JSON.stringify(placeOf(a)) === JSON.stringify(placeOf(b))
}

function placeOf(edit: Edit): unknown {
  return 'path' in edit ? [edit.path, 'field' in edit ? edit.field : 'id'] : null
}
