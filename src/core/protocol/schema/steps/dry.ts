import { act, waiting } from '../../draft.ts'
import { stepKind } from '../step-kind.ts'
import { readWait, waitFields } from '../wait-fields.ts'

/** Where the writer says nothing: until a person says dry, overnight as a rule. Common practice, no source. */
const usualMs = 12 * 60 * 60_000

export const dry = stepKind({
  word: 'dry',
  behaviour: 'wait',
  about: 'Hangs the goods up and leaves them to dry.',
  short: 'for',
  fields: waitFields,
  draft: (fields, r) => {
    const open = fields.for === undefined && fields.until === undefined
    const wait = readWait(open ? { ...fields, until: { person: 'dry' } } : fields, r, false)
    return [
      act({ call: 'Hang to dry', done: 'hung', knot: 'Hang' }, [30, 60, 180], { suffix: '-hang', yarn: 'out' }),
      waiting(
        { call: 'Dry?', doing: 'Drying', done: 'dry', knot: 'Dry' },
        { ...wait, expectMs: wait.expectMs ?? (open ? usualMs : null) },
        { bench: true, away: fields.away === true }
      )
    ]
  }
})
