// Whether a person whistled a glide. First what no whistle is, whatever else speaks for it; then a small network of the
// usual kind (one hidden layer of tanh) weighs all that is known of it. Its weights were fitted to made-up whistles and
// to what looked most like one in made-up sound: tests/whistle-corpus/fit.ts makes weights.ts.
import type { Glide } from './glide.ts'
import type { Traits } from './traits.ts'
import { ENOUGH, FROM, SPREAD, weights } from './weights.ts'

/** What is no whistle at all. Wide: the weighing sees to the rest. */
export function canBeWhistled({ semitones, lengthMs }: Glide, traits: Traits): boolean {
  return (
    semitones >= 2.5 &&
    semitones <= 15.5 &&
    lengthMs >= 165 &&
    lengthMs <= 1_400 &&
    traits.heard >= 0.6 &&
    traits.share >= 0.1 &&
    traits.contrastDb >= 8 &&
    traits.back <= 0.25 &&
    traits.stray <= Math.max(2, 0.35 * semitones) &&
    traits.headMs <= 600 &&
    traits.tailMs <= 800 &&
    traits.stepped <= 0.7
  )
}

/** A start, not a law. A whistle that is missed is whistled again, an act that is wrongly taken for done is not: the limit
 * lies on that side. */
export function isWhistled(glide: Glide, traits: Traits): boolean {
  return canBeWhistled(glide, traits) && weightOf(inputsOf(glide, traits)) > ENOUGH
}

/** In the order of weights.ts. */
export function inputsOf({ semitones, lengthMs }: Glide, traits: Traits): number[] {
  return [
    semitones,
    lengthMs,
    traits.heard,
    traits.share,
    traits.contrastDb,
    traits.back,
    traits.stray,
    traits.headMs,
    traits.tailMs,
    traits.stepped,
    traits.bent,
    traits.rough,
    traits.jitter,
    traits.groundDb,
    traits.underDb,
    traits.overDb,
    traits.shareLow,
    traits.unsteadyDb,
    traits.companyDb,
    traits.secondDb,
    traits.beforeDb,
    traits.besideDb,
    traits.besideLowDb,
    traits.tiltDb,
    traits.flutterDb,
    traits.pathDb
  ]
}

/** Spreads from the middle, no further than so: what lies far outside of all that was seen says no more than its edge. */
const FAR = 4

function weightOf(inputs: readonly number[]): number {
  const scaled = inputs.map((input, nth) => {
    const away = (input - (FROM[nth] as number)) / (SPREAD[nth] as number)
    return Math.max(-FAR, Math.min(FAR, away))
  })
  let sum = weights.base
  for (const { bias, inputs: of, out } of weights.hidden) {
    let inner = bias
    scaled.forEach((value, nth) => {
      inner += value * (of[nth] as number)
    })
    sum += out * Math.tanh(inner)
  }
  return sum
}
