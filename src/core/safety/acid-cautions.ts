import { type AceticBand, aceticBand } from './acid-strength.ts'
import type { Caution } from './caution.ts'
import { rules } from './rules.ts'

const ofBand: Record<AceticBand, string> = {
  severe: 'acid-severe',
  corrosive: 'acid-corrosive',
  irritant: 'acid-irritant',
  mild: 'acid-mild'
}

/** The caution of an acid on the bench, away from any step: acetic acid by its strength in %, citric acid as powder. */
export function acidCaution(acid: { acetic: number } | 'citric'): Caution {
  const id = acid === 'citric' ? 'citric-dust' : ofBand[aceticBand(acid.acetic)]
  const rule = rules.find((each) => each.id === id)
  if (!rule) throw new Error(`no caution is called ${id}`)
  const { title, say, short, source } = rule
  return { id, title, say, short, source }
}
