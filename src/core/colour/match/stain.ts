// Bleed: what a witness cloth took from the yarn it was washed or pressed with.
import { type Answer, isRefused } from '../../chemistry/answer.ts'
import { type GreyStep, stainingStep } from './grey-scale.ts'
import { matchTo, type Told } from './match.ts'

/** Indicative: the step of ISO 105-A03 whose pair differs as much as the cloth before and after, in CIELAB units. */
export function stainOn(clean: Told, stained: Told): Answer<{ deltaE: number; greyStep: GreyStep }> {
  const match = matchTo(clean, stained)
  return isRefused(match) ? match : { deltaE: match.deltaE, greyStep: stainingStep(match.deltaE) }
}
