import { showMass } from './show-mass.ts'
import { noBreakSpace, notKnown, showMeasure, showNumber } from './show-number.ts'
import { showPart, showPercent } from './show-part.ts'
import { showVolume } from './show-volume.ts'
import type { Units } from './units.ts'
import type { AmountKind } from './written-amount.ts'

/** An amount as written, in the dyer's units: "30 mL of vinegar", "1.5 % owf", "20:1", "1/2 of acid". */
export function showAmount(amount: AmountKind, units: Units): string {
  switch (amount.kind) {
    case 'volume':
      return withName(showVolume(amount.value, units), amount.of)
    case 'mass':
      return withName(showMass(amount.value, units), amount.of)
    case 'count':
      return withName(showCount(amount.value, amount.unit, units), amount.of)
    case 'owf':
      return withName(`${showPercent(amount.percent, units)} owf`, amount.of)
    case 'gPerL':
      return withName(showMeasure(amount.value, amount.value < 1 ? 3 : 2, 'g/L', units), amount.of)
    case 'liquor':
      return Number.isFinite(amount.ratio) ? `${showNumber(amount.ratio, 2, units)}:1` : notKnown
    case 'share':
      return `${showPart(amount.share, units)} of ${amount.of}`
    case 'rest':
      return `the rest of ${amount.of}`
  }
}

/** An amount worked out for a pot (mL, g or a count), in the dyer's units, without its name. */
export function showDose(dose: { value: number; unit: 'mL' | 'g' | 'count' }, units: Units): string {
  switch (dose.unit) {
    case 'mL':
      return showVolume(dose.value, units)
    case 'g':
      return showMass(dose.value, units)
    case 'count':
      return showCount(dose.value, '', units)
  }
}

function showCount(value: number, unit: string, units: Units): string {
  const shown = showNumber(value, 2, units)
  return unit === '' || shown === notKnown ? shown : `${shown}${noBreakSpace}${unit}`
}

function withName(shown: string, of: string | null): string {
  return of === null ? shown : `${shown} of ${of}`
}
