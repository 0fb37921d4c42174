// The act of a step in words for the ear.

import type { LiveState } from '../pot/state.ts'
import type { Step } from '../protocol/model.ts'
import { sequenceOf } from '../protocol/tree.ts'
import type { Units } from '../quantity/units.ts'
import { amountWords } from './amount-words.ts'
import { sayable } from './sayable.ts'

/** Calls that begin with one of these are that act, wherever to. */
const verbs = /^(?:lower|lift|enter|turn|rinse|squeeze|spin|stir)\b/i

/** The call as the screen has it, and of an addition its number alone: "Lower band three", "Acid two". */
export function actWords(step: Step, units: Units): string {
  const { question, dose } = step
  if (step.behaviour === 'ask' && question && 'ask' in question) return sayable(question.ask, units)
  const isKnot = dose !== null && step.call.toLowerCase() === `${step.knot.toLowerCase()} in`
  return sayable(isKnot ? step.knot : step.call, units)
}

/** One word for the end of a count: "lower"; where there is none, the act. */
export function shortAct(step: Step, units: Units): string {
  return verbs.exec(step.call)?.[0] ?? actWords(step, units)
}

/** "Band three of six" for a band in a loop, else null. */
export function bandWords(state: LiveState, step: Step, units: Units): string | null {
  if (step.shape !== 'band') return null
  const { owner } = sequenceOf(state.programme, step.path)
  const label = owner?.kind === 'round' ? owner.rounds.rounds[owner.round - 1]?.label : undefined
  return label === undefined ? null : sayable(label, units)
}

/** "Eight millilitres of vinegar"; the name is left out where the act says it. */
export function doseWords(step: Step, units: Units): string | null {
  if (step.dose === null) return null
  const { amount } = step.dose
  const said = actWords(step, units)
    .toLowerCase()
    .split(/[\s,.]+/)
  const name = sayable(amount.of, units)
  const named =
    name === '' ||
    name
      .toLowerCase()
      .split(/\s+/)
      .every((word) => said.includes(word))
  return `${amountWords(amount, units)}${named ? '' : ` of ${name}`}`
}
