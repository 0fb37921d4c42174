// From what is chosen and typed to the match.
import { useMemo } from 'preact/hooks'
import { isRefused } from '../../../../core/chemistry/answer.ts'
import { matchSkeins, type SkeinMatch } from '../../../../core/colour/index.ts'
import type { MatchedSide } from '../../../../core/record/swatch.ts'
import type { KeptReading } from '../../../../core/record/swatch-readings.ts'
import { type MatchDraft, type SideDraft, TYPED } from './draft.ts'
import { against, type Names, ofBatch, type Side, sideOf } from './side.ts'

export type MatchFound = { skein: MatchedSide; target: MatchedSide; match: SkeinMatch }
type Of = keyof MatchDraft

export type Laid = Record<
  Of,
  { draft: SideDraft; readings: KeptReading[]; problem: string | null; refused: string | null }
> & {
  found: MatchFound | null
}

/** What nobody chose yet is the latest reading of the skein, and of its parent. */
export function useMatch(
  chosen: MatchDraft,
  all: readonly KeptReading[],
  names: Names,
  batchId: string | null,
  parents: readonly string[]
): Laid {
  return useMemo(() => {
    const own = ofBatch(all, batchId)
    const skein = settled(chosen.skein, own, own[0]?.key ?? TYPED)
    const others = against(all, skein.key, parents)
    const parent = others.find((one) => one.batchId !== null && parents.includes(one.batchId))
    const target = settled(chosen.target, others, parent?.key ?? null)
    const sides = { skein: sideOf(skein, own, names), target: sideOf(target, others, names) }
    const { found, refused } = matchOf(sides)
    const side = (of: Of, draft: SideDraft, readings: KeptReading[]) => ({
      draft,
      readings,
      problem: sides[of].problem,
      refused: refused[of]
    })
    return { skein: side('skein', skein, own), target: side('target', target, others), found }
  }, [chosen, all, names, batchId, parents])
}

/** A reading that is not there (of another batch, maybe) counts as not chosen. */
function settled(side: SideDraft, readings: readonly KeptReading[], otherwise: string | null): SideDraft {
  const there = side.key === TYPED || readings.some(({ key }) => key === side.key)
  return there ? side : { ...side, key: otherwise }
}

type Matched = { found: MatchFound | null; refused: Record<Of, string | null> }

export function matchOf({ skein, target }: Record<Of, Side>): Matched {
  const nothing = { found: null, refused: { skein: null, target: null } }
  if (skein.side === null || target.side === null) return nothing
  const match = matchSkeins(target.read, skein.read)
  if (!isRefused(match)) return { ...nothing, found: { skein: skein.side, target: target.side, match } }
  const say = (of: Of): string | null =>
    match.problems
      .filter(({ field }) => field === of)
      .map(({ what, instead }) => `${what} ${instead}`)
      .join(' ') || null
  return { found: null, refused: { skein: say('skein'), target: say('target') } }
}
