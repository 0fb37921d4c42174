// Grams for a litre need a litre: is the liquor known wherever it is asked for?
import { readAmount } from '../../quantity/index.ts'
import type { Tried } from '../read/drafts.ts'
import type { Bearing } from '../read/header.ts'
import type { Steps } from '../read/steps.ts'

export function liquorProblems(header: Bearing, tried: Tried, steps: Steps): void {
  if (header.liquorRatio !== null) return
  const drafts = [...tried.drafts]
  if (drafts.some(([, all]) => all.some(({ dose }) => dose?.fills))) return
  for (const [step, all] of drafts) {
    const asks = all.some(({ dose }) => {
      if (!dose) return false
      const whole = dose.amount.kind === 'share' || dose.amount.kind === 'rest' ? dose.material.amount : null
      const read = whole === null ? null : readAmount(whole, { kitchen: header.kitchen })
      return dose.amount.kind === 'gPerL' || (read?.ok === true && read.value.kind === 'gPerL')
    })
    const place = steps.places.get(step)
    if (!asks || !place) continue
    const instead = 'add liquor: 20:1 to the header, or a fill before it'
    steps.problems.say(place.keyAt, place.where, 'liquor-missing', 'Grams for a litre, of how many litres?', instead)
  }
}
