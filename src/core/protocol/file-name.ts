// The names of protocol files. A name says nothing of what is in the file: it is for people.
import { forbiddenAt } from './source/characters.ts'

const SHOWN_MOST = 80

/** A name from anywhere, as it may be shown: no character that hides something or turns the direction of writing. */
export function shownName(name: string): string {
  const signs = [...name].filter((sign) => sign !== '\n' && sign !== '\r' && sign !== '\t' && forbiddenAt(sign) < 0)
  const shown = signs.join('').trim()
  if (shown === '') return 'A file without a name'
  return signs.length > SHOWN_MOST ? `${shown.slice(0, SHOWN_MOST - 1)}…` : shown
}

/** ".docx" where a name has an ending that no protocol file has; null: none, or one that they have. */
export function strangeEnding(name: string): string | null {
  const ending = /\.[\p{L}\p{N}]{1,8}$/u.exec(name)?.[0] ?? null
  return ending === null || /^\.(ya?ml|json|txt)$/i.test(ending) ? null : ending
}

/** The name without its ending: what a text without a title is called. */
export function nameWithoutEnding(name: string): string {
  return name.replace(/\.[\p{L}\p{N}]{1,8}$/u, '') || name
}
