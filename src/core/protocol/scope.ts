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
  /** The bath as far as it is known, °C: says whether a bare temperature is waited for from above or below. */
  bathC: number
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

/** The scope inside one round of a loop. */
export function withItem(scope: Scope, loop: LoopItem): Scope {
  const name = loop.name
  return {
    ...scope,
    quantities: { ...scope.quantities, [name]: loop.item },
    shown: { ...scope.shown, [name]: loop.item },
    loops: [...scope.loops, loop]
  }
}
