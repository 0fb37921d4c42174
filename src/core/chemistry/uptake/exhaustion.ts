import { some, volumeLimit } from '../amounts/limits.ts'
import { type Answer, refuse } from '../answer.ts'
import { allOutside, type Limit } from '../limits.ts'

const absorbanceLimit = (field: string, name: string): Limit => ({ field, name, unit: '', least: 0, most: 10 })

/** Exhaustion in % from two readings of a photometer, corrected for the liquor lost or added between them:
 * E = 100 (1 - A now · mL now / (A start · mL start)). Below nothing where the bath reads deeper than at the start: told as
 * it is, for it says that a reading is wrong. Absorbance at the start above 0 and up to 10, now 0 to 10, volumes above 0
 * and up to 1000 L. Two dyes need two wavelengths. Source: Beer-Lambert law and conservation of the dye. */
export function exhaustionFromReadings(given: {
  startAbsorbance: number
  startML: number
  nowAbsorbance: number
  nowML: number
}): Answer<number> {
  const { startAbsorbance, startML, nowAbsorbance, nowML } = given
  const problems = allOutside([
    [startAbsorbance, some(absorbanceLimit('startAbsorbance', 'the reading at the start'))],
    [startML, some(volumeLimit('startML', 'the liquor at the start'))],
    [nowAbsorbance, absorbanceLimit('nowAbsorbance', 'the reading now')],
    [nowML, some(volumeLimit('nowML', 'the liquor now'))]
  ])
  if (problems.length > 0) return refuse(...problems)
  return 100 * (1 - (nowAbsorbance * nowML) / (startAbsorbance * startML))
}

const cupLimit: Limit = { field: 'like', name: 'the cup', unit: '%', least: 0, most: 100 }

/** The usual ladder: cups of the start liquor at so many % of its strength. Common practice, no source. */
export const usualLadder = [100, 50, 25, 12, 6, 3, 0] as const

/** Exhaustion in % from the cup of a ladder that the residual liquor looks most like, or the two it lies between, beside
 * one another on white, filled to the same height. No more exact than a rung: `lowPercent` and `highPercent` go from the
 * neighbour above to the neighbour below of a cup it is like, or between the two. `nowML` over `startML` (1 where left
 * out) corrects for liquor lost. A ladder sees the total of several dyes only.
 * Ladder: 2 to 20 different rungs, 0 to 100 %. Refuses a cup that is no rung, and two that are no neighbours.
 * Source: common practice, no source. */
export function exhaustionFromLadder(given: {
  like: number | readonly [number, number]
  ladder?: readonly number[]
  startML?: number
  nowML?: number
}): Answer<{ percent: number; lowPercent: number; highPercent: number }> {
  const { like, ladder = usualLadder, startML = 1, nowML = 1 } = given
  const seen = (Array.isArray(like) ? [...like] : [like]).sort((a, b) => b - a)
  const problems = allOutside([
    [ladder.length, { field: 'ladder', name: 'the number of cups', unit: '', least: 2, most: 20 }],
    ...ladder.map((rung) => [rung, { ...cupLimit, field: 'ladder' }] as const),
    ...seen.map((rung) => [rung, cupLimit] as const),
    [startML, some(volumeLimit('startML', 'the liquor at the start'))],
    [nowML, some(volumeLimit('nowML', 'the liquor now'))]
  ])
  if (problems.length > 0) return refuse(...problems)
  const rungs = [...new Set(ladder)].sort((a, b) => b - a)
  const at = seen.map((rung) => rungs.indexOf(rung))
  const [first = -1, second = first] = at
  if (seen.length > 2 || at.includes(-1) || second - first > 1) {
    const what = `The ladder has no cup of ${seen.join(' and ')} %, or no two beside one another.`
    return refuse({ code: 'unknown-word', field: 'like', what, instead: `Give one or two of ${rungs.join(', ')} %.` })
  }
  const between = second > first
  const deepest = rungs[between ? first : Math.max(0, first - 1)] ?? 100
  const palest = rungs[between ? second : Math.min(rungs.length - 1, first + 1)] ?? 0
  const middle = between ? (deepest + palest) / 2 : (rungs[first] ?? 0)
  const left = nowML / startML
  return { percent: 100 - middle * left, lowPercent: 100 - deepest * left, highPercent: 100 - palest * left }
}
