// The same protocol under another title. With the writer of the language: loaded when it is wanted.
import { applyEdit } from '../../../core/protocol/edit/edit.ts'

/** Null: its title could not be changed. */
export function retitled(text: string, title: string): string | null {
  const made = applyEdit(text, { type: 'set', path: [], field: 'title', value: title })
  return made.ok ? made.text : null
}
