// What holds of a skein: the verdict that was found last. In words for records, paper and finding, as far as they need no
// figures of colour.
import type { SplitVerdict } from '../colour/index.ts'
import type { EyeWord, Judgement } from './swatch.ts'

type Found = Pick<Judgement, 'found'>

export const verdictWords: Record<EyeWord, string> = {
  split: 'Split',
  'only-lighter': 'Only lighter',
  'cannot-tell': 'Cannot tell'
}

/** 'Turns yellower from band 4', or null where nothing turned. */
export function turnSay({ turn }: Pick<SplitVerdict, 'turn'>): string | null {
  return turn === null ? null : `Turns ${turn.word} from band ${turn.fromBand}`
}

/** 'Split. Turns yellower from band 4'; what an eye said is told as that. */
export function foundSay({ found }: Found): string {
  if (found.type === 'SwatchSeen') return `By eye: ${verdictWords[found.says].toLowerCase()}`
  const turn = turnSay(found.verdict)
  return `${verdictWords[found.verdict.verdict]}${turn === null ? '' : `. ${turn}`}`
}

/** 'Split, yellower from 4': for a tag, where there is room for no more. */
export function foundShort(one: Found): string {
  const { found } = one
  if (found.type === 'SwatchSeen' || found.verdict.turn === null) return foundSay(one)
  const { word, fromBand } = found.verdict.turn
  return `${verdictWords[found.verdict.verdict]}, ${word} from ${fromBand}`
}

/** The word alone, whoever found it: for finding. */
export function foundWord({ found }: Found): string {
  return verdictWords[found.type === 'SwatchSeen' ? found.says : found.verdict.verdict]
}

/** The verdicts that were found by a series that this batch dyed. */
export function judgedBy(judgements: readonly Judgement[], batchId: string): Judgement[] {
  return judgements.filter(({ found }) => found.series?.batchId === batchId)
}

/** Of each batch the verdict that was found last; `judgements` as they come, the latest first. */
export function latestByBatch(judgements: readonly Judgement[]): Map<string, Judgement> {
  const latest = new Map<string, Judgement>()
  for (const one of judgements) {
    const { batchId } = one.found
    if (batchId !== null && !latest.has(batchId)) latest.set(batchId, one)
  }
  return latest
}
