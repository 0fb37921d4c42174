import { isRefused } from '../chemistry/answer.ts'
import { exhaustionFromLadder } from '../chemistry/uptake/exhaustion.ts'
import type { CupsRead } from '../pot/events.ts'

/** "like the cup of 12 % of the start liquor (6 to 25 % left)": a ladder is no more exact than its rungs. */
export function cupsWords({ like, ladder }: CupsRead): string {
  const [one = 0, other] = like
  if (other !== undefined) return `between the cups of ${one} and ${other} % of the start liquor`
  const found = exhaustionFromLadder({ like: one, ladder })
  const range = isRefused(found) ? '' : ` (${100 - found.highPercent} to ${100 - found.lowPercent} % left)`
  return `like the cup of ${one} % of the start liquor${range}`
}
