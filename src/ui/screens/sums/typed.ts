// What is typed into the sums: how each begins, and what stays over leaving the screen and over a reload of the tab.
import type { Units } from '../../../core/quantity/index.ts'
import type { Cell, CellField, CellFields, Fields, Row, Rows, Typed } from './field.ts'
import type { Sum } from './sum.ts'

/** A sum as it stands before anything is typed, in the dyer's units. */
export function fresh({ fields }: Pick<Sum, 'fields'>, units: Units): Typed {
  return Object.fromEntries(Object.entries(fields).map(([id, field]) => [id, freshField(field, units)]))
}

function freshField(field: Fields[string], units: Units): Cell | Row[] {
  if (field.form !== 'rows') return freshCell(field, units)
  return field.start.map((given, key) => freshRow(field, key, units, given))
}

function freshCell(field: CellField, units: Units): Cell {
  if (field.form === 'name') return { text: '', unit: '' }
  return { text: field.start(units), unit: field.form === 'quantity' ? (field.units(units)[0] ?? '') : '' }
}

export function freshRow(
  { each }: Rows<CellFields>,
  key: number,
  units: Units,
  given: Record<string, string> = {}
): Row {
  const cells = Object.entries(each).map(([id, field]): [string, Cell] => {
    const cell = freshCell(field, units)
    return [id, { ...cell, text: given[id] ?? cell.text }]
  })
  return { key, cells: Object.fromEntries(cells) }
}

/** The text with its unit: a bare number gets the one its field shows. */
export function withUnit({ text, unit }: Cell): string {
  const typed = text.trim()
  const bare = typed !== '' && !/[\p{L}°%'"′″]/u.test(typed)
  return bare && unit !== '' ? `${typed} ${unit}` : typed
}

const known = new Map<string, Typed>()
const KEY = 'strandline sum '

/** What was typed last; null: nothing. A bare number keeps the unit it was typed under, whatever the settings say now. */
export function keptTyped(sum: Pick<Sum, 'id' | 'fields'>): Typed | null {
  const typed = known.get(sum.id) ?? stored(sum.id)
  return typed && fits(sum.fields, typed) ? typed : null
}

export function keepTyped(sumId: string, typed: Typed): void {
  known.set(sumId, typed)
  try {
    sessionStorage.setItem(KEY + sumId, JSON.stringify(typed))
  } catch {
    // No room or no leave: it lives as long as the page.
  }
}

export function forgetTyped(sumId: string): void {
  known.delete(sumId)
  try {
    sessionStorage.removeItem(KEY + sumId)
  } catch {
    // As above.
  }
}

function stored(sumId: string): Typed | null {
  try {
    return JSON.parse(sessionStorage.getItem(KEY + sumId) ?? 'null') as Typed | null
  } catch {
    return null
  }
}

/** Another version may have asked for other fields. */
function fits(fields: Fields, typed: Typed): boolean {
  if (typeof typed !== 'object') return false
  return Object.entries(fields).every(([id, field]) => {
    const there = typed[id]
    if (field.form !== 'rows') return isCell(there)
    const ids = Object.keys(field.each)
    return Array.isArray(there) && there.every(({ cells }) => cells && ids.every((one) => isCell(cells[one])))
  })
}

function isCell(there: unknown): there is Cell {
  const { text, unit } = (there ?? {}) as { [part in keyof Cell]?: unknown }
  return typeof text === 'string' && typeof unit === 'string'
}
