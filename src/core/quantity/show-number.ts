export type Digits = 0 | 1 | 2 | 3
export type DecimalMark = { decimal?: 'point' | 'comma' }

/** What is shown where a figure is not a number: words, never "NaN". */
export const notKnown = 'not known'
/** Keeps a number and its unit on one line. */
export const noBreakSpace = '\u00a0'

/** A number rounded to at most `digits` decimals, no zeros at the end, a true minus sign, never -0.
 * Three decimals are given below 1 only: 1,234 with a decimal comma could be read as a thousand. */
export function showNumber(value: number, digits: Digits, units: DecimalMark = {}): string {
  if (!Number.isFinite(value)) return notKnown
  const used = digits === 3 && Math.abs(value) >= 1 ? 2 : digits
  const fixed = fixedPoint(Math.abs(value), used)
  const shown = used === 0 ? fixed : fixed.replace(/\.?0+$/, '')
  const marked = units.decimal === 'comma' ? shown.replace('.', ',') : shown
  return value < 0 && /[1-9]/.test(shown) ? `−${marked}` : marked
}

/** A number with its unit. What is above zero but would round to it is shown as less than the smallest step. */
export function showMeasure(value: number, digits: Digits, unit: string, units: DecimalMark): string {
  if (!Number.isFinite(value)) return notKnown
  const shown = showNumber(value, digits, units)
  if (value !== 0 && shown === '0') {
    const step = showNumber(10 ** -digits, digits, units)
    return `${value < 0 ? '>−' : '<'}${step}${noBreakSpace}${unit}`
  }
  return `${shown}${noBreakSpace}${unit}`
}

function fixedPoint(value: number, digits: Digits): string {
  // toFixed turns to exponents from 1e21 on.
  return value < 1e21 ? value.toFixed(digits) : BigInt(value).toString()
}
