import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const enter = stepKind({
  word: 'enter',
  behaviour: 'act',
  about: 'Puts the goods into the bath, whole.',
  short: 'what',
  fields: {
    what: z.optional(line(30, 'What is entered, if not the skein. For example: the yarn')),
    to: z.optional(line(40, 'The vessel, if not the pot. For example: the sour vessel'))
  },
  draft: (fields, r) => {
    const what = r.textOr(fields.what, ['what'], 'the skein')
    const call = fields.to === undefined ? `Enter ${what}` : `Enter ${what} into ${r.text(fields.to, ['to'])}`
    const words = { call, done: 'entered', knot: 'Enter' }
    return [act(words, [20, 60, 120], { shape: 'bar', yarn: 'in', depth: { fraction: 1, label: 'whole skein' } })]
  }
})
