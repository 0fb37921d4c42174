import { act } from '../../draft.ts'
import { stepKind } from '../step-kind.ts'

export const squeeze = stepKind({
  word: 'squeeze',
  behaviour: 'act',
  about: 'Presses liquor or air out of the goods, without wringing.',
  short: null,
  fields: {},
  draft: () => [act({ call: 'Squeeze, do not wring', done: 'squeezed', knot: 'Squeeze' }, [15, 40, 90])]
})
