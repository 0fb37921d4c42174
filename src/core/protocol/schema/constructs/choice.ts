import * as z from 'zod/mini'
import { line, sequence } from '../fields.ts'
import { constructFields } from './shared.ts'

const answerKey = z.string().check(z.regex(/^[\p{L}\p{N}][\p{L}\p{N} _-]{0,39}$/u))

export const choice = z.strictObject({
  ...constructFields,
  ask: line(80, 'The question.'),
  answers: z
    .record(answerKey, sequence('What follows that answer.', 0), {
      error: 'write two to six answers, each with its steps'
    })
    .check(
      z.refine((answers) => Object.keys(answers).length >= 2 && Object.keys(answers).length <= 6, {
        error: 'write two to six answers'
      })
    )
    .register(z.globalRegistry, {
      description: 'The answers, each with its steps; [] where nothing follows.',
      minProperties: 2,
      maxProperties: 6
    })
})
