// What a sum asks for, as values: one form draws any of them.
import type { Read, Units } from '../../../core/quantity/index.ts'

/** What stands in one field: the words, and the unit that a bare number is in ('' where it has none). */
export type Cell = { text: string; unit: string }
export type Row = { key: number; cells: Record<string, Cell> }
/** All that was typed into a sum, by the ids of its fields. */
export type Typed = Record<string, Cell | Row[]>

type Shared = {
  label: string
  hint?: string
  /** Asked only then; else its value is left out. */
  when?: (typed: Typed) => boolean
}

/** `units`: those to choose from, the dyer's own first; none: the field shows `sign`, or nothing. */
export type Quantity<T> = Shared & {
  form: 'quantity'
  units: (units: Units) => readonly string[]
  sign?: string
  start: (units: Units) => string
  read: (text: string) => Read<T>
  /** As it was understood, in the dyer's units. */
  show(value: T, units: Units): string
  optional: boolean
  /** Its unit is chosen in a row too: other rows are all in the one they show, unless another is typed. */
  pickInRow?: true
}

export type Choice<T extends string> = Shared & {
  form: 'choice'
  options: readonly { value: T; label: string }[]
  start: (units: Units) => T
}

/** A name is free text; without one its row is called by its number. */
export type Name = Shared & { form: 'name' }

export type CellField = Quantity<unknown> | Choice<string> | Name
export type CellFields = Record<string, CellField>

/** The same few fields several times. `one`: what one of them is. */
export type Rows<R extends CellFields> = Shared & {
  form: 'rows'
  each: R
  one: string
  least: number
  most: number
  /** How the first rows are filled, by the ids of the fields. */
  start: readonly Record<string, string>[]
}

export type Fields = Record<string, CellField | Rows<CellFields>>

type ValueOf<F> =
  F extends Rows<infer R>
    ? Given<R>[]
    : F extends Quantity<infer T>
      ? T
      : F extends Choice<infer T>
        ? T
        : F extends Name
          ? string
          : never

/** The values of all fields, as they were read. */
export type Given<F> = { [K in keyof F]: ValueOf<F[K]> }

export function choice<const T extends string>(
  label: string,
  options: readonly (readonly [T, string])[],
  more: Pick<Shared, 'hint' | 'when'> & { start?: (units: Units) => T } = {}
): Choice<T> {
  const [first] = options
  if (!first) throw new Error(`${label} has nothing to choose from`)
  const listed = options.map(([value, said]) => ({ value, label: said }))
  return { form: 'choice', label, options: listed, start: () => first[0], ...more }
}

export function name(label: string): Name {
  return { form: 'name', label }
}

export function rows<R extends CellFields>(
  label: string,
  one: string,
  each: R,
  start: readonly Record<string, string>[],
  more: { least?: number; most?: number; hint?: string } = {}
): Rows<R> {
  return { form: 'rows', label, one, each, start, least: more.least ?? 1, most: more.most ?? 20, hint: more.hint }
}

/** Left empty it counts as `presumed`; where that is not nothing of it, the hint says what it is. */
export function optional<T, P>(field: Quantity<T>, presumed: P): Quantity<T | P> {
  const { read, show } = field
  return {
    ...field,
    label: presumed === 0 ? `${field.label} (if any)` : field.label,
    optional: true,
    read: (text) => (text.trim() === '' ? { ok: true, value: presumed } : read(text)),
    show: (value, units) => (value === presumed ? '' : show(value as T, units))
  }
}

/** Is that the choice made? */
export function chosen(typed: Typed, id: string, value: string): boolean {
  const cell = typed[id]
  return cell !== undefined && !Array.isArray(cell) && cell.text === value
}
