// What a bath is made of, as a dyer gives it, and what it comes to in mol.
import { type Problem, type Refused, refuse } from '../answer.ts'
import { type Limit, outside, unknownWord, within } from '../limits.ts'
import type { Totals } from './balance.ts'

export type CitricForm = 'anhydrous' | 'monohydrate'
/** Closed: all carbon dioxide of the water stays in. Open: all of it is driven off, the far end of a long boil. */
export type Air = 'closed' | 'open'

/** Water and vinegar in mL, vinegar's strength in g of acetic acid for 100 mL, citric acid in g, the water's alkalinity
 * in mg/L as CaCO3, temperature in °C. */
export type Bath = {
  waterML: number
  vinegarML: number
  vinegarPercentWV: number
  citricG: number
  citricForm: CitricForm
  alkalinityMgPerLCaCO3: number
  tempC: number
  air: Air
}

/** The same in mol (of charge, for the alkalinity), with the mass of water: 1 mL of water or vinegar counts as 1 g,
 * citric acid adds none. */
export type Moles = { acetic: number; citric: number; alkalinity: number; waterKg: number }

export const ACETIC_G_PER_MOL = 60.052
export const CITRIC_G_PER_MOL: Record<CitricForm, number> = { anhydrous: 192.123, monohydrate: 210.138 }
/** Half the molar mass of CaCO3: a mole of it takes up two of acid. */
export const CACO3_G_PER_MOL_OF_CHARGE = 50.0435
/** mol/kg of both acids together: no more than the tables that the model was held against. */
export const ACID_MOST = 1

export const bathLimits = {
  // Not only more than nothing: of what is next to nothing no share can be worked out.
  waterML: { field: 'waterML', name: 'the water', unit: 'mL', least: 0.001, most: 1e6 },
  vinegarML: { field: 'vinegarML', name: 'the vinegar', unit: 'mL', least: 0, most: 1e6 },
  vinegarPercentWV: { field: 'vinegarPercentWV', name: "the vinegar's strength", unit: '% w/v', least: 0, most: 100 },
  citricG: { field: 'citricG', name: 'the citric acid', unit: 'g', least: 0, most: 1e6 },
  alkalinityMgPerLCaCO3: {
    field: 'alkalinityMgPerLCaCO3',
    name: 'the alkalinity',
    unit: 'mg/L as CaCO3',
    least: 0,
    most: 1000
  },
  tempC: { field: 'tempC', name: 'the temperature', unit: '°C', least: 0, most: 100 }
} as const satisfies Record<string, Limit>
export const citricForms: readonly CitricForm[] = ['anhydrous', 'monohydrate']
const airs: readonly Air[] = ['closed', 'open']

export function molesOf(bath: Bath): Moles {
  return {
    acetic: (bath.vinegarML * bath.vinegarPercentWV) / 100 / ACETIC_G_PER_MOL,
    citric: bath.citricG / CITRIC_G_PER_MOL[bath.citricForm],
    alkalinity: ((bath.alkalinityMgPerLCaCO3 / 1000) * (bath.waterML / 1000)) / CACO3_G_PER_MOL_OF_CHARGE,
    waterKg: (bath.waterML + bath.vinegarML) / 1000
  }
}

/** Every problem of a bath's fields; null where there is none. */
export function bathRefused(bath: Bath): Refused | null {
  // Nearly always all is well, and a pot's pH is worked out while somebody types.
  const fits =
    within(bath.waterML, bathLimits.waterML) &&
    within(bath.vinegarML, bathLimits.vinegarML) &&
    within(bath.vinegarPercentWV, bathLimits.vinegarPercentWV) &&
    within(bath.citricG, bathLimits.citricG) &&
    within(bath.alkalinityMgPerLCaCO3, bathLimits.alkalinityMgPerLCaCO3) &&
    within(bath.tempC, bathLimits.tempC) &&
    citricForms.includes(bath.citricForm) &&
    airs.includes(bath.air) &&
    (bath.vinegarPercentWV > 0 || bath.vinegarML === 0)
  return fits ? null : refuse(...problemsOf(bath))
}

function problemsOf(bath: Bath): Problem[] {
  const problems = [
    ...Object.values(bathLimits).map((limit) => outside(bath[limit.field], limit)),
    unknownWord(bath.citricForm, 'citricForm', 'the kind of citric acid', citricForms),
    unknownWord(bath.air, 'air', 'the air', airs)
  ].filter((problem) => problem !== null)
  if (problems.length > 0) return problems
  const instead = 'Give what the bottle says, for example 5 % w/v.'
  return [{ code: 'outside', field: 'vinegarPercentWV', what: 'Vinegar of 0 % is water.', instead }]
}

/** Refuses a bath that the model does not hold for. */
export function molesRefused({ acetic, citric, alkalinity, waterKg }: Moles, { air, vinegarML }: Bath): Refused | null {
  const field = vinegarML > 0 && acetic >= citric ? 'vinegarML' : 'citricG'
  if (acetic + citric > ACID_MOST * waterKg * (1 + 1e-9)) {
    const what = 'That is more than 1 mol of acid in a litre, far more than a dye bath holds.'
    return refuse({ code: 'too-strong', field, what, instead: 'Give more water or less acid.' })
  }
  // Citric acid gives off three protons. Below that no pH is a degassed one: the carbonate can't all leave.
  if (air === 'open' && alkalinity > 0 && acetic + 3 * citric <= alkalinity) {
    const what = "The acid does not use up the water's alkalinity, so the carbon dioxide can't all leave."
    return refuse({ code: 'not-neutralised', field, what, instead: "Give more acid, or air 'closed'." })
  }
  return null
}

/** mol in the bath as mol/kg of water. The carbon stays with a closed bath and is gone from an open one. */
export function totalsOf({ acetic, citric, alkalinity, waterKg }: Moles, { air }: Bath): Totals {
  const cation = alkalinity / waterKg
  const carbon = air === 'closed' ? cation : 0
  return { acetic: acetic / waterKg, citric: citric / waterKg, carbon, cation, calcium: 0 }
}

/** kg of water from the tap in a kg of the bath's water; the rest came with the vinegar. */
export function waterShare({ waterML, vinegarML }: Bath): number {
  return waterML / (waterML + vinegarML)
}
