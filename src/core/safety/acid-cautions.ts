import { type AceticBand, aceticBand } from './acid-strength.ts'
import type { Caution } from './caution.ts'
import { rules } from './rules.ts'

/** Household vinegar on the bench wants none: what is said each time is soon not read. */
const ofBand: Record<AceticBand, string | null> = {
  severe: 'acid-severe',
  corrosive: 'acid-corrosive',
  irritant: 'acid-irritant',
  mild: null
}

/** An acid on the bench, away from any step: acetic acid by its strength in % (null: not known), citric acid as powder or
 * dissolved; any other, and one whose name does not tell, is taken for strong. */
export type BenchAcid = { acetic: number | null } | 'citric' | 'citric-dissolved' | 'other'

export function acidCautions(acid: BenchAcid): Caution[] {
  const id = idOf(acid)
  return rules.filter((rule) => rule.id === id).map(({ applies: _, ...caution }) => caution)
}

function idOf(acid: BenchAcid): string | null {
  switch (acid) {
    case 'citric':
      return 'citric-dust'
    case 'citric-dissolved':
      return 'citric'
    case 'other':
      return 'acid-other'
  }
  return acid.acetic === null ? 'acid-unknown' : ofBand[aceticBand(acid.acetic)]
}
