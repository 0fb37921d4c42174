// What stands on the shelf, as its label reads. JSON-native: it is stored whole and must read for ever.

export type Treated = 'yes' | 'no' | 'unknown'

/** One of several dyes in a bottle, by parts of dye, with the bottle it came out of where that is known. */
export type MixedPart = { name: string; parts: number; itemId: string | null }

export type Stock = {
  kind: 'stock'
  name: string
  /** The dye: its generic name and class, as on its own label. */
  dye: string
  /** g in 100 mL. */
  percentWV: number
  lot: string
  /** The day it was made, "2031-06-14"; null: not known. Its age is told, never an end of its life: no source has one. */
  madeOn: string | null
  /** A mixed stock keeps what it is mixed of: once mixed, the parts can't be varied. */
  parts: MixedPart[]
  note: string
}

export type Acid = {
  kind: 'acid'
  name: string
  acid: string
  form: 'liquid' | 'powder'
  /** Null: a powder that is weighed as it is. */
  percent: number | null
  basis: 'w/v' | 'w/w'
  densityGPerML: number | null
  lot: string
  note: string
}

export type Yarn = {
  kind: 'yarn'
  name: string
  fibre: string
  /** Shrink-resist treated wool strikes faster and cooler. */
  treated: Treated
  lot: string
  note: string
}

export type Water = {
  kind: 'water'
  name: string
  /** As CaCO3. */
  alkalinityMgPerL: number | null
  /** Where the figure comes from: "test strip, 2 June", "the supplier's report". */
  source: string
  note: string
}

export type Vessel = {
  kind: 'pot'
  name: string
  volumeML: number | null
  material: string
  lid: boolean
  note: string
}

export type Burner = { kind: 'burner'; name: string; heat: string; note: string }

export type Thing = Stock | Acid | Yarn | Water | Vessel | Burner
export type ThingKind = Thing['kind']

export const thingKinds = ['stock', 'acid', 'yarn', 'water', 'pot', 'burner'] as const satisfies ThingKind[]

/** What is left of it is counted in this; null: it is not used up. */
export function unitOf(thing: Thing): 'mL' | 'g' | null {
  switch (thing.kind) {
    case 'stock':
      return 'mL'
    case 'acid':
      return thing.form === 'liquid' ? 'mL' : 'g'
    case 'yarn':
      return 'g'
    case 'water':
    case 'pot':
    case 'burner':
      return null
  }
}
