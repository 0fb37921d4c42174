import * as z from 'zod/mini'
import { timesMost } from '../../source/limits.ts'
import { count, sequence } from '../fields.ts'
import { questionFields } from '../question-fields.ts'
import { constructFields, countOrInput } from './shared.ts'

export const until = z.strictObject({
  ...constructFields,
  ask: z
    .strictObject(questionFields, { error: 'write a question such as {grade: bath, enough: trace}' })
    .register(z.globalRegistry, {
      description: 'What is asked, and which answer ends it. For example: {grade: bath, enough: trace}'
    }),
  'at most': countOrInput(timesMost, 'How many rounds at most. For example: 3'),
  likely: z.optional(count(0, timesMost, 'How many rounds it usually takes. For example: 1')),
  steps: sequence('What is done while the answer is not good enough. For example: [do: Stir the bath]'),
  otherwise: z.optional(
    sequence('What is done when the last answer is not good enough either. For example: [note: What is left?]')
  )
})
