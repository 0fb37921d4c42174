import { type DecimalMark, notKnown, showMeasure } from './show-number.ts'

/** A percentage: "1.5 %", by 0.01, below 1 % by 0.001. */
export function showPercent(percent: number, units: DecimalMark = {}): string {
  if (!Number.isFinite(percent)) return notKnown
  return showMeasure(percent, Math.abs(percent) < 1 ? 3 : 2, '%', units)
}

/** A part of a whole: "all", a plain fraction with a lower number up to 8 ("1/2", "2/3"), else a percentage. */
export function showPart(part: number, units: DecimalMark = {}): string {
  if (part === 1) return 'all'
  for (let lower = 2; lower <= 8; lower++) {
    const upper = Math.round(part * lower)
    if (upper > 0 && upper < lower && Math.abs(part - upper / lower) < 1e-9) return `${upper}/${lower}`
  }
  return showPercent(part * 100, units)
}
