// How far the pH of a bath may lie from what is worked out. The model itself states how well it is computed; for what
// is measured out and for what it leaves out, the doubt is stated here.
import type { Totals } from './balance.ts'
import { type Air, CACO3_G_PER_MOL_OF_CHARGE } from './inputs.ts'

/** Acid: measured in a jug or on a kitchen scale, and as strong as its label, to 5 %. Alkalinity: a drop test or the
 * water works' yearly figure, to 10 % and to half a drop of 10 mg/L. Common practice, no source. */
export const statedDoubt = { acidPercent: 5, alkalinityPercent: 10, alkalinityMgPerLCaCO3: 5 } as const

/** pH by which the model itself is uncertain: 0.02 up to 40 °C, 0.05 above. At the boil published constants of acetic acid
 * (Harned & Ehlers 1933; Goldberg et al. 2002) part by 0.03. */
export function modelDoubtPh(tempC: number): number {
  return tempC <= 40 ? 0.02 : 0.05
}

/** The same bath at the acid end of the doubt: more acid, less alkalinity, and that alkalinity wholly of calcium, which
 * binds citrate and so drives its protons off. `waterShare`: water from the tap in a kg of the bath's water. */
export function acidEnd(totals: Totals, waterShare: number, air: Air): Totals {
  return shifted(totals, waterShare, air, 1)
}

/** The same bath at the alkaline end: less acid, more alkalinity, no calcium. */
export function alkalineEnd(totals: Totals, waterShare: number, air: Air): Totals {
  return shifted(totals, waterShare, air, -1)
}

function shifted(totals: Totals, waterShare: number, air: Air, towardsAcid: 1 | -1): Totals {
  const { acidPercent, alkalinityPercent, alkalinityMgPerLCaCO3 } = statedDoubt
  const least = (alkalinityMgPerLCaCO3 / 1000 / CACO3_G_PER_MOL_OF_CHARGE) * waterShare
  const doubt = Math.max((totals.cation * alkalinityPercent) / 100, least)
  const cation = Math.max(0, totals.cation - towardsAcid * doubt)
  const acid = 1 + (towardsAcid * acidPercent) / 100
  return {
    acetic: totals.acetic * acid,
    citric: totals.citric * acid,
    carbon: air === 'closed' ? cation : 0,
    cation,
    calcium: towardsAcid === 1 ? cation / 2 : 0
  }
}
