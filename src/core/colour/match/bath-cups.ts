// How clear is the bath: a cup of it beside cups of the start liquor, all in one photo.
import { type Answer, type Problem, refuse } from '../../chemistry/answer.ts'
import { usualLadder } from '../../chemistry/uptake/exhaustion.ts'
import { deltaE, type Lab } from '../lab.ts'

export type Cup = { percent: number; lab: Lab }

export type BathClear = {
  /** What is left in the bath, in % of the start liquor, between the rungs by the colour. */
  leftPercent: number
  /** The rungs it lies between. A photo of cups is no more exact. */
  lowPercent: number
  highPercent: number
  /** How far the bath lies off the ladder, in CIELAB units: two dyes that are not taken up alike leave another hue. */
  offLadder: number
}

/** Cups that differ by less than this can't be told apart. Common practice, no source. */
const leastApart = 1

/** Of 3 to 20 cups of different strengths of 0 to 100 % (the usual ones are 50, 25, 12, 6, 3 and 0); refuses a ladder whose
 * neighbouring cups can't be told apart. A bath deeper than the deepest cup, or paler than the palest, is told as that cup. */
export function bathClear(ladder: readonly Cup[], bath: Lab): Answer<BathClear> {
  const cups = [...ladder].sort((one, other) => other.percent - one.percent)
  const problems = problemsOf(cups)
  if (problems.length > 0) return refuse(...problems)
  const steps = cups.slice(1).map((paler, nth) => between(cups[nth] as Cup, paler, bath))
  return steps.reduce((best, step) => (step.offLadder < best.offLadder ? step : best))
}

/** The nearest place on the straight line between two cups. */
function between(deeper: Cup, paler: Cup, bath: Lab): BathClear {
  const line = (['l', 'a', 'b'] as const).map((axis) => [
    paler.lab[axis] - deeper.lab[axis],
    bath[axis] - deeper.lab[axis]
  ])
  const along = line.reduce((sum, [step = 0, to = 0]) => sum + step * to, 0)
  const length = line.reduce((sum, [step = 0]) => sum + step * step, 0)
  const share = Math.min(1, Math.max(0, along / length))
  const off = Math.hypot(...line.map(([step = 0, to = 0]) => to - share * step))
  return {
    leftPercent: deeper.percent + share * (paler.percent - deeper.percent),
    lowPercent: paler.percent,
    highPercent: deeper.percent,
    offLadder: off
  }
}

function problemsOf(cups: Cup[]): Problem[] {
  const field = 'ladder'
  const instead = `Give cups such as ${usualLadder.slice(1).join(', ')} %.`
  if (cups.length < 3 || cups.length > 20) {
    return [
      {
        code: 'outside',
        field,
        what: `A ladder can't have ${cups.length} cups.`,
        instead: `${instead} Three to twenty.`
      }
    ]
  }
  const wrong = cups.find(({ percent }) => !(percent >= 0 && percent <= 100))
  if (wrong) return [{ code: 'outside', field, what: `A cup can't hold ${wrong.percent} %.`, instead }]
  return cups.slice(1).flatMap((paler, nth): Problem[] => {
    const deeper = cups[nth] as Cup
    if (deeper.percent > paler.percent && deltaE(deeper.lab, paler.lab) >= leastApart) return []
    const what = `The cups of ${deeper.percent} and ${paler.percent} % can't be told apart.`
    return [
      { code: 'does-not-fit', field, what, instead: 'Leave one out, or take the photo on white, in better light.' }
    ]
  })
}
