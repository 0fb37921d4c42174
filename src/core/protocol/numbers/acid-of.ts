// Which acid a bottle holds, as far as its name tells. "Acid" alone tells nothing, and the pH of a bath hangs on it.
import type { AcidKind } from '../model.ts'

const names: readonly [RegExp, AcidKind][] = [
  [/citric|e\s?330\b/i, 'citric'],
  [/vinegar|acetic|ethanoic|e\s?260\b/i, 'acetic'],
  [/formic|sulph?uric|sulf|oxalic|tartaric|lactic|hydrochloric|phosphoric/i, 'other']
]

/** Null: the name does not say. */
export function acidOf(...labels: readonly string[]): AcidKind | null {
  for (const label of labels) {
    const found = names.find(([name]) => name.test(label))
    if (found) return found[1]
  }
  return null
}
