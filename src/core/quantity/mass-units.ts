// Sizes of mass units in grams, exact by the definition of the pound as 0.45359237 kg and the grain as its 7000th part
// (NIST SP 811 App. B; NIST Handbook 44 App. C).
const massUnitG = {
  mg: 0.001,
  g: 1,
  kg: 1000,
  grain: 0.06479891,
  dram: 1.7718451953125,
  oz: 28.349523125,
  'troy oz': 31.1034768,
  lb: 453.59237,
  stone: 6350.29318
} as const

export type MassUnit = keyof typeof massUnitG
export const massUnits = Object.keys(massUnitG) as MassUnit[]

/** A mass in `unit`, as g. */
export function massG(value: number, unit: MassUnit): number {
  return value * massUnitG[unit]
}

/** A mass in g, as `unit`. */
export function fromG(valueG: number, unit: MassUnit): number {
  return valueG / massUnitG[unit]
}
