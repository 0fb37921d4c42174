// One sum: what it asks, how it is worked out, how the answer is shown. Any of them is drawn by the same form.
import type { about, Refused } from '../../../core/chemistry/index.ts'
import type { Units } from '../../../core/quantity/index.ts'
import type { Caution } from '../../../core/safety/caution.ts'
import type { Fields, Given } from './field.ts'

export const groups = ['Dye', 'Acid and pH', 'Water and goods', 'Heat', 'What went on'] as const
export type Group = (typeof groups)[number]

/** `also`: the same in another measure. */
export type Figure = { what: string; figure: string; also?: string }
export type Table = { caption: string; head: readonly string[]; rows: readonly (readonly string[])[] }

export type Result = {
  /** The first is what was asked for. */
  figures: readonly [Figure, ...Figure[]]
  /** All of them are what was asked for. */
  alike?: true
  /** How far it may be off, shortly: it stays in sight with the figures. */
  doubt?: string
  say?: readonly string[]
  table?: Table
  /** The formula with the numbers put in. */
  put: readonly string[]
  cautions?: readonly Caution[]
}

export type Worked = Refused | Result

type Described<F extends Fields> = {
  /** Its name in the address. */
  id: string
  title: string
  /** What it answers, as a dyer asks it. */
  ask: string
  group: Group
  /** Other words it is looked for by. */
  words?: string
  /** The functions that work it out: formula and source are theirs. */
  uses: readonly (keyof typeof about)[]
  fields: F
  /** Where a function calls a field otherwise than the form: its name there, and the id here. */
  renamed?: Readonly<Record<string, string>>
  work(given: Given<F>, units: Units): Worked
}

export type Sum = Omit<Described<Fields>, 'work'> & { work(given: Record<string, unknown>, units: Units): Worked }

/** The types of the fields hold inside a description only: the form gives what it read under the same ids. */
export function sum<const F extends Fields>(described: Described<F>): Sum {
  return described as unknown as Sum
}
