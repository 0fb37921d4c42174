import * as z from 'zod/mini'
import { act, waiting } from '../../draft.ts'
import { line } from '../fields.ts'
import { holdAtFields, setPointOf } from '../hold-at.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

export const soak = stepKind({
  word: 'soak',
  behaviour: 'wait',
  about: 'Wets the goods out: put in, then left.',
  short: 'for',
  fields: { ...waitFields, ...holdAtFields, in: z.optional(line(40, 'What it soaks in. For example: acid soak')) },
  draft: (fields, r) => {
    const where = r.textOr(fields.in, ['in'], 'soak')
    const wait = readWait(fields, r, false)
    return [
      act({ call: `Skein into the ${where}`, done: 'in soak', knot: 'Soak' }, [20, 60, 120], { suffix: '-in' }),
      waiting({ call: 'Soaked?', doing: 'Soaking', done: 'soaked', knot: 'Soaked' }, wait, {
        setPoint: setPointOf(fields, r),
        bench: true,
        away: fields.away === true
      })
    ]
  }
})
