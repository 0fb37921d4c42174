// A result as plain text, for a notebook.
import type { Cell, CellField, Fields, Typed } from './field.ts'
import type { Result, Sum } from './sum.ts'
import { withUnit } from './typed.ts'

export function asText(sum: Pick<Sum, 'title' | 'fields'>, typed: Typed, result: Result): string {
  const { figures, doubt, say = [], table, put } = result
  const lines = [
    sum.title,
    ...Object.entries(sum.fields).flatMap(([id, field]) =>
      field.when && !field.when(typed) ? [] : given(field, typed[id])
    ),
    '',
    ...figures.map(({ what, figure, also }) => `${what}: ${figure}${also ? ` (${also})` : ''}`),
    ...(doubt ? [doubt] : []),
    ...say,
    ...(table ? ['', table.head.join('\t'), ...table.rows.map((cells) => cells.join('\t'))] : []),
    '',
    ...put
  ]
  return `${lines.join('\n').replaceAll('\u00a0', ' ')}\n`
}

function given(field: Fields[string], there: Typed[string] | undefined): string[] {
  if (there === undefined) return []
  if (field.form !== 'rows') return Array.isArray(there) ? [] : lineOf(field.label, field, there)
  if (!Array.isArray(there)) return []
  return there.flatMap(({ cells }, i) => {
    const parts = Object.entries(field.each).flatMap(([key, each]) => lineOf(each.label, each, cells[key]))
    return parts.length === 0 ? [] : [`${field.one} ${i + 1}: ${parts.join(', ')}`]
  })
}

function lineOf(label: string, field: CellField, cell: Cell | undefined): string[] {
  const text = cell?.text.trim() ?? ''
  if (!cell || text === '') return []
  if (field.form === 'choice') return [`${label}: ${field.options.find(({ value }) => value === text)?.label ?? text}`]
  if (field.form === 'name') return [`${label}: ${text}`]
  const sign = field.sign === undefined || /[\p{L}%:]/u.test(text) ? '' : ` ${field.sign}`
  return [`${label}: ${withUnit(cell)}${sign}`]
}
