import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const turn = stepKind({
  word: 'turn',
  behaviour: 'act',
  about: 'Turns the goods in the bath. Never called late.',
  short: 'what',
  fields: { what: z.optional(line(30, 'What is turned, if not the skein. For example: the jar')) },
  draft: (fields, r) => {
    const call = `Turn ${r.textOr(fields.what, ['what'], 'the skein')}`
    return [act({ call, done: 'turned', knot: 'Turn' }, [10, 20, 40], { soft: true })]
  }
})
