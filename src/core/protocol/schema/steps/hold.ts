import * as z from 'zod/mini'
import { waiting } from '../../draft.ts'
import { quantity } from '../fields.ts'
import { holdAtFields, setPointOf } from '../hold-at.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

export const hold = stepKind({
  word: 'hold',
  behaviour: 'wait',
  about: 'Holds the bath as it is, or at a temperature.',
  short: 'for',
  fields: {
    ...waitFields,
    ...holdAtFields,
    'look every': z.optional(
      quantity('15 min', 'How often to look at it, for example at the water under the steam rack.')
    )
  },
  draft: (fields, r) => {
    const setPoint = setPointOf(fields, r)
    const doing = setPoint ? `Holding at ${setPoint.range.shown}` : 'Holding'
    return [
      waiting({ call: 'Hold is over', doing, done: 'over', knot: 'Hold' }, readWait(fields, r, false), {
        setPoint,
        away: fields.away === true,
        lookEveryMs: r.ms(fields['look every'], ['look every'])
      })
    ]
  }
})
