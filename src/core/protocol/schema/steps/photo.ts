import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const photo = stepKind({
  word: 'photo',
  behaviour: 'act',
  about: 'Asks for a photograph. record: photo makes it one without which the step stays open.',
  short: 'what',
  fields: { what: z.optional(line(60, 'What is to be seen on it. For example: the skein with its tag')) },
  draft: (fields, r) => {
    const call = `Photo: ${r.textOr(fields.what, ['what'], 'skein with its tag')}`
    return [act({ call, done: 'taken', knot: 'Photo' }, [15, 40, 120], { shape: 'ring' })]
  }
})
