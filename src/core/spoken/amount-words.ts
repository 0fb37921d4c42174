import { showDose } from '../quantity/show-amount.ts'
import { showTemperature } from '../quantity/show-temperature.ts'
import type { Units } from '../quantity/units.ts'
import { sayable } from './sayable.ts'

/** An amount worked out for a pot (mL, g or a count) in words, the same as the screen shows in figures: "thirty
 * millilitres", "one and a half grams", "two US tablespoons". */
export function amountWords(amount: { value: number; unit: 'mL' | 'g' | 'count' }, units: Units): string {
  return sayable(showDose(amount, units), units)
}

/** A temperature given in °C, in the dyer's scale: "eighty-two degrees". */
export function degreesWords(tempC: number, units: Units): string {
  return sayable(showTemperature(tempC, units), units)
}
