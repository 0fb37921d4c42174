// The bath beside cups of the liquor it began as: what it is asked of, and which grade a cup comes to.
import type { Grade, Programme, Question } from '../protocol/model.ts'
import { stepsOf } from '../protocol/tree.ts'

/** Only what began as a dyebath has a start liquor: no rinse, no soap bath, no bath that takes an earlier dye off. `of`:
 * what a grade is asked of, as the protocol calls it. */
export function hasStartLiquor(of: string): boolean {
  return /^(bath|bath in .+|liquor.*)$/i.test(of.trim())
}

/** Is a bath judged in it that cups of the start liquor could stand beside? */
export function wantsStartLiquor(programme: Programme): boolean {
  const asks = (question: Question | null): boolean => question?.kind === 'grade' && hasStartLiquor(question.of)
  return stepsOf(programme).some(
    ({ question, wait }) =>
      asks(question) || wait?.until.some((each) => each.kind === 'judgement' && asks(each.question)) === true
  )
}

/** From so many % of the start liquor on. The five grades are words for what an eye sees; that these cups look so is common
 * practice, no source. */
const gradeFrom: readonly (readonly [number, Grade])[] = [
  [75, 'strong'],
  [40, 'half'],
  [5, 'tint'],
  [1, 'trace']
]

/** The grade of a bath like a cup, or between two (`like`, in % of the start liquor): by the deeper, so that no bath is
 * called clearer than it may be. */
export function gradeOfCups(like: readonly number[]): Grade {
  const deeper = Math.max(...like)
  return gradeFrom.find(([from]) => deeper >= from)?.[1] ?? 'clear'
}
