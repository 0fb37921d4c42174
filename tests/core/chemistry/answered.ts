import { type Answer, isRefused, type Problem } from '../../../src/core/chemistry/index.ts'

/** The answer itself; a refusal fails the test with its words. */
export function answered<T>(answer: Answer<T>): T {
  if (isRefused(answer)) throw new Error(answer.problems.map(({ what, instead }) => `${what} ${instead}`).join(' '))
  return answer
}

export function problemsOf(answer: Answer<unknown>): Problem[] {
  return isRefused(answer) ? answer.problems : []
}
