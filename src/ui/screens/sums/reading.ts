// From what was typed to what a sum is worked out of: what is missing yet, and what can't be, each at its field.
import { isRefused, type Problem } from '../../../core/chemistry/index.ts'
import type { QuantityProblem, Units } from '../../../core/quantity/index.ts'
import type { Cell, CellField, CellFields, Fields, Row, Rows, Typed } from './field.ts'
import type { Result, Sum } from './sum.ts'
import { withUnit } from './typed.ts'

/** Where a field stands: "goodsG", or "dyes.0.parts" by the row's number. */
export type Place = string

export type Answer =
  | { kind: 'wanted'; missing: readonly string[] }
  | { kind: 'wrong'; problems: ReadonlyMap<Place, string>; labels: readonly string[] }
  | { kind: 'worked'; result: Result }

/** The whole way from words to words. What is missing is told before what is wrong with the rest. */
export function answerOf(sum: Sum, typed: Typed, units: Units): Answer {
  const reader = new Reader(typed, units)
  const given = reader.fields(sum.fields)
  const { missing, problems, labels } = reader
  if (problems.size > 0) return { kind: 'wrong', problems, labels: [...labels] }
  if (missing.length > 0) return { kind: 'wanted', missing }
  const worked = sum.work(given, units)
  if (!isRefused(worked)) return { kind: 'worked', result: worked }
  for (const problem of worked.problems) reader.refuse(placeOf(sum, problem), problemSay(problem, units), sum.fields)
  return { kind: 'wrong', problems, labels: [...labels] }
}

/** How each field was understood, where that reads otherwise than what stands in it. */
export function echoOf(field: CellField, cell: Cell, units: Units): string {
  if (field.form !== 'quantity') return ''
  const typed = withUnit(cell)
  const read = field.read(typed)
  if (!read.ok) return ''
  const shown = field.show(read.value, units)
  const plain = (text: string): string => text.replace(/\s/g, '')
  return shown === '' || plain(shown) === plain(typed) || plain(shown).startsWith(plain(typed)) ? '' : `= ${shown}`
}

/** A label within a sentence. */
export function uncapital(label: string): string {
  return /^[A-Z][a-z ]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label
}

class Reader {
  readonly missing: string[] = []
  readonly problems = new Map<Place, string>()
  readonly labels = new Set<string>()
  private readonly typed: Typed
  private readonly units: Units

  constructor(typed: Typed, units: Units) {
    this.typed = typed
    this.units = units
  }

  fields(fields: Fields): Record<string, unknown> {
    const given: Record<string, unknown> = {}
    for (const [id, field] of Object.entries(fields)) {
      if (field.when && !field.when(this.typed)) continue
      const there = this.typed[id]
      if (field.form === 'rows') given[id] = this.rows(id, field, Array.isArray(there) ? there : [])
      else if (there && !Array.isArray(there)) given[id] = this.cell(id, field.label, field, there)
    }
    return given
  }

  /** Rows that are empty altogether are left out, down to the fewest there must be. */
  private rows(id: string, field: Rows<CellFields>, there: Row[]): Record<string, unknown>[] {
    const filled = there.filter((row) => !isEmpty(field, row, this.units))
    const read = filled.length >= field.least ? filled : there
    if (read.length < field.least) this.missing.push(field.label)
    return read.map(({ cells }) => {
      const at = there.findIndex((row) => row.cells === cells)
      const given: Record<string, unknown> = {}
      for (const [key, each] of Object.entries(field.each)) {
        const cell = cells[key] ?? { text: '', unit: '' }
        given[key] = this.cell(`${id}.${at}.${key}`, `${field.one} ${at + 1}, ${uncapital(each.label)}`, each, cell)
      }
      return given
    })
  }

  private cell(place: Place, label: string, field: CellField, cell: Cell): unknown {
    if (field.form !== 'quantity') return cell.text.trim()
    const text = withUnit(cell)
    if (text === '' && !field.optional) {
      this.missing.push(label)
      return undefined
    }
    const read = field.read(text)
    if (read.ok) return read.value
    this.problems.set(place, readSay(cell.text.trim(), read.problem))
    this.labels.add(label)
    return undefined
  }

  /** What a formula refuses, at the field that is at fault; what belongs to none stands with the first. */
  refuse(place: Place, say: string, fields: Fields): void {
    const [id = '', ...inRow] = place.split('.')
    const at = fields[id] ? id : (Object.keys(fields)[0] ?? '')
    const row = inRow.length === 2 && Array.isArray(this.typed[id]) ? this.rowOf(id, Number(inRow[0]), fields) : null
    const whole = row === null ? at : `${id}.${row}.${inRow[1]}`
    const before = this.problems.get(whole)
    this.problems.set(whole, before === undefined ? say : `${before} ${say}`)
    this.labels.add(fields[at]?.label ?? '')
  }

  /** A formula counts the rows it was given; empty ones were left out. */
  private rowOf(id: string, given: number, fields: Fields): number {
    const field = fields[id]
    const there = this.typed[id]
    if (field?.form !== 'rows' || !Array.isArray(there)) return given
    const filled = there.flatMap((row, at) => (isEmpty(field, row, this.units) ? [] : [at]))
    return filled.length >= field.least ? (filled[given] ?? given) : given
  }
}

/** Nothing of its own stands in it: what a fresh row begins with does not count, nor does a choice. */
function isEmpty({ each }: Rows<CellFields>, { cells }: Row, units: Units): boolean {
  return Object.entries(each).every(([key, field]) => {
    const text = cells[key]?.text.trim() ?? ''
    if (field.form === 'choice' || text === '') return true
    return field.form === 'quantity' && text === field.start(units)
  })
}

function placeOf({ renamed = {} }: Sum, { field }: Problem): Place {
  const place = field.replace(/\[(\d+)\]\.?/g, '.$1.').replace(/\.$/, '')
  return renamed[place] ?? place
}

function readSay(typed: string, { code, instead }: QuantityProblem): string {
  return code === 'out-of-range' ? `It can’t be ${typed}. ${instead}` : `“${typed}” can’t be read. ${instead}`
}

/** Formulas speak of °C. */
function problemSay({ what, instead }: Problem, units: Units): string {
  const said = `${what} ${instead}`
  if (units.temperature === 'C') return said
  const inF = (c: string): string => `${Math.round(Number(c) * 1.8 + 32)}`
  return said.replace(/([\d.]+)( to ([\d.]+))? °C(?!\/)/g, (_, a: string, range: string | undefined, b: string) =>
    range ? `${inF(a)} to ${inF(b)} °F` : `${inF(a)} °F`
  )
}
