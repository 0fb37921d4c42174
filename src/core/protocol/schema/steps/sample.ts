import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const sample = stepKind({
  word: 'sample',
  behaviour: 'act',
  about: 'Draws a little of the liquor, or a tab, to keep and compare.',
  short: 'what',
  fields: { what: z.optional(line(40, 'What is drawn, if not the bath. For example: a tab of yarn')) },
  draft: (fields, r) => {
    const call = `Sample ${r.textOr(fields.what, ['what'], 'the bath')}`
    return [act({ call, done: 'drawn', knot: 'Sample' }, [20, 45, 90], { shape: 'ring' })]
  }
})
