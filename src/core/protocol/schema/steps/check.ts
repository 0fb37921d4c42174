import * as z from 'zod/mini'
import { asking } from '../../draft.ts'
import { oneOf } from '../fields.ts'
import { questionFields, readQuestion, wordsOf } from '../question-fields.ts'
import { stepKind } from '../step-kind.ts'

export const check = stepKind({
  word: 'check',
  behaviour: 'ask',
  about: 'Asks for a judgement or a reading, and says what to do where it is not as wanted.',
  short: 'question',
  fields: {
    ...questionFields,
    outside: z.optional(oneOf(['note', 'again', 'off-protocol'], 'What an answer outside the range means.'))
  },
  draft: (fields, r) => {
    const question = readQuestion(fields, [], r)
    if (!question) return []
    const { call, knot, done } = wordsOf(question)
    const detail = fields.reached === undefined ? null : `at least ${r.text(fields.reached, ['reached'])}`
    // What must be reached is asked for again until it is; any other answer is only written down.
    const outside = fields.outside ?? (fields.reached === undefined ? 'note' : 'again')
    const range = { lowC: null, highC: null, boil: false, shown: '' }
    return [asking({ call, knot, done }, question, [10, 30, 90], { detail, setPoint: { range, outside, aimC: null } })]
  }
})
