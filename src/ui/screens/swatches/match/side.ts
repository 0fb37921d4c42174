// One side of a match: which kept readings it can be of, and what the chosen or typed one says.
import type { SkeinRead } from '../../../../core/colour/index.ts'
import type { MatchedSide } from '../../../../core/record/swatch.ts'
import type { KeptReading } from '../../../../core/record/swatch-readings.ts'
import { whenSay } from '../../../parts/swatch-words.ts'
import { rounded } from '../judged.ts'
import { linesOf, pointOf } from '../typed.ts'
import { type SideDraft, TYPED } from './draft.ts'

export type Names = ReadonlyMap<string, string>

/** 'Moss, 2031-06-14 09:05, 3 photos, 8 bands'. */
export function readingName({ batchId, photos, read, ...when }: KeptReading, names: Names): string {
  const of = batchId === null ? 'No batch' : (names.get(batchId) ?? 'A batch that is not in this book')
  const by = photos === 0 ? `instrument ${read.white}°` : photos === 1 ? 'one photo' : `${photos} photos`
  const bands = read.bands.length === 1 ? 'one place' : `${read.bands.length} bands`
  return `${of}, ${whenSay(when)}, ${by}, ${bands}`
}

/** Of the batch, or all where none is chosen. */
export const ofBatch = (readings: readonly KeptReading[], batchId: string | null): KeptReading[] =>
  readings.filter((one) => batchId === null || one.batchId === batchId)

/** What the skein can be held against, its parents' readings first. */
export function against(
  readings: readonly KeptReading[],
  skein: string | null,
  parents: readonly string[]
): KeptReading[] {
  const others = readings.filter(({ key }) => key !== skein)
  const isParent = ({ batchId }: KeptReading): boolean => batchId !== null && parents.includes(batchId)
  return [...others.filter(isParent), ...others.filter((one) => !isParent(one))]
}

/** `problem`: what is wrong with it, at its field; null with no side: it is still to be chosen or typed. */
export type Side = { side: MatchedSide; read: SkeinRead; problem: null } | { side: null; problem: string | null }

export function sideOf(draft: SideDraft, readings: readonly KeptReading[], names: Names): Side {
  if (draft.key === TYPED) return typedSide(draft)
  const kept = readings.find(({ key }) => key === draft.key)
  if (!kept) return { side: null, problem: null }
  if (kept.refused !== null) return { side: null, problem: kept.refused }
  const { key, batchId, by, read } = kept
  const labs = read.bands.map(({ lab }) => lab)
  return { side: { key, batchId, name: readingName(kept, names), by, readings: labs }, read, problem: null }
}

function typedSide({ text, white }: SideDraft): Side {
  const { things, problem } = linesOf(text, { kind: 'lab', white })
  if (problem !== null || things.length === 0) return { side: null, problem }
  const bands = things.map((each) => ({ lab: pointOf(each).lab, each, counts: true }))
  const labs = bands.map(({ lab }) => rounded(lab))
  const name = `typed L*a*b* ${labs.length === 1 ? labSay(labs[0]) : `of ${labs.length} bands`}`
  const side = { key: null, batchId: null, name, by: 'typed', readings: labs } as const
  return { side: { ...side, readings: labs }, read: { white, bands, together: false }, problem: null }
}

const labSay = (lab: MatchedSide['readings'][number] | undefined): string =>
  lab ? [lab.l, lab.a, lab.b].map((value) => value.toFixed(1)).join(' ') : ''
