import type { Step } from '../protocol/model.ts'
import type { Caution } from './caution.ts'
import type { CautionContext } from './hazard.ts'
import { rules } from './rules.ts'
import { sources } from './sources.ts'

/** The cautions of a step, what does harm soonest first, then the protocol's own. */
export function cautionsFor(step: Step, context: CautionContext): Caution[] {
  const found = rules.filter((rule) => rule.applies(step, context)).map(({ applies: _, ...caution }) => caution)
  const all = [...found, ...step.cautions.map(ownCaution)]
  return context.firstOfDay === false ? all.map((caution) => ({ ...caution, say: caution.short })) : all
}

/** A caution in the protocol's own words: they can't be shortened by us. */
export function ownCaution(text: string): Caution {
  return { id: `own: ${text}`, title: 'From the protocol', say: text, short: text, source: sources.protocol }
}
