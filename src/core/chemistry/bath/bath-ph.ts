import type { Answer } from '../answer.ts'
import { phOf, type Settled, settle, type Totals } from './balance.ts'
import { type Constants, constantsAt } from './constants.ts'
import { acidEnd, alkalineEnd, modelDoubtPh } from './doubt.ts'
import { type Bath, bathRefused, molesOf, molesRefused, totalsOf, waterShare } from './inputs.ts'

/** `ph` with the ends of its doubt. */
export type BathPh = { ph: number; lowPh: number; highPh: number }

/** The pH of a bath of water, vinegar and citric acid at `tempC`, without goods: wool takes up acid and raises it.
 * Predict for planning, measure for the record.
 *
 * Units: see Bath. Ranges: water from 0.001 to 1,000,000 mL, vinegar up to that, its strength up to 100 % w/v,
 * alkalinity up to 1000 mg/L as CaCO3, 0 to 100 °C, up to 1 mol of acid in a kg of water.
 * Refuses what lies outside, is missing or is no number; and an open bath whose acid does not exceed its alkalinity.
 *
 * `lowPh` and `highPh` stand for the doubt of what was measured out, of the model, and of calcium (see doubt.ts), for the
 * `air` given. A real pot lies between closed and open, so its doubt goes from the closed low to the open high.
 *
 * Source: equilibria of acetic, citric and carbonic acid with Davies' activity coefficients; constants and their sources
 * in constants.ts. Held against PHREEQC 3.8.9 (USGS) with the same constants. */
export function bathPh(bath: Bath): Answer<BathPh> {
  const refused = bathRefused(bath)
  if (refused) return refused
  const moles = molesOf(bath)
  return molesRefused(moles, bath) ?? withDoubt(totalsOf(moles, bath), bath)
}

/** The ends of a doubt are wanted to a hundredth. */
const END_STEP = 0.02

function withDoubt(totals: Totals, bath: Bath): BathPh {
  const { tempC, air } = bath
  const share = waterShare(bath)
  const constants = constantsAt(tempC)
  const settled = settle(totals, constants, guess(totals, constants))
  const ph = phOf(settled)
  const low = phOf(settle(acidEnd(totals, share, air), constants, settled, END_STEP))
  const high = phOf(settle(alkalineEnd(totals, share, air), constants, settled, END_STEP))
  const model = modelDoubtPh(tempC)
  const capped = air === 'open' ? Math.min(high, bicarbonatePh(constants)) : high
  return { ph, lowPh: Math.min(ph, low) - model, highPh: Math.max(ph, capped) + model }
}

/** At the alkaline end an open bath may have more alkalinity than acid. What is left of it stays as bicarbonate, whose
 * solution stands half-way between the two pK of carbonic acid. */
function bicarbonatePh({ carbonic1, carbonic2 }: Constants): number {
  return -Math.log10(carbonic1 * carbonic2) / 2
}

/** Where to begin: as if the strongest acid there were alone and gave off one proton; where it does not use up the
 * alkalinity, as bicarbonate with the carbonic acid it made. Never from nothing: even pure water has its ions. */
function guess({ acetic, citric, cation }: Totals, k: Constants): Settled {
  const acid = acetic + citric
  const over = acid - cation
  if (over <= 0) {
    const h = (k.carbonic1 * Math.max(acid, PURE)) / Math.max(-over, PURE)
    return { lnH: Math.log(h), ionic: Math.max(cation, PURE) }
  }
  const strength = citric > 0 ? k.citric1 : k.acetic
  const b = strength + cation
  const h = Math.max(PURE, (-b + Math.sqrt(b * b + 4 * strength * over)) / 2)
  return { lnH: Math.log(h), ionic: cation + h }
}

/** H+ of pure water at 25 °C, mol/kg. */
const PURE = 1e-7
