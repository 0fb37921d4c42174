// Comma-separated values after RFC 4180: CR LF after each record, every field quoted that needs it, quotes doubled.

export type Cell = string | number | boolean | null

/** A file begins with it: without it the spreadsheets that open such files take UTF-8 for an old code page and spoil every
 * letter past ASCII. RFC 4180 is silent about it; readers that know UTF-8 pass over it. */
const BYTE_ORDER_MARK = '\ufeff'

/** `rows`: as many cells each as `header` has. Numbers are written with a decimal point and no unit; null is an empty
 * field, and so is a number that is none. */
export function csvFile(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const lines = [header, ...rows].map((row) => `${row.map(field).join(',')}\r\n`)
  return BYTE_ORDER_MARK + lines.join('')
}

function field(cell: Cell): string {
  if (cell === null) return ''
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no'
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  const safe = withoutFormula(cell)
  return /[",\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

const plainNumber = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i

/** A spreadsheet runs a text that begins with one of these as a formula, also behind white space, also where the sign is
 * the wide one of an East Asian keyboard. */
const formula = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/

/** Text that a spreadsheet would run gets an apostrophe before it, by which it is shown as it was written. A plain number
 * stays one, also below zero: it runs nothing. */
export function withoutFormula(text: string): string {
  return formula.test(text) && !plainNumber.test(text) ? `'${text}` : text
}
