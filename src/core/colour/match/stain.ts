// Bleed: what a witness cloth took from the yarn it was washed or pressed with.
import { type Answer, isRefused, refuse } from '../../chemistry/answer.ts'
import { added, carriedVariance, covarianceOf, meanLab, minus, scaled, tripleOf } from '../covariance.ts'
import type { Lab } from '../lab.ts'
import { threeSd } from '../verdict/three-sd.ts'
import type { White } from '../white.ts'
import { type GreyStep, stainingStep } from './grey-scale.ts'
import { matchTo, type Told } from './match.ts'

/** Indicative: the step of ISO 105-A03 whose pair differs as much as the cloth before and after, in CIELAB units. */
export function stainOn(clean: Told, stained: Told): Answer<{ deltaE: number; greyStep: GreyStep }> {
  const match = matchTo(clean, stained)
  return isRefused(match) ? match : { deltaE: match.deltaE, greyStep: stainingStep(match.deltaE) }
}

/** One or several readings of the cloth, clean and stained. `together`: the nth of both are of one photo. */
export type ClothRead = { white: White; clean: Lab[]; stained: Lab[]; together: boolean }

export type Stain = {
  white: White
  clean: Lab
  stained: Lab
  /** CIE 1976, as the grey scale is graded. */
  deltaE: number
  greyStep: GreyStep
  /** One standard deviation of `deltaE` by how the readings stray; null: not known. */
  sd: number | null
  /** No larger than three such; null: not known. */
  chance: boolean | null
}

/** Refuses what has no reading; `field` is 'clean' or 'stained'. */
export function stainOfCloth({ white, clean, stained, together }: ClothRead): Answer<Stain> {
  for (const [field, labs] of Object.entries({ clean, stained })) {
    const what = `There is no reading of the ${field} cloth.`
    if (labs.length === 0) return refuse({ code: 'missing', field, what, instead: 'Give at least one.' })
  }
  const means = { clean: meanLab(clean), stained: meanLab(stained) }
  const found = stainOn({ lab: means.clean, white }, { lab: means.stained, white })
  if (isRefused(found)) return found
  const all = { white, ...means, ...found }
  if (clean.length < 2 || stained.length < 2) return { ...all, sd: null, chance: null }
  // In one photo light and card are the same for both: only how their difference strays counts.
  const doubt = together
    ? scaled(covarianceOf(clean.map((lab, nth) => minus(stained[nth] ?? lab, lab))), 1 / clean.length)
    : added(scaled(covarianceOf(clean), 1 / clean.length), scaled(covarianceOf(stained), 1 / stained.length))
  const freedom = together ? clean.length - 1 : clean.length + stained.length - 2
  const way = tripleOf(minus(means.stained, means.clean))
  // Where nothing differs there is no way: the middle of all three.
  const size = found.deltaE || Math.sqrt(3)
  const slopes = (found.deltaE === 0 ? [1, 1, 1] : way).map((part) => part / size) as [number, number, number]
  const sd = Math.sqrt(carriedVariance(doubt, slopes))
  return { ...all, sd, chance: found.deltaE <= threeSd(freedom) * sd }
}
