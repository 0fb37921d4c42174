import { act } from '../../draft.ts'
import { line } from '../fields.ts'
import { stepKind } from '../step-kind.ts'

export const transfer = stepKind({
  word: 'transfer',
  behaviour: 'act',
  about: 'Moves the goods to another vessel.',
  short: 'to',
  fields: { to: line(40, 'The vessel. For example: the sour vessel') },
  draft: (fields, r) => {
    const call = `Move to ${r.text(fields.to, ['to'])}`
    return [act({ call, done: 'moved', knot: 'Move' }, [20, 60, 120], { shape: 'bar', yarn: 'in' })]
  }
})
