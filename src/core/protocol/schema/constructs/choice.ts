import * as z from 'zod/mini'
import { line, sequence } from '../fields.ts'
import { constructFields } from './shared.ts'

const answerKey = z.string().check(z.regex(/^[\p{L}\p{N}][\p{L}\p{N} _-]{0,39}$/u))

export const choice = z.strictObject({
  ...constructFields,
  ask: line(80, 'The question. For example: Will the bath be used again?'),
  answers: z
    .record(answerKey, sequence('What follows that answer. For example: [do: Stir the bath]', 0), {
      error: 'write two to six answers, each with its steps'
    })
    .check(
      z.refine((answers) => Object.keys(answers).length >= 2 && Object.keys(answers).length <= 6, {
        error: 'write two to six answers'
      })
    )
    .register(z.globalRegistry, {
      description:
        'The answers, each with its steps; [] where nothing follows. For example: {yes: [do: Label it], no: []}',
      minProperties: 2,
      maxProperties: 6
    })
})
