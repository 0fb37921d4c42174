// Sizes of volume units in millilitres, all exact by definition.
// US measures: 231 cubic inches to the gallon, 2.54 cm to the inch (NIST SP 811 App. B; NIST Handbook 44 App. C).
// US legal measures: nutrition labelling, 21 CFR 101.9(b)(5)(viii).
// Imperial and Australian measures: from memory (gallon of 4.54609 L; 160 fl oz to it; tablespoon of 20 mL).
// The imperial cup is taken as half an imperial pint: from memory.
const volumeUnitML = {
  mL: 1,
  cL: 10,
  dL: 100,
  L: 1000,
  'US gallon': 3785.411784,
  'US quart': 946.352946,
  'US pint': 473.176473,
  'US cup': 236.5882365,
  'US fl oz': 29.5735295625,
  'US tbsp': 14.78676478125,
  'US tsp': 4.92892159375,
  'metric cup': 250,
  'metric tbsp': 15,
  'metric tsp': 5,
  'US legal cup': 240,
  'US legal tbsp': 15,
  'US legal tsp': 5,
  'US legal fl oz': 30,
  'Australian tbsp': 20,
  'imperial gallon': 4546.09,
  'imperial quart': 1136.5225,
  'imperial pint': 568.26125,
  'imperial cup': 284.130625,
  'imperial fl oz': 28.4130625
} as const

export type VolumeUnit = keyof typeof volumeUnitML
export const volumeUnits = Object.keys(volumeUnitML) as VolumeUnit[]

/** A volume in `unit`, as mL. */
export function volumeML(value: number, unit: VolumeUnit): number {
  return value * volumeUnitML[unit]
}

/** A volume in mL, as `unit`. */
export function fromML(valueML: number, unit: VolumeUnit): number {
  return valueML / volumeUnitML[unit]
}
