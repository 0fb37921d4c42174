// Limits of what is given to this room, and the words for what lies outside them.
import { showNumber } from '../quantity/show-number.ts'
import type { Problem } from './answer.ts'

/** `name`: as a dyer calls it, with "the". `above`: the least value itself is refused too. */
export type Limit = { field: string; name: string; unit: string; least: number; most: number; above?: boolean }

/** Is it a number within its limits? NaN never is. */
export function within(value: unknown, limit: Limit): value is number {
  return (
    typeof value === 'number' &&
    value <= limit.most &&
    (limit.above === true ? value > limit.least : value >= limit.least)
  )
}

/** The problem of one value; null where it is right. */
export function outside(value: unknown, limit: Limit): Problem | null {
  if (within(value, limit)) return null
  const { field } = limit
  const instead = `Give ${rangeOf(limit)}.`
  if (value === undefined || value === null || value === '') {
    return { code: 'missing', field, what: `${capital(limit.name)} is missing.`, instead }
  }
  if (typeof value !== 'number' || Number.isNaN(value)) {
    const found = typeof value === 'number' ? 'not a number' : `"${String(value)}", which is not a number`
    return { code: 'not-a-number', field, what: `${capital(limit.name)} is ${found}.`, instead }
  }
  return { code: 'outside', field, what: `${capital(limit.name)} can't be ${shown(value, limit.unit)}.`, instead }
}

/** All problems of the values under their limits. */
export function allOutside(checks: readonly (readonly [unknown, Limit])[]): Problem[] {
  return checks.map(([value, limit]) => outside(value, limit)).filter((problem) => problem !== null)
}

/** The problem of a word that is none of those known; null where it is one. */
export function unknownWord(value: unknown, field: string, name: string, words: readonly string[]): Problem | null {
  if (words.includes(value as string)) return null
  const instead = `Give ${words.map((word) => `'${word}'`).join(' or ')}.`
  if (value === undefined || value === null || value === '') {
    return { code: 'missing', field, what: `${capital(name)} is missing.`, instead }
  }
  return { code: 'unknown-word', field, what: `${capital(name)} can't be "${String(value)}".`, instead }
}

function rangeOf({ least, most, unit, above }: Limit): string {
  return above
    ? `more than ${shown(least, '')} and at most ${shown(most, unit)}`
    : `${shown(least, '')} to ${shown(most, unit)}`
}

function shown(value: number, unit: string): string {
  const figure = Number.isFinite(value) ? showNumber(value, 3) : value < 0 ? 'minus infinity' : 'infinity'
  return unit === '' ? figure : `${figure} ${unit}`
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
