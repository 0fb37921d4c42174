// The balance of charges of a bath: what is positive less what is negative, over all that is dissolved.
import type { Constants } from './constants.ts'

/** Totals in mol/kg of water. `cation`: the partner of the alkalinity. `calcium`: how much calcium there is in it that
 * binds citrate and acetate; 0: it binds nothing. */
export type Totals = { acetic: number; citric: number; carbon: number; cation: number; calcium: number }

/** A settled bath: ln of the activity of H+, and the ionic strength in mol/kg, which is never nothing. */
export type Settled = { lnH: number; ionic: number }

/** pH, which is -log10 of the activity of H+. */
export function phOf({ lnH }: Settled): number {
  return -lnH / Math.LN10
}

/** Finds where the charges balance and the ionic strength is that of what is dissolved then, by Newton's method on both,
 * ln aH and the ionic strength. `from`: where to begin. `lastStep`: it ends with a step in ln aH smaller than that, and
 * what is then still missing is about that step squared (with calcium about a tenth of it).
 *
 * Activities by Davies, Ion Association (1962): log γ = -A z² (√I/(1+√I) - 0.3 I), neutral species 1. Good to an ionic
 * strength of some 0.5 mol/kg. An acid's mean charge z falls with ln aH by the variance of z, and with ln γ by the
 * covariance of z and z²; the mean of z² falls with ln γ by its variance. So powers of z up to the fourth are needed. */
export function settle(totals: Totals, k: Constants, from: Settled, lastStep = 1e-5): Settled {
  const { acetic, citric, carbon, cation, calcium } = totals
  const davies = -Math.LN10 * k.daviesA
  let { lnH, ionic } = from
  let freeCalcium = calcium
  for (let turn = 0; turn < TURNS_MOST; turn++) {
    const root = Math.sqrt(ionic)
    const perRoot = 1 / (1 + root)
    const g = Math.exp(davies * (root * perRoot - 0.3 * ionic))
    const lnActivityByI = davies * ((perRoot * perRoot) / (2 * root) - 0.3)
    const h = Math.exp(lnH)
    const g2 = g * g
    const perG2 = 1 / g2
    const perGH = 1 / (g * h)
    const perG3H = perGH * perG2
    const hydrogen = h * g * perG2
    const hydroxide = k.water * perGH
    // Each acid's species relative to the one with all its protons. What calcium binds counts with its anion: it has given
    // off the same protons.
    const g4 = g2 * g2
    const onG4 = freeCalcium * g4
    const a = k.acetic * perGH * (1 + onG4 * CALCIUM_ACETATE)
    const b1 = k.carbonic1 * perGH
    const b2 = b1 * k.carbonic2 * perG3H
    const bare1 = k.citric1 * perGH
    const bare2 = bare1 * k.citric2 * perG3H
    const c1 = bare1 * (1 + onG4 * CALCIUM_CITRATE_1)
    const c2 = bare2 * (1 + onG4 * g4 * CALCIUM_CITRATE_2)
    const bare3 = bare2 * k.citric3 * perG3H * perG2
    const c3 = bare3 * (1 + onG4 * g4 * g4 * CALCIUM_CITRATE_3)
    // Means of z, z², z³ and z⁴ over the species of each acid.
    const aMean = a / (1 + a)
    const perC = 1 / (1 + c1 + c2 + c3)
    const cMean = (c1 + 2 * c2 + 3 * c3) * perC
    const cSquare = (c1 + 4 * c2 + 9 * c3) * perC
    const cCube = (c1 + 8 * c2 + 27 * c3) * perC
    const cFourth = (c1 + 16 * c2 + 81 * c3) * perC
    const perB = 1 / (1 + b1 + b2)
    const bMean = (b1 + 2 * b2) * perB
    const bSquare = (b1 + 4 * b2) * perB
    const bCube = (b1 + 8 * b2) * perB
    const bFourth = (b1 + 16 * b2) * perB
    const aSpread = acetic * aMean * (1 - aMean)
    const spread11 = aSpread + citric * (cSquare - cMean * cMean) + carbon * (bSquare - bMean * bMean)
    const spread12 = aSpread + citric * (cCube - cMean * cSquare) + carbon * (bCube - bMean * bSquare)
    const spread22 = aSpread + citric * (cFourth - cSquare * cSquare) + carbon * (bFourth - bSquare * bSquare)
    const balance = cation + hydrogen - hydroxide - acetic * aMean - citric * cMean - carbon * bMean
    const strength = 0.5 * (cation + hydrogen + hydroxide + acetic * aMean + citric * cSquare + carbon * bSquare)
    // Newton's step: both misses, and how each of them moves with ln aH and with the ionic strength.
    const miss = strength - ionic
    const balanceByH = hydrogen + hydroxide + spread11
    const balanceByI = (spread12 + hydroxide - hydrogen) * lnActivityByI
    const strengthByH = 0.5 * (hydrogen - hydroxide - spread12)
    const missByI = 1 + 0.5 * (hydrogen + hydroxide + spread22) * lnActivityByI
    const whole = balanceByH * missByI + balanceByI * strengthByH
    const step = Math.max(-STEP_MOST, Math.min(STEP_MOST, -(balance * missByI + balanceByI * miss) / whole))
    lnH += step
    // Never below a hundredth: the root of a negative strength is none.
    const before = ionic
    ionic = Math.max(before * 0.01, before + (balanceByH * miss - strengthByH * balance) / whole)
    if (calcium > 0) {
      const bound = (acetic * (a - k.acetic * perGH)) / (1 + a) + citric * (c1 - bare1 + c2 - bare2 + c3 - bare3) * perC
      freeCalcium *= calcium / (freeCalcium + bound)
    }
    // ln aH may stand still for one turn, by chance, while the ionic strength still moves.
    if (Math.abs(step) < lastStep && Math.abs(ionic - before) < IONIC_SHARE * lastStep * ionic) break
  }
  return { lnH, ionic }
}

/** A step of more than a hundredfold would only come from a flat stretch, where it means nothing. */
const STEP_MOST = 4.6
const TURNS_MOST = 100
/** How much of itself the ionic strength may still move at the end, for each part that ln aH may: it tells less. */
const IONIC_SHARE = 100

// Ca²⁺ with acetate, and with citrate that has given off one, two and three protons, at 25 °C, after NIST 46, from memory.
const CALCIUM_ACETATE = 10 ** 1.18
const CALCIUM_CITRATE_1 = 10 ** 1.1
const CALCIUM_CITRATE_2 = 10 ** 2.86
const CALCIUM_CITRATE_3 = 10 ** 4.87
