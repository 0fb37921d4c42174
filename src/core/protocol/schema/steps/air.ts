import { act, waiting } from '../../draft.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

export const air = stepKind({
  word: 'air',
  behaviour: 'wait',
  about: 'Takes the goods out and leaves them in the air.',
  short: 'for',
  fields: waitFields,
  draft: (fields, r) => [
    act({ call: 'Out, into the air', done: 'in the air', knot: 'Air' }, [20, 45, 90], {
      suffix: '-out',
      shape: 'bar',
      yarn: 'out'
    }),
    waiting({ call: 'Aired?', doing: 'Airing', done: 'aired', knot: 'Aired' }, readWait(fields, r, false), {
      away: fields.away === true
    })
  ]
})
