// Amounts and cups in the dyer's words.
import type { LiveState } from '../../../core/pot/state.ts'
import type { Amount, Step } from '../../../core/protocol/model.ts'
import { showDose } from '../../../core/quantity/show-amount.ts'
import { showNumber } from '../../../core/quantity/show-number.ts'
import type { Units } from '../../../core/quantity/units.ts'

export function amountSay(amount: Amount, units: Units): string {
  return showDose(amount, units)
}

/** The label on the cup: a forgotten one is seen on the bench. */
export function cupSay(state: LiveState, step: Step): string | null {
  const { dose } = step
  if (!dose) return null
  const name = state.pot.colourway || state.pot.letter
  return dose.cup ? `cup “${name}, ${dose.cup}”` : dose.amount.of
}

/** The same stuff in the amount that really went in. */
export function enteredAmount(planned: Amount, value: number): Amount {
  const unit = planned.unit === 'count' ? '' : ` ${planned.unit}`
  return { ...planned, value, asEntered: `${showNumber(value, 2)}${unit}` }
}
