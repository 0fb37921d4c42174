// What names stand for while a protocol is read or made concrete: inputs, items of loops, materials, moments.
import type { KitchenCountry } from '../quantity/index.ts'
import type { Material } from './model.ts'

/** The item of one loop around a step: the third of five bands. */
export type LoopItem = { name: string; item: string; index: number; count: number; items: readonly string[] }

export type Scope = {
  kitchen: KitchenCountry | null
  /** Inputs and loop items as text that a quantity can be read from: "2 %", "1800 s". */
  quantities: Record<string, string>
  /** The same as a person reads them: "2 %", "30 min". */
  shown: Record<string, string>
  /** Loops around the step, innermost last. */
  loops: LoopItem[]
  materials: Material[]
  /** Explicit ids and marks of the whole protocol. */
  moments: ReadonlySet<string>
  /** The bath before anything is done. */
  startC: number
  boilC: number
  /** Holds that the boil cuts short are made longer; left out: they are not. */
  lengthen?: boolean
  /** Of the header; null: not given. */
  liquorRatio: number | null
}

const placeholder = /\{([^{}]*)\}/g

/** Puts values in place of {names}; tells the names that stand for nothing. */
export function fillIn(text: string, values: Record<string, string>): { text: string; unknown: string[] } {
  const unknown: string[] = []
  // Nearly every quantity, and each of them is read with every letter typed.
  if (!text.includes('{')) return { text, unknown }
  const filled = text.replace(placeholder, (all, name: string) => {
    const known = Object.hasOwn(values, name.trim()) ? values[name.trim()] : undefined
    if (known !== undefined) return known
    unknown.push(name.trim())
    return all
  })
  return { text: filled, unknown }
}

/** One protocol is worked with at a time, tried out and written out. */
const WHOLE_MOST = 4
/** More than the rounds that any protocol has. */
const ROUNDS_MOST = 2_000

const whole = new Map<string, Scope>()
const rounds = new WeakMap<Scope, Map<string, Scope>>()

/** One of the last that says the same, so that what was read in it need not be read again. Not to be changed. */
export function knownScope(scope: Scope): Scope {
  const key = JSON.stringify({ ...scope, moments: [...scope.moments] })
  const known = whole.get(key) ?? scope
  // Again the newest.
  whole.delete(key)
  whole.set(key, known)
  const [oldest] = whole.keys()
  if (whole.size > WHOLE_MOST && oldest !== undefined) whole.delete(oldest)
  return known
}

/** The scope inside one round of a loop: for the same scope the same again. */
export function withItem(scope: Scope, loop: LoopItem): Scope {
  const inside = rounds.get(scope) ?? new Map<string, Scope>()
  rounds.set(scope, inside)
  const key = JSON.stringify(loop)
  const known = inside.get(key)
  if (known) return known
  const { name, item } = loop
  const made: Scope = {
    ...scope,
    quantities: { ...scope.quantities, [name]: item },
    shown: { ...scope.shown, [name]: item },
    loops: [...scope.loops, loop]
  }
  if (inside.size >= ROUNDS_MOST) inside.clear()
  inside.set(key, made)
  return made
}
