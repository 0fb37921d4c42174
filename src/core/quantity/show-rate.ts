import { notKnown, showMeasure } from './show-number.ts'
import type { Units } from './units.ts'

/** A rate given in °C per minute: "1 °C/min", "1.8 °F/min". */
export function showRate(cPerMin: number, units: Units): string {
  if (!Number.isFinite(cPerMin)) return notKnown
  const value = units.temperature === 'C' ? cPerMin : (cPerMin * 9) / 5
  return showMeasure(value, 2, `°${units.temperature}/min`, units)
}
