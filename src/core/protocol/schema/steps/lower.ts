import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { capital } from '../../words.ts'
import { readDepthTo } from '../depth-in-step.ts'
import { quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const lower = stepKind({
  word: 'lower',
  behaviour: 'act',
  about: 'Lowers the goods to a depth: a band of the loop around it, a length, or a part of the skein.',
  short: 'to',
  fields: {
    to: quantity('1/4 of the skein', 'The depth: band, 12 cm, a part of the skein.'),
    of: z.optional(quantity('60 cm', 'How long the skein hangs, where the depth is a length.'))
  },
  draft: (fields, r) => {
    const read = readDepthTo(fields.to, ['to'], fields.of, r)
    const loop = read?.loop ?? null
    const name = loop ? `${loop.name} ${loop.item}` : (read?.depth.label ?? '')
    const words = { call: loop ? `Lower ${name}` : `Lower to ${name}`, done: 'lowered', knot: capital(name) }
    const detail = loop ? `to tie mark ${loop.index} of ${loop.count}` : null
    return [act(words, [10, 30, 60], { shape: 'band', yarn: 'in', depth: read?.depth ?? null, detail })]
  }
})
