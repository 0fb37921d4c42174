// The people of a day: how soon they come when called, and what else they do.
import type { Chance } from './chance.ts'
import type { Counts } from './counts.ts'

export const kinds = ['prompt', 'slow', 'absent', 'hasty', 'restless'] as const
export type Kind = (typeof kinds)[number]

export type Person = {
  kind: Kind
  /** How often a standing call is answered at one turn. */
  answers: number
  /** How often the answer is the one hoped for. */
  hopes: number
  /** How often something else is done at one turn. */
  meddles: number
  /** How often one tap comes twice: with one id, with two. */
  doubleTaps: number
  /** How often the act is said to have been some minutes ago. */
  ago: number
  /** How often the dose goes into another pot. */
  wrongPot: number
  /** A turn lasts this long at most, minutes. */
  turnMostMin: number
}

export function personByChance(chance: Chance, counts: Counts): Person {
  const kind = chance.pick(kinds)
  counts.add('person', kind)
  const person: Person = {
    kind,
    answers: 0.9,
    hopes: 0.75,
    meddles: 0.25,
    doubleTaps: 0.08,
    ago: 0.15,
    wrongPot: 0.04,
    turnMostMin: 8
  }
  switch (kind) {
    case 'prompt':
      return { ...person, answers: 1, turnMostMin: 2 }
    case 'slow':
      return { ...person, answers: 0.5, ago: 0.5 }
    case 'absent':
      return { ...person, answers: 0.35, turnMostMin: 90 }
    case 'hasty':
      return { ...person, doubleTaps: 0.5, wrongPot: 0.15 }
    case 'restless':
      return { ...person, meddles: 0.8, hopes: 0.5 }
  }
}
