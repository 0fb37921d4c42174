// What every function of this room gives back: the answer itself, or a refusal that names each field, what is wrong
// with it and what would be right. A refusal is a value; an exception here is a bug.

/** `field`: the name of the argument. `what`: what is wrong. `instead`: what would be right. */
export type Problem = { code: ProblemCode; field: string; what: string; instead: string }

export type ProblemCode =
  | 'missing'
  | 'not-a-number'
  | 'outside'
  | 'unknown-word'
  | 'too-strong'
  | 'not-neutralised'
  | 'out-of-reach'
  | 'does-not-fit'
  | 'contradiction'
  | 'percent-outside'
  | 'density-missing'
  | 'density-outside'

/** Every problem is named at once. */
export type Refused = { refused: true; problems: Problem[] }
export type Answer<T> = T | Refused

export function isRefused<T>(answer: Answer<T>): answer is Refused {
  return typeof answer === 'object' && answer !== null && 'refused' in answer
}

export function refuse(...problems: Problem[]): Refused {
  return { refused: true, problems }
}
