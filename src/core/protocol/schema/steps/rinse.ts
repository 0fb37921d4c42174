import * as z from 'zod/mini'
import { act } from '../../draft.ts'
import { quantity } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const rinse = stepKind({
  word: 'rinse',
  behaviour: 'act',
  about: 'Rinses once, as warm as the goods are.',
  short: 'at',
  fields: { at: z.optional(quantity('35..40 °C', 'How warm.')) },
  draft: (fields, r) => {
    const range = fields.at === undefined ? null : r.range(fields.at, ['at'])
    const detail = range ? `at ${range.shown}` : 'as warm as the goods are'
    return [
      act({ call: 'Rinse', done: 'rinsed', knot: 'Rinse' }, [60, 180, 360], { shape: 'wave', yarn: 'out', detail })
    ]
  }
})
