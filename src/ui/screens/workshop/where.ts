// Which problem belongs to which field: the reader names places as "steps[2].hold.until[0].temperature".
import type { Row } from '../../../core/protocol/edit/rows.ts'
import type { Problem } from '../../../core/protocol/model.ts'
import { isConstructWord, isStepWord } from './kinds.ts'

type Path = readonly (string | number)[]

/** How the reader names the place of a row's fields. */
export function whereOf({ path, kind }: Pick<Row, 'path' | 'kind'>): string {
  if (kind === 'header') return ''
  const word = isStepWord(kind) || isConstructWord(kind) ? [kind] : []
  return [...path, ...word].reduce<string>(further, '')
}

export function further(where: string, part: string | number): string {
  if (typeof part === 'number') return `${where}[${part}]`
  return where === '' || part === '' ? `${where}${part}` : `${where}.${part}`
}

/** Those at a place or further in. */
export function problemsWithin(problems: readonly Problem[], where: string): Problem[] {
  return problems.filter((problem) => isWithin(problem.where, where))
}

function isWithin(place: string, where: string): boolean {
  return place === where || place.startsWith(`${where}.`) || place.startsWith(`${where}[`)
}

/** Those that no field of these names will show. */
export function problemsBeside(problems: readonly Problem[], where: string, names: readonly string[]): Problem[] {
  return problems.filter((problem) => !names.some((name) => isWithin(problem.where, further(where, name))))
}

/** What is wrong, and what would be right. */
export function sayOf({ what, instead }: Problem): string {
  return `${ended(what)} ${ended(`${instead.charAt(0).toUpperCase()}${instead.slice(1)}`)}`
}

/** With a full stop, unless it ends in one or its like. */
export function ended(text: string): string {
  return /[.!?:…]$/.test(text) ? text : `${text}.`
}

export function samePath(a: Path, b: Path): boolean {
  return a.length === b.length && a.every((part, i) => part === b[i])
}
