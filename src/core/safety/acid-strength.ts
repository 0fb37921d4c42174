/** How strong a bottle of acetic acid is, after the band edges of its classification, % w/w:
 * CLP Annex VI, index 607-002-00-6; the edges are from memory. */
export type AceticBand = 'mild' | 'irritant' | 'corrosive' | 'severe'

/** The band of acetic acid, 0 to 100 %. A strength in % w/v is a little above the same in % w/w (density over 1 g/mL),
 * so it may be put in unchanged: it errs towards the stronger band. */
export function aceticBand(percent: number): AceticBand {
  if (percent >= 90) return 'severe'
  if (percent >= 25) return 'corrosive'
  if (percent >= 10) return 'irritant'
  return 'mild'
}
