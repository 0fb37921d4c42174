// Reads the quantities in a step's fields, with the values of inputs and loop items put in, and gathers what is wrong.
import {
  type Depth,
  type Duration,
  type KitchenCountry,
  type Rate,
  type Read,
  readAmount,
  readDepth,
  readDuration,
  readNumber,
  readRate,
  readTemperature,
  readTemperatureRange,
  type WrittenAmount
} from '../quantity/index.ts'
import type { RangeDraft } from './draft.ts'
import type { Material } from './model.ts'
import { suggest } from './nearest.ts'
import type { ProblemCode } from './problem-codes.ts'
import { remembering } from './remembering.ts'
import type { AsWritten } from './schema/fields.ts'
import { fillIn, type Scope } from './scope.ts'
import { rangeWords } from './words.ts'

/** The same few quantities stand in a protocol again and again, and each is read when the text is looked at, when it is
 * tried out and for every pot. What is read of a text never changes, and nobody changes what was read. */
const durations = remembering(readDuration)
const temperatures = remembering(readTemperature)
const ranges = remembering(readTemperatureRange)
const rates = remembering(readRate)
const depths = remembering(readDepth)
const amountsIn = (kitchen: KitchenCountry | null) => remembering((text) => readAmount(text, { kitchen }))
const amounts = {
  none: amountsIn(null),
  us: amountsIn('us'),
  metric: amountsIn('metric'),
  imperial: amountsIn('imperial')
}

export type FieldPath = (string | number)[]
export type FieldProblem = { at: FieldPath; code: ProblemCode; what: string; instead: string }

export const water: Material = { id: 'water', label: 'water', kind: 'water', percent: null, amount: null }

export class Reading {
  readonly problems: FieldProblem[] = []
  readonly scope: Scope
  readonly #bathC: number
  #heedsBath = false

  /** `bathC`: the bath as far as it is known by then. */
  constructor(scope: Scope, bathC: number = scope.startC) {
    this.scope = scope
    this.#bathC = bathC
  }

  /** Whether what was read would be another with a warmer bath, or a colder one. */
  get heedsBath(): boolean {
    return this.#heedsBath
  }

  bathIsOver(tempC: number): boolean {
    this.#heedsBath = true
    return this.#bathC > tempC
  }

  say(at: FieldPath, code: ProblemCode, what: string, instead: string): void {
    this.problems.push({ at, code, what, instead })
  }

  /** A text for people, its {names} filled in. */
  text(written: AsWritten, at: FieldPath): string {
    return this.#fill(String(written), this.scope.shown, at)
  }

  textOr(written: string | undefined, at: FieldPath, usual: string): string {
    return written === undefined ? usual : this.text(written, at)
  }

  duration(written: AsWritten, at: FieldPath): Duration | null {
    return this.#quantity(written, at, durations)
  }

  /** One length of time: the upper end of a range. */
  ms(written: AsWritten | undefined, at: FieldPath): number | null {
    if (written === undefined) return null
    const duration = this.duration(written, at)
    return duration ? (duration.highMs ?? duration.lowMs) : null
  }

  tempC(written: AsWritten, at: FieldPath): number | null {
    return this.#quantity(written, at, temperatures)?.tempC ?? null
  }

  range(written: AsWritten, at: FieldPath): RangeDraft | null {
    const range = this.#quantity(written, at, ranges)
    return range && { lowC: range.lowC, highC: range.highC, boil: range.boil, shown: rangeWords(range) }
  }

  rate(written: AsWritten, at: FieldPath): Rate | null {
    return this.#quantity(written, at, rates)
  }

  depth(written: AsWritten, at: FieldPath): Depth | null {
    return this.#quantity(written, at, depths)
  }

  number(written: AsWritten, at: FieldPath, limits: { least?: number; most?: number } = {}): number | null {
    return this.#quantity(written, at, (text) => readNumber(text, limits))
  }

  /** `bare`: what would be right in place of a number without a unit, where it is no usual amount. */
  amount(written: AsWritten, at: FieldPath, bare?: string): WrittenAmount | null {
    return this.#quantity(written, at, amounts[this.scope.kitchen ?? 'none'], bare)
  }

  /** A material by its id or its label; the case of letters does not matter. */
  material(named: string, at: FieldPath): Material | null {
    const wanted = named.trim().toLowerCase()
    const { materials } = this.scope
    const found =
      materials.find((m) => m.id.toLowerCase() === wanted) ?? materials.find((m) => m.label.toLowerCase() === wanted)
    if (found) return found
    if (wanted === 'water') return water
    const known = materials.flatMap(({ id, label }) => (label.toLowerCase() === id.toLowerCase() ? [id] : [id, label]))
    const instead = materials.length === 0 ? `list ${named} under materials` : suggest(named, known, 'materials')
    this.say(at, 'unknown-material', `There is no material ${named}.`, instead)
    return null
  }

  #fill(text: string, values: Record<string, string>, at: FieldPath): string {
    const filled = fillIn(text, values)
    for (const name of filled.unknown) {
      const instead = suggest(name, Object.keys(values), 'inputs and items')
      this.say(at, 'unknown-input', `{${name}} stands for nothing here.`, instead)
    }
    return filled.text
  }

  #quantity<T>(written: AsWritten, at: FieldPath, read: (text: string) => Read<T>, bare?: string): T | null {
    const before = this.problems.length
    const text = this.#fill(String(written), this.scope.quantities, at)
    if (this.problems.length > before) return null
    const found = read(text)
    if (found.ok) return found.value
    const { code, found: what, instead } = found.problem
    this.say(
      at,
      code,
      what === '' ? 'Nothing stands here.' : `"${what}" can't be read.`,
      (code === 'unit-missing' && bare) || instead
    )
    return null
  }
}
