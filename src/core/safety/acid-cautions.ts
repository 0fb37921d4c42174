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

/** The cautions of an acid on the bench, away from any step: acetic acid by its strength in %, citric acid as powder. */
export function acidCautions(acid: { acetic: number } | 'citric'): Caution[] {
  const id = acid === 'citric' ? 'citric-dust' : ofBand[aceticBand(acid.acetic)]
  return rules.filter((rule) => rule.id === id).map(({ applies: _, ...caution }) => caution)
}
